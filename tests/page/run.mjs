// node tests/page/run.mjs [BUILD_FOLDER] [PATTERN]: the real page in Chromium, as a person uses it.
// BUILD_FOLDER holds tarebench.html and hosted/ (default build/wasm); PATTERN: only tests whose name it matches.
// One line a test, a picture of each failure in BUILD_FOLDER/page_failures, last "N passed, N failed". What is waited
// for is a state of the page, never a span of time.
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { faults, launch } from './browser.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const build = resolve(process.argv[2] ?? join(here, '../../build/wasm'));
const wanted = new RegExp(process.argv[3] ?? '', 'iu');
const kLongestMs = 600000;

const tests = [];
for (const name of readdirSync(here).filter((one) => /^test_.*\.mjs$/.test(one)).sort())
    tests.push(...(await import(`./${name}`)).tests);

const pictures = join(build, 'page_failures');
rmSync(pictures, { recursive: true, force: true });
let browser = await launch();
let passed = 0;
let failed = 0;

async function attempt(name, run) {
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
        let n = 0;
        for (const page of browser.contexts().flatMap((context) => context.pages()))
            await page.screenshot({ path: join(pictures, `${name.replace(/\W+/g, '-').slice(0, 60)}-${++n}.png`), timeout: 5000 }).catch(() => {});
        return error;
    } finally {
        clearTimeout(timer);
        for (const context of browser.contexts()) await context.close().catch(() => {});
        if (!browser.isConnected()) browser = await launch();
    }
}

for (const [name, run] of tests) {
    if (!wanted.test(name)) continue;
    const started = Date.now();
    const error = await attempt(name, run);
    const seconds = `${((Date.now() - started) / 1000).toFixed(1)} s`;
    if (error) {
        failed += 1;
        console.log(`FAILED  ${name} (${seconds})`);
        const where = /at .*?(tests\/page\/\w+\.mjs:\d+)/g;
        console.log(String(error.message).split('\nBrowser logs')[0].split('\n').slice(0, 40).map((line) => `        ${line}`).join('\n'));
        console.log(`        ${[...String(error.stack).matchAll(where)].map((hit) => hit[1]).slice(0, 4).join(' < ')}`);
    } else {
        passed += 1;
        console.log(`passed  ${name} (${seconds})`);
    }
}
await browser.close();
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
