// One Chromium for all tests, a fresh profile for each. Every page is watched: a request to anywhere but the page itself,
// a breach of its policy, an error on its console or an uncaught one fails the test that opened it.
import { chromium } from 'playwright-core';
import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

// Software drawing, and nothing of the browser's own that would look for a network.
const kFlags = [
    '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--disable-quic', '--no-first-run',
    '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-default-apps',
    '--force-color-profile=srgb', '--hide-scrollbars',
];
// A phone. Drawn in software, three pixels a point cost eight times as much as one: for the tests in which density plays
// no part it is 1. DENSITY=1 makes it 1 everywhere, to try things out.
export const kPhone = { viewport: { width: 360, height: 640 }, deviceScaleFactor: 1, hasTouch: true, isMobile: true };
export const kDense = { deviceScaleFactor: Number(process.env.DENSITY ?? 2) };
const kPatience = 15000;

export async function launch() {
    const wanted = process.env.CHROMIUM ?? ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find(existsSync);
    if (!wanted) throw new Error('chromium is missing; it is in the package chromium (or say CHROMIUM=path)');
    const root = process.getuid && process.getuid() === 0;
    return chromium.launch({
        executablePath: wanted, args: root ? [...kFlags, '--no-sandbox'] : kFlags,
        handleSIGINT: false, handleSIGTERM: false, handleSIGHUP: false,  // it ends with the run
    });
}

// A profile of its own. Options are the driver's, and further:
//   offline   cut the network (true)
//   before    script run ahead of the page's own
//   reach     addresses that may be asked for besides those opened; with / at the end, all below
//   mayWarn   what the console may say, as a pattern
export async function profile(browser, options = {}) {
    const { offline = true, before, mayWarn, reach = [], ...driver } = options;
    const context = await browser.newContext({ ...kPhone, acceptDownloads: true, ...driver });
    context.setDefaultTimeout(kPatience);
    if (offline) await context.setOffline(true);
    if (before) await context.addInitScript(before);
    const faults = [];
    context.on('request', (request) => {
        const url = request.url();
        if (url.startsWith('blob:') || url.startsWith('data:')) return;
        const own = (allowed) => url.split('#')[0] === allowed || (allowed.endsWith('/') && url.startsWith(allowed));
        if (![...reach, ...context.opened].some(own)) faults.push(`asked for ${url}`);
    });
    context.on('console', (message) => {
        if (['error', 'warning'].includes(message.type()) && !(mayWarn && mayWarn.test(message.text())))
            faults.push(`console: ${message.text()}`);
    });
    context.on('weberror', (error) => faults.push(`uncaught: ${error.error().message}`));
    context.opened = [];
    context.faults = faults;
    return context;
}

export const address = (file) => pathToFileURL(file).href;

// Opens the page and waits until it stands still.
export async function open(context, url, { running = true } = {}) {
    const page = await context.newPage();
    context.opened.push(url.split('#')[0]);
    await page.goto(url);
    if (running) await ready(page);
    return page;
}

export async function ready(page) {
    await page.waitForFunction(() => globalThis.tarebench && (tarebench.settled || tarebench.crashed));
    await settled(page);
}

export const settled = (page) => page.evaluate(() => tarebench.settled());

// What the watch has found, the shell's own errors included.
export async function faults(context) {
    const found = [...context.faults];
    for (const page of context.pages())
        found.push(...(await page.evaluate(() => (globalThis.tarebench ? tarebench.errors : [])).catch(() => [])));
    return found;
}
