// The picture: nothing is drawn while nothing happens, themes follow, the ring of the keyboard's focus is seen.
import assert from 'node:assert/strict';
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
    ['it is drawn by WebGL 2, and there is something to be seen', async (bench) => {
        const { page } = await starter(bench);
        const [kind, renderer] = await page.evaluate(() => {
            const gl = document.getElementById('canvas').getContext('webgl2');
            const more = gl.getExtension('WEBGL_debug_renderer_info');
            return [gl.constructor.name, gl.getParameter(more ? more.UNMASKED_RENDERER_WEBGL : gl.RENDERER)];
        });
        assert.equal(kind, 'WebGL2RenderingContext');
        assert.ok(drawnShare(await picture(page)) > 0.05);
        return `by ${renderer}`;
    }],

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
        const { page, hand } = await starter(bench, { colorScheme: 'light', deviceScaleFactor: 1 });
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
    }, { without: {
        firefox: 'its protocol has no way to change the colour scheme', webkit: 'its protocol has no way to change the colour scheme',
    } }],

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
    }, { without: { webkit: 'it has one density' } }],
];
