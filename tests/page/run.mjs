// node tests/page/run.mjs [BUILD_FOLDER] [PATTERN] [--engine=chromium|firefox|webkit] [--language=en-XA]: the real page in a
// real browser, as a person uses it. BUILD_FOLDER holds tarebench.html and hosted/ (default build/wasm); PATTERN: only
// tests whose name it matches. A test that needs what an engine has not says so:
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
import { faults, launch } from './browser.mjs';
import { TooOld } from './too_old.mjs';
import { language } from './words.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const [folder, pattern] = process.argv.slice(2).filter((one) => !one.startsWith('--'));
const build = resolve(folder ?? join(here, '../../build/wasm'));
const wanted = new RegExp(pattern ?? '', 'iu');
const kEngine = process.argv.find((one) => one.startsWith('--engine='))?.slice(9) ?? 'chromium';
const kWorkers = Number(process.env.WORKERS ?? availableParallelism() + 1);  // two leave a third of two processors idle
const kLongestMs = 600000;
const kAgain = process.env.AGAIN !== '0';
const kJourneys = /^test_(adjust|batch|book|journey|label|shape|stock|ways_in)\./;

const tests = [];
let elsewhere = 0;
const files = readdirSync(here).filter((one) => (language ? kJourneys : /^test_.*\.mjs$/).test(one)).sort();
for (const name of files)
    for (const [title, run, { without = {}, once = false } = {}] of (await import(`./${name}`)).tests) {
        if (!wanted.test(title)) continue;
        if (without[kEngine]) console.log(`left out: in ${kEngine}: ${title}: ${without[kEngine]}`);
        else if (once && (language || kEngine !== 'chromium')) ++elsewhere;
        else tests.push([title, run]);
    }
if (elsewhere)
    console.log(`left out: in ${kEngine}: ${elsewhere} tests of what is the same in every engine and language, which run in chromium`);

const pictures = join(build, 'page_failures');
rmSync(pictures, { recursive: true, force: true });
let passed = 0;
let failed = 0;

// Runs a test in this browser and leaves nothing open. What it has to say, or {error}: what is wrong.
async function attempt(browser, name, run) {
    let timer;
    const late = new Promise((_, fail) => {
        timer = setTimeout(() => fail(new Error(`not done after ${kLongestMs / 1000} s`)), kLongestMs);
    });
    try {
        const said = await Promise.race([run({ browser, file: join(build, 'tarebench.html'), hosted: join(build, 'hosted') }), late]);
        const found = (await Promise.all(browser.contexts().map(faults))).flat();
        if (found.length) throw new Error(found.join('\n'));
        return { said };
    } catch (error) {
        mkdirSync(pictures, { recursive: true });
        const stem = name.replace(/\W+/g, '-').slice(0, 60);
        for (const [n, page] of browser.contexts().flatMap((context) => context.pages()).entries())
            await page.screenshot({ path: join(pictures, `${stem}-${n + 1}.png`), timeout: 5000 }).catch(() => {});
        return { error };
    } finally {
        clearTimeout(timer);
        for (const context of browser.contexts()) await context.close().catch(() => {});
    }
}

function report(name, { said, error }, started) {
    const seconds = `${((Date.now() - started) / 1000).toFixed(1)} s`;
    if (!error) {
        passed += 1;
        console.log(`passed  ${name} (${[said, seconds].filter(Boolean).join(', ')})`);
        return;
    }
    failed += 1;
    console.log([`FAILED  ${name} (${seconds})`, ...wrong(error)].join('\n        '));
}

function wrong(error) {
    const lines = String(error.message).split('\nBrowser logs')[0].split('\n').slice(0, 40);
    const where = [...String(error.stack).matchAll(/at .*?(tests\/page\/\w+\.mjs:\d+)/g)].map((hit) => hit[1]).slice(0, 4);
    return [...lines, where.join(' < ')];
}

async function work() {
    let browser = await launch(kEngine);
    for (let test = tests.shift(); test; test = tests.shift()) {
        if (!browser.isConnected()) browser = await launch(kEngine);
        const started = Date.now();
        let outcome = await attempt(browser, ...test);
        if (outcome.error && kAgain) {
            console.log([`AGAIN   ${test[0]}`, ...wrong(outcome.error)].join('\n        '));
            if (!browser.isConnected()) browser = await launch(kEngine);
            outcome = await attempt(browser, ...test);
        }
        report(test[0], outcome, started);
    }
    await browser.close();
}

try {
    await Promise.all(Array.from({ length: kWorkers }, work));
} catch (error) {
    if (!(error instanceof TooOld)) throw error;
    console.log(`left out: in ${kEngine}: every test: ${error.message}`);
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
