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
        const context = await profile(bench.browser, { own: true });
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

    ['where the system forces its colours the page is drawn in them, and in its own again when it no longer does', async (bench) => {
        const page = await open(await profile(bench.browser, { forcedColors: 'active', deviceScaleFactor: 1 }), address(bench.file));
        const system = () => page.evaluate(() => {
            const probe = document.getElementById('text-size');
            return Object.fromEntries(['Canvas', 'CanvasText', 'Highlight', 'HighlightText'].map((name) => {
                probe.style.color = name;
                return [name, getComputedStyle(probe).color.match(/\d+/g).slice(0, 3).map(Number)];
            }));
        });
        const drawn = async () => {
            const there = await picture(page, await (await seen.button(page, say('book.new'))).boundingBox());
            const beside = await picture(page, { x: 0, y: 300, width: 10, height: 10 });
            const middle = Math.round(there.height / 2);
            const row = [...Array(there.width).keys()].map((x) => there.at(x, middle).join());
            return { ground: beside.at(4, 4), button: there.at(10, middle), row };
        };
        const theirs = await system();
        const forced = await drawn();
        assert.deepEqual(forced.ground, theirs.Canvas);
        assert.deepEqual(forced.button, theirs.Highlight);
        assert.ok(forced.row.includes(theirs.HighlightText.join()), 'its words are in the colour for that ground');
        // The native field lies over the picture in the same colours.
        await steps.openStarter(page, mirror(page), kStarter);
        const field = await seen.field(page, say('line.percent_of', { name: ingredientName('castor') }));
        await field.focus();
        await settled(page);
        const over = await field.evaluate((one) => {
            const probe = document.getElementById('text-size');
            const colour = (name) => {
                probe.style.color = name;
                return getComputedStyle(probe).color;
            };
            const style = getComputedStyle(one);
            return { has: [style.backgroundColor, style.color], wanted: [colour('Field'), colour('FieldText')] };
        });
        assert.deepEqual(over.has, over.wanted);
        await steps.goTo(page, mirror(page), 'nav.book');
        await page.emulateMedia({ forcedColors: 'none' });
        await page.waitForFunction(() => !matchMedia('(forced-colors: active)').matches);
        await settled(page);
        assert.notDeepEqual((await drawn()).button, forced.button);
        return `ground ${forced.ground}, button ${forced.button}`;
    }, { without: { webkit: 'it knows no forced colours', firefox: 'its driver has no word for it' } }],

    ['where the system forces its colours, what is read without the program has its colours and edges', async (bench) => {
        const page = await open(await profile(bench.browser, {
            forcedColors: 'active', javaScriptEnabled: true,
            before: 'delete globalThis.WebAssembly;', mayWarn: /./,
        }), address(bench.file), { running: false });
        const again = page.locator('#rescue button').first();
        await again.waitFor();
        const style = await again.evaluate((one) => {
            const { borderTopWidth, borderTopColor, backgroundColor, color } = getComputedStyle(one);
            const body = getComputedStyle(document.body);
            return { borderTopWidth, borderTopColor, backgroundColor, color, ground: body.backgroundColor, ink: body.color };
        });
        assert.equal(style.borderTopWidth, '2px');
        assert.notEqual(style.borderTopColor, style.backgroundColor, JSON.stringify(style));
        assert.notEqual(style.color, style.backgroundColor);
        assert.notEqual(style.ink, style.ground);
    }, { without: { webkit: 'it knows no forced colours', firefox: 'its driver has no word for it' } }],

    ['more contrast, wished for while the page is open, is drawn at once', async (bench) => {
        const page = await open(await profile(bench.browser, { own: true }), address(bench.file));
        const button = await seen.button(page, say('book.new'));
        const apart = async () => {
            const there = await picture(page, await button.boundingBox());
            const paper = await picture(page, { x: 0, y: 300, width: 10, height: 10 });
            const part = (value) => (value <= 0.04045 * 255 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4);
            const light = (rgb) => 0.2126 * part(rgb[0]) + 0.7152 * part(rgb[1]) + 0.0722 * part(rgb[2]);
            return (light(paper.at(4, 4)) + 0.05) / (light(there.at(10, Math.round(there.height / 2))) + 0.05);
        };
        const before = await apart();
        await page.emulateMedia({ contrast: 'more' });
        await page.waitForFunction(() => matchMedia('(prefers-contrast: more)').matches);
        await settled(page);
        const after = await apart();
        assert.ok(before < 7 && after > 9, `${before.toFixed(1)} to 1 and ${after.toFixed(1)} to 1`);
        return `${before.toFixed(1)} to 1, then ${after.toFixed(1)} to 1`;
    }, { without: { webkit: 'its driver has no word for it', firefox: 'its driver has no word for it' } }],
];
