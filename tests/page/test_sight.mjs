// What people who see little or otherwise have set in their system or browser: the size of letters, more contrast, the
// system's own colours. What the program makes of each is for the native tests (test_screens, test_theme); here, that
// the browser's word arrives, is drawn, and holds for the native field as well.
import assert from 'node:assert/strict';
import { address, open, profile, settled } from './browser.mjs';
import { mirror } from './hands.mjs';
import * as seen from './mirror.mjs';
import { picture } from './picture.mjs';
import { ingredientName } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';

async function starter({ browser, file }, options = {}) {
    const page = await open(await profile(browser, options), address(file));
    await steps.openStarter(page, mirror(page), kStarter);
    return page;
}

// From the first row with something drawn to the last, in the place of this element.
async function drawnHeight(page, element) {
    const there = await picture(page, await element.boundingBox());
    const ground = there.at(there.width - 1, 0);
    const rows = [...Array(there.height).keys()].filter((y) => [...Array(there.width).keys()]
        .some((x) => there.at(x, y).some((value, i) => Math.abs(value - ground[i]) > 60)));
    return rows[rows.length - 1] - rows[0] + 1;
}

// How high a heading's place is, how large the letters of the native field are and how high that field.
async function measured(page) {
    await settled(page);
    const heading = page.getByRole('heading', { level: 2, name: say('formula.steps') });
    const field = await seen.field(page, say('line.percent_of', { name: ingredientName('castor') }));
    await field.focus();
    await settled(page);
    const letters = await field.evaluate((one) => parseFloat(getComputedStyle(one).fontSize));
    const box = await field.boundingBox();
    await page.evaluate(() => document.activeElement.blur());
    await settled(page);
    return { heading: (await heading.boundingBox()).height, field: letters, height: box.height };
}

export const tests = [
    ['letters twice as large: the page follows at once, the field that is edited too, and back again', async (bench) => {
        const page = await starter(bench);
        const title = page.getByRole('heading', { level: 2, name: say('book.starters') });
        await steps.goTo(page, mirror(page), 'nav.book');
        const drawn = await drawnHeight(page, title);
        await steps.goTo(page, mirror(page), 'nav.formula');
        const before = await measured(page);
        // What a larger size in the browser's settings does to the root, which no style of the page may overrule.
        const size = (px) => page.evaluate(async (size) => {
            document.documentElement.style.fontSize = size;
            await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
            await tarebench.settled();
        }, px);
        await size('32px');
        const after = await measured(page);
        await steps.goTo(page, mirror(page), 'nav.book');
        await page.mouse.move(100, 300);
        await page.mouse.wheel(0, -5000);
        await settled(page);
        const larger = await drawnHeight(page, title);
        assert.ok(Math.abs(after.heading - 2 * before.heading) < 1, `${before.heading} ${after.heading}`);
        assert.ok(Math.abs(larger - 2 * drawn) <= 3, `drawn ${drawn} and ${larger} pixels high`);
        assert.ok(before.field >= 16 && after.field > 1.8 * before.field, `${before.field} ${after.field}`);
        assert.ok(after.height > before.height, 'the field itself is higher');
        await size('');
        await steps.goTo(page, mirror(page), 'nav.formula');
        assert.deepEqual(await measured(page), before);
        return `a heading of ${before.heading} is ${after.heading} points high, a field's letters of ${before.field} are ${after.field}`;
    }],

    ['the size of letters in the browser\'s settings is the one that is followed', async (bench) => {
        const context = await profile(bench.browser);
        const page = await open(context, address(bench.file));
        const high = () => page.getByRole('heading', { level: 2, name: say('book.starters') }).boundingBox();
        const before = await high();
        const session = await context.newCDPSession(page);
        await session.send('Page.setFontSizes', { fontSizes: { standard: 24, fixed: 20 } });
        await page.waitForFunction((old) => {
            const heading = document.querySelector('#mirror h2');
            return Math.abs(heading.getBoundingClientRect().height - 1.5 * old) < 1;
        }, before.height);
    }, { without: { firefox: 'its driver has no word for it', webkit: 'its driver has no word for it' } }],
];
