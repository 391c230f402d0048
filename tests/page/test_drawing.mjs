// The picture: nothing is drawn while nothing happens, themes follow, a lost drawing context comes back, the ring of the
// keyboard's focus is seen, and pages that cannot run say so in plain words.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { address, open, profile, ready, settled } from './browser.mjs';
import { drawnAt, hasFocus, keyboard, mirror, name, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { brightness, differing, drawnShare, picture } from './picture.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';
const percentOf = (id) => say('line.percent_of', { name: ingredientName(id) });

async function starter({ browser, file }, options = {}) {
    const context = await profile(browser, options);
    const page = await open(context, address(file));
    const hand = mirror(page);
    await steps.openStarter(page, hand, kStarter);
    return { context, page, hand };
}

// Three seconds are the subject here, so this waits for them.
const framesInThreeSeconds = (page) => page.evaluate(async () => {
    await tarebench.settled();
    const before = tarebench.frames();
    await new Promise((done) => setTimeout(done, 3000));
    return tarebench.frames() - before;
});

export const tests = [
    ['nothing is drawn while nothing happens: book, formula, keypad open, field being typed in', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        // One frame may still be due from before (a press that could have become a long one): then it is looked at again.
        const still = async (where) => {
            const first = await framesInThreeSeconds(page);
            assert.ok(first <= 1, `${where}: ${first} frames`);
            if (first > 0) assert.equal(await framesInThreeSeconds(page), 0, where);
        };
        await still('book');
        const hand = mirror(page);
        await steps.openStarter(page, hand, kStarter);
        await still('formula');
        const field = await seen.field(page, percentOf('castor'));
        await touch(page).press(field);
        await still('keypad');
        await page.keyboard.press('Escape');
        await field.focus();
        await still('native field');
    }],

    ['light and dark follow the device, and the choice made here goes before it', async (bench) => {
        const { page, hand } = await starter(bench, { colorScheme: 'light' });
        const ground = async () => brightness((await picture(page)).at(4, 320));
        assert.ok((await ground()) > 200);
        await page.emulateMedia({ colorScheme: 'dark' });
        await page.waitForFunction(() => getComputedStyle(document.documentElement).colorScheme === 'dark');
        await settled(page);
        assert.ok((await ground()) < 60);
        await steps.goTo(page, hand, 'nav.more');
        await steps.press(page, hand, 'settings.theme_light');
        assert.ok((await ground()) > 200);
        await page.reload();
        await ready(page);
        assert.ok((await ground()) > 200, 'it is kept');
    }],

    ['a drawing context that is lost and given back: the same picture, nothing lost', async (bench) => {
        const { page } = await starter(bench);
        const before = await picture(page);
        const kept = await seen.storedRecipe(page, recipe(kStarter).title);
        await page.evaluate(async () => {
            const gl = document.getElementById('canvas').getContext('webgl2') ?? document.getElementById('canvas').getContext('webgl');
            const extension = gl.getExtension('WEBGL_lose_context');
            const arrives = (kind) => new Promise((done) => document.getElementById('canvas').addEventListener(kind, done, { once: true }));
            const lost = arrives('webglcontextlost');
            extension.loseContext();
            await lost;
            await new Promise((done) => setTimeout(done, 0));  // not within the event that tells of the loss
            const back = arrives('webglcontextrestored');
            extension.restoreContext();
            await back;
        });
        await settled(page);
        assert.ok(drawnShare(before) > 0.05, 'there was something to be seen');
        assert.ok(differing(before, await picture(page)) < 0.002);
        assert.deepEqual(await seen.storedRecipe(page, recipe(kStarter).title), kept);
        const hand = mirror(page);
        await hand.press(await seen.button(page, ingredientName('shea')));
        assert.equal(await seen.dialogTitle(page), ingredientName('shea'));
    }],

    ['a drawing context that is lost for good is replaced', async (bench) => {
        const { page } = await starter(bench);
        const before = await picture(page);
        await page.evaluate(() => {
            globalThis.oldCanvas = document.getElementById('canvas');
            const gl = oldCanvas.getContext('webgl2') ?? oldCanvas.getContext('webgl');
            gl.getExtension('WEBGL_lose_context').loseContext();
        });
        await page.waitForFunction(() => document.getElementById('canvas') !== globalThis.oldCanvas);
        await settled(page);
        assert.ok(differing(before, await picture(page)) < 0.002);
        await touch(page).press(await seen.button(page, ingredientName('shea')));
        assert.equal(await seen.dialogTitle(page), ingredientName('shea'));
    }],

    ['without WebGL the page says so, with what is kept', async (bench) => {
        const context = await profile(bench.browser, {
            before: () => {
                const own = HTMLCanvasElement.prototype.getContext;
                HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
                    return /webgl/.test(kind) ? null : own.call(this, kind, ...rest);
                };
            },
            mayWarn: /WebGL|context/i,
        });
        const page = await open(context, address(bench.file), { running: false });
        await page.locator('#notice .drawing').first().waitFor({ state: 'visible' });
        assert.match(await page.locator('#notice').innerText(), /no WebGL/);
        assert.equal(await page.locator('#stage').isVisible(), false);
    }],

    ['without JavaScript the page says what to do', async (bench) => {
        const page = await open(await profile(bench.browser, { javaScriptEnabled: false }), address(bench.file), { running: false });
        const notice = page.locator('#notice .script');
        assert.equal(await notice.isVisible(), true);
        const words = await notice.innerText();
        for (const part of ['JavaScript', 'Safari', 'Add to Home Screen']) assert.ok(words.includes(part), part);
        const { width } = await notice.boundingBox();
        assert.ok(width <= 360);
    }],

    ['after a fault the page says that it has stopped and hands out what is kept', async (bench) => {
        const { page } = await starter(bench);
        await page.evaluate(() => tarebench.fail('crash'));
        assert.equal(await page.locator('#notice .crash').first().isVisible(), true);
        assert.ok((await page.locator('#rescue').innerText()).includes(recipe(kStarter).title));
        const waiting = page.waitForEvent('download');
        await page.locator('#rescue').getByRole('button', { name: /file/ }).click();
        const saved = JSON.parse(readFileSync(await (await waiting).path(), 'utf8'));
        assert.ok(Object.values(saved.records).some((text) => text.includes(recipe(kStarter).title)));
        await page.locator('#rescue').getByRole('button').first().click();
        await ready(page);
        await page.getByRole('main').waitFor({ state: 'attached' });
    }],

    ['what has the keyboard’s focus wears a ring: buttons, lines, tabs, fields, choices', async (bench) => {
        const { page } = await starter(bench);
        const keys = keyboard(page);
        const ringed = async (locator) => {
            await keys.goTo(locator);
            assert.equal(await hasFocus(locator), true);
            const { box } = await drawnAt(locator);
            const clip = {
                x: Math.max(0, box.x - 4), y: box.y - 4,
                width: Math.min(box.width + 8, 360), height: Math.min(box.height + 8, 640 - box.y + 4),
            };
            const withFocus = await picture(page, clip);
            await page.evaluate(() => document.activeElement.blur());
            await settled(page);
            const without = await picture(page, clip);
            const share = differing(withFocus, without);
            assert.ok(share > 0.02, `${await name(locator)}: ${(share * 100).toFixed(2)} % differ`);
        };
        await ringed(await seen.button(page, say('top.recipe')));
        await ringed(await seen.button(page, ingredientName('shea')));
        await ringed(await seen.field(page, percentOf('castor')));
        await ringed(await seen.button(page, say('formula.add_line', { id: 'A' })));
        await ringed(seen.place(page, 'nav.batch'));
        const hand = mirror(page);
        await steps.goTo(page, hand, 'nav.more');
        await ringed(await seen.button(page, say('settings.sign_comma')));
    }],

    ['letters are crisp at any density: one canvas pixel for one of the screen', async (bench) => {
        for (const deviceScaleFactor of [1, 1.5, 2, 3]) {
            const context = await profile(bench.browser, { deviceScaleFactor });
            const page = await open(context, address(bench.file));
            const size = await page.locator('#canvas').evaluate((canvas) => [canvas.width, canvas.height]);
            assert.deepEqual(size, [360 * deviceScaleFactor, 640 * deviceScaleFactor]);
            await context.close();
        }
    }],
];
