// node tests/page/run.mjs [BUILD_FOLDER] [PATTERN]: the real page in Chromium, as a person uses it.
// BUILD_FOLDER holds tarebench.html and hosted/ (default build/wasm); PATTERN: only tests whose name it matches.
// One line a test, a picture of each failure in BUILD_FOLDER/page_failures, last "N passed, N failed". What is waited
// for is a state of the page, never a span of time; so two browsers work side by side (WORKERS=1: one).
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { faults, launch } from './browser.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const build = resolve(process.argv[2] ?? join(here, '../../build/wasm'));
const wanted = new RegExp(process.argv[3] ?? '', 'iu');
const kWorkers = Number(process.env.WORKERS ?? 2);
const kLongestMs = 600000;

const tests = [];
for (const name of readdirSync(here).filter((one) => /^test_.*\.mjs$/.test(one)).sort())
    tests.push(...(await import(`./${name}`)).tests.filter(([title]) => wanted.test(title)));

const pictures = join(build, 'page_failures');
rmSync(pictures, { recursive: true, force: true });
let passed = 0;
let failed = 0;

// Runs a test in this browser and leaves nothing open. Null, or what is wrong.
async function attempt(browser, name, run) {
    let timer;
    const late = new Promise((_, fail) => {
        timer = setTimeout(() => fail(new Error(`not done after ${kLongestMs / 1000} s`)), kLongestMs);
    });
    try {
        await Promise.race([run({ browser, file: join(build, 'tarebench.html'), hosted: join(build, 'hosted') }), late]);
        const found = (await Promise.all(browser.contexts().map(faults))).flat();
        if (found.length) throw new Error(found.join('\n'));
        return null;
    } catch (error) {
        mkdirSync(pictures, { recursive: true });
        const stem = name.replace(/\W+/g, '-').slice(0, 60);
        for (const [n, page] of browser.contexts().flatMap((context) => context.pages()).entries())
            await page.screenshot({ path: join(pictures, `${stem}-${n + 1}.png`), timeout: 5000 }).catch(() => {});
        return error;
    } finally {
        clearTimeout(timer);
        for (const context of browser.contexts()) await context.close().catch(() => {});
    }
}

function report(name, error, started) {
    const seconds = `${((Date.now() - started) / 1000).toFixed(1)} s`;
    if (!error) {
        passed += 1;
        console.log(`passed  ${name} (${seconds})`);
        return;
    }
    failed += 1;
    const lines = String(error.message).split('\nBrowser logs')[0].split('\n').slice(0, 40);
    const where = [...String(error.stack).matchAll(/at .*?(tests\/page\/\w+\.mjs:\d+)/g)].map((hit) => hit[1]).slice(0, 4);
    console.log([`FAILED  ${name} (${seconds})`, ...lines, where.join(' < ')].join('\n        '));
}

async function work() {
    let browser = await launch();
    for (let test = tests.shift(); test; test = tests.shift()) {
        if (!browser.isConnected()) browser = await launch();
        const started = Date.now();
        report(test[0], await attempt(browser, ...test), started);
    }
    await browser.close();
}

await Promise.all(Array.from({ length: kWorkers }, work));
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
