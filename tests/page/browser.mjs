// One browser for all tests, whichever engine it is of, a profile as good as new for each. Every page is watched: a request to
// anywhere but the page itself, a breach of its policy, an error on its console or an uncaught one fails the test that
// opened it. What differs between the engines lies in engine_*.mjs.
import { pathToFileURL } from 'node:url';
import { language } from './words.mjs';

// A phone. Drawn in software, three pixels a point cost eight times as much as one: for the tests in which density plays
// no part it is a half where the driver knows how, and for the others what the engine can draw in time.
export const kPhone = { viewport: { width: 360, height: 640 }, deviceScaleFactor: 0.5, hasTouch: true, isMobile: true };
export const kDense = { dense: true };
const kPatience = 15000;

export async function launch(engine = 'chromium') {
    const its = await import(`./engine_${engine}.mjs`);
    const browser = await its.launch();
    browser.engine = its;
    browser.resting = new Map();  // profiles to be lent again, by what was asked of them
    return browser;
}

// A window that is new takes a second of the processor more than one that was there. One of which nothing was asked but a
// size, in which one page alone was opened, is as good as new with an empty store.
const kLent = ['viewport', 'deviceScaleFactor', 'isMobile', 'hasTouch', 'dense'];
const kindOf = (options) => Object.keys(options).every((one) => kLent.includes(one)) && JSON.stringify(options);

// A profile of its own. Options are the driver's, and further:
//   offline   cut the network (true)
//   before    script run ahead of the page's own
//   reach     addresses that may be asked for besides those opened; with / at the end, all below
//   dense     as many pixels a point as the engine can draw in time
//   mayWarn   what the console may say, as a pattern
//   own       what is done to it outlasts the page (its history, its settings): so it is new and is not lent again (true)
export async function profile(browser, options = {}) {
    const rested = browser.resting.get(kindOf(options))?.pop();
    if (rested) return Object.assign(rested, { inUse: true });
    const { offline = true, before, mayWarn, reach = [], dense = false, own, ...driver } = options;
    const { understood, density } = browser.engine;
    const context = await browser.newContext(understood({
        ...kPhone, ...(dense ? { deviceScaleFactor: density } : {}), acceptDownloads: true,
        ...(language ? { locale: language } : {}), ...driver,
    }));
    context.engine = browser.engine;
    context.setDefaultTimeout(kPatience);
    if (offline) await context.setOffline(true);
    if (before) await context.addInitScript(before);
    const faults = [];
    context.allows = (url) => /^(blob|data):/.test(url) || [...reach, ...context.opened]
        .some((one) => url.split('#')[0] === one || (one.endsWith('/') && url.startsWith(one)));
    context.on('request', (request) => {
        if (!context.allows(request.url())) faults.push(`asked for ${request.url()}`);
    });
    context.on('console', (message) => {
        if (['error', 'warning'].includes(message.type()) && !(mayWarn && mayWarn.test(message.text())))
            faults.push(`console: ${message.text()}`);
    });
    context.on('weberror', (error) => faults.push(`uncaught: ${error.error().message}`));
    context.opened = [];
    context.faults = faults;
    context.lentAs = kindOf(options);
    context.inUse = true;
    return context;
}

export const inUse = (browser) => browser.contexts().filter((context) => context.inUse);

// After a test that went well: what may be lent again rests, whatever else there is is closed.
export async function giveBack(browser, context) {
    const [page, second] = context.pages();
    if (!context.lentAs || !page || second || new Set(context.opened).size !== 1) return context.close();
    await page.evaluate(() => {
        Storage.prototype.setItem = () => {};  // a page that is left saves what it has
        localStorage.clear();
        sessionStorage.clear();
    });
    await page.goto('about:blank');
    Object.assign(context, { opened: [], waiting: page, inUse: false });
    context.faults.length = 0;
    browser.resting.set(context.lentAs, [...(browser.resting.get(context.lentAs) ?? []), context]);
}

export const address = (file) => pathToFileURL(file).href;

// Opens the page and waits until it stands still.
export async function open(context, url, { running = true } = {}) {
    const page = context.waiting ?? (await context.newPage());
    if (context.waiting) await page.bringToFront();  // others were opened since
    context.waiting = null;
    context.opened.push(url.split('#')[0]);
    await page.goto(url);
    if (running) await ready(page);
    return page;
}

// In one go: a page that is about to be loaded again is ready as well, and would be another by a second question.
export async function ready(page) {
    await page.waitForFunction(() =>
        globalThis.tarebench && !tarebench.crashed && tarebench.settled && tarebench.settled().then(() => true));
}

export const settled = (page) => page.evaluate(() => tarebench.settled());

// What the watch has found, the shell's own errors included, and what the page's own record says that it loaded: not every
// engine tells of requests.
export async function faults(context) {
    const found = [...context.faults];
    for (const page of context.pages()) {
        const [errors, loaded] = await page.evaluate(() => [
            globalThis.tarebench ? tarebench.errors : [], performance.getEntriesByType('resource').map((one) => one.name),
        ]).catch(() => [[], []]);
        found.push(...errors, ...loaded.filter((url) => !context.allows(url)).map((url) => `loaded ${url}`));
    }
    return found;
}
