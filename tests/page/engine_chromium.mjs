// Chromium, the package's own, driven over its debugging protocol: real touches, emulated phones, throttling.
// What an engine offers is the same in engine_firefox.mjs and engine_webkit.mjs:
//   name               as the runner and the tests' "without" call it
//   density            pixels a point for the tests in which that plays a part
//   readsClipboard     whether a page may be let to read what was copied
//   launch()           a browser: contexts(), newContext(options), isConnected(), close()
//   understood(o)      of the options of a profile, those that its driver takes
//   picture(page)      what is seen, as PNG
//   touch(page, deeds) what fingers do, see hands.mjs
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

export const name = 'chromium';
export const density = 2;
export const readsClipboard = true;

// Software drawing, and nothing of the browser's own that would look for a network.
const kFlags = [
    '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--disable-quic', '--no-first-run',
    '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-default-apps',
    '--force-color-profile=srgb', '--hide-scrollbars',
];

export async function launch() {
    const wanted = process.env.CHROMIUM ?? ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find(existsSync);
    if (!wanted) throw new Error('chromium is missing; it is in the package chromium (or say CHROMIUM=path)');
    const root = process.getuid && process.getuid() === 0;
    return chromium.launch({
        executablePath: wanted, args: root ? [...kFlags, '--no-sandbox'] : kFlags,
        handleSIGINT: false, handleSIGTERM: false, handleSIGHUP: false,  // it ends with the run
    });
}

export const understood = (options) => options;

export const picture = (page) => page.screenshot({ animations: 'allow', caret: 'hide' });

// All that happens between two waits of the real clock is sent at once and dated by the finger's own clock, which goes
// ahead of the page's: between two answers of a slow machine a tap would be a held one.
const kAheadMs = 300;
export async function touch(page, deeds) {
    page.touching ??= await page.context().newCDPSession(page);
    const kinds = { down: 'touchStart', move: 'touchMove', up: 'touchEnd' };
    const ahead = deeds.some(([deed]) => deed === 'hold') ? 0 : kAheadMs;
    let now = Math.max(Date.now() + ahead, page.touchedLast ?? 0);
    let sent = [];
    // The browser may say that it has taken an event before the page was told of it.
    await page.evaluate(() => {
        globalThis.lifted = new Promise((done) => {
            for (const kind of ['pointerup', 'pointercancel']) addEventListener(kind, () => done(true), { capture: true, once: true });
            setTimeout(done, 2000, false);
        });
    });
    for (const [deed, what] of deeds) {
        if (deed === 'pass') {
            now += what;
        } else if (deed === 'hold') {
            await Promise.all(sent);
            sent = [];
            await new Promise((done) => setTimeout(done, what));
            now = Math.max(Date.now(), now);
        } else {
            const touchPoints = what.map(([x, y], id) => ({ x, y, id }));
            sent.push(page.touching.send('Input.dispatchTouchEvent', { type: kinds[deed], touchPoints, timestamp: now / 1000 }));
        }
    }
    await Promise.all(sent);
    if (deeds.at(-1)[0] === 'up') await page.evaluate(() => globalThis.lifted);
    page.touchedLast = now;
}
