// node tests/page/run.mjs [BUILD_FOLDER] [PATTERN] [--engine=chromium,firefox,webkit] [--language=en-XA]: the real page in
// real browsers, as a person uses it. BUILD_FOLDER holds tarebench.html and hosted/ (default build/wasm); PATTERN: only
// tests whose name it matches; of several engines one after the other. A test that needs what an engine has not says so:
// [name, run, { without: { webkit: 'why' } }]; one of what is the same in every engine runs in Chromium alone:
// [name, run, { once: true }]. In another language the journeys alone, which are of the page's own words.
// One line a test, a picture of each failure in BUILD_FOLDER/page_failures, last "N passed, N failed". What is waited
// for is a state of the page, never a span of time; so several browsers work side by side (WORKERS=1: one). Browsers that
// are driven stop short now and then, one test in a thousand: what fails is tried once more, and both outcomes are shown
// (AGAIN=0: it is not).
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { faults, giveBack, inUse, launch } from './browser.mjs';
import { TooOld } from './too_old.mjs';
import { language } from './words.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const [folder, pattern] = process.argv.slice(2).filter((one) => !one.startsWith('--'));
const build = resolve(folder ?? join(here, '../../build/wasm'));
const wanted = new RegExp(pattern ?? '', 'iu');
const kEngines = (process.argv.find((one) => one.startsWith('--engine='))?.slice(9) ?? 'chromium').split(',');
const kWorkers = Number(process.env.WORKERS ?? availableParallelism() + 2);  // some wait while others draw
const kLongestMs = 600000;
const kAgain = process.env.AGAIN !== '0';
const kJourneys = /^test_(adjust|batch|book|journey|label|shape|stock|ways_in)\./;

const files = readdirSync(here).filter((one) => (language ? kJourneys : /^test_.*\.mjs$/).test(one)).sort();
const all = (await Promise.all(files.map((name) => import(`./${name}`)))).flatMap(({ tests }) => tests);
const waiting = [];  // [engine, name, run]
for (const engine of kEngines) {
    let elsewhere = 0;
    for (const [name, run, { without = {}, once = false } = {}] of all) {
        if (!wanted.test(name)) continue;
        if (without[engine]) console.log(`left out: in ${engine}: ${name}: ${without[engine]}`);
        else if (once && (language || engine !== 'chromium')) ++elsewhere;
        else waiting.push([engine, name, run]);
    }
    if (elsewhere)
        console.log(`left out: in ${engine}: ${elsewhere} tests of what is the same in every engine and language, which run in chromium`);
}

const pictures = join(build, 'page_failures');
rmSync(pictures, { recursive: true, force: true });
const passed = {};
const failed = {};
const missing = new Set();  // engines of which there is none here that can be driven
for (const engine of kEngines) passed[engine] = failed[engine] = 0;

// Runs a test in this browser and leaves nothing open. What it has to say, or {error}: what is wrong.
async function attempt(browser, name, run) {
    let timer;
    const late = new Promise((_, fail) => {
        timer = setTimeout(() => fail(new Error(`not done after ${kLongestMs / 1000} s`)), kLongestMs);
    });
    try {
        const said = await Promise.race([run({ browser, file: join(build, 'tarebench.html'), hosted: join(build, 'hosted') }), late]);
        const found = (await Promise.all(inUse(browser).map(faults))).flat();
        if (found.length) throw new Error(found.join('\n'));
        for (const context of inUse(browser)) await giveBack(browser, context).catch(() => {});
        return { said };
    } catch (error) {
        mkdirSync(pictures, { recursive: true });
        const stem = name.replace(/\W+/g, '-').slice(0, 60);
        for (const [n, page] of inUse(browser).flatMap((context) => context.pages()).entries())
            await page.screenshot({ path: join(pictures, `${stem}-${n + 1}.png`), timeout: 5000 }).catch(() => {});
        return { error };
    } finally {
        clearTimeout(timer);
        for (const context of inUse(browser)) await context.close().catch(() => {});
    }
}

function report(engine, name, { said, error }, started) {
    const remarks = [said, `${((Date.now() - started) / 1000).toFixed(1)} s`].filter(Boolean).join(', ');
    (error ? failed : passed)[engine] += 1;
    console.log([`${error ? 'FAILED' : 'passed'}  ${engine}: ${name} (${remarks})`, ...(error ? wrong(error) : [])].join('\n        '));
}

function wrong(error) {
    const lines = String(error.message).split('\nBrowser logs')[0].split('\n').slice(0, 40);
    const where = [...String(error.stack).matchAll(/at .*?(tests\/page\/\w+\.mjs:\d+)/g)].map((hit) => hit[1]).slice(0, 4);
    return [...lines, where.join(' < ')];
}

// The browser of this engine, the one at hand or another; null where there is none.
async function browserOf(engine, atHand) {
    if (atHand?.engine.name === engine && atHand.isConnected()) return atHand;
    await atHand?.close().catch(() => {});
    try {
        return missing.has(engine) ? null : await launch(engine);
    } catch (error) {
        if (!(error instanceof TooOld)) throw error;
        if (!missing.has(engine)) console.log(`left out: in ${engine}: every test: ${error.message}`);
        missing.add(engine);
        return null;
    }
}

async function work() {
    let browser = null;
    for (let test = waiting.shift(); test; test = waiting.shift()) {
        const [engine, name, run] = test;
        const started = Date.now();
        browser = await browserOf(engine, browser);
        if (!browser) continue;
        let outcome = await attempt(browser, name, run);
        if (outcome.error && kAgain) {
            console.log([`AGAIN   ${engine}: ${name}`, ...wrong(outcome.error)].join('\n        '));
            browser = await browserOf(engine, browser);
            outcome = await attempt(browser, name, run);
        }
        report(engine, name, outcome, started);
    }
    await browser?.close();
}

await Promise.all(Array.from({ length: kWorkers }, work));
const sum = (counts) => Object.values(counts).reduce((one, other) => one + other, 0);
if (kEngines.length > 1) for (const engine of kEngines) console.log(`in ${engine}: ${passed[engine]} passed, ${failed[engine]} failed`);
console.log(`${sum(passed)} passed, ${sum(failed)} failed`);
process.exitCode = sum(failed) === 0 ? 0 : 1;
