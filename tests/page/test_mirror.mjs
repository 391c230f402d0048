// What assistive technology meets: clicks without a pointer, focus that follows sheets and scrolls into view, live
// messages, nothing within reach beneath a sheet.
import assert from 'node:assert/strict';
import { audit } from './audit.mjs';
import { address, open, profile, settled } from './browser.mjs';
import { hasFocus, keyboard, mirror } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';

async function starter({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    await steps.openStarter(page, mirror(page), kStarter);
    return { page, keys: keyboard(page) };
}

export const tests = [
    ['a click that comes without a pointer works, on what is scrolled out of sight too', async (bench) => {
        const { page } = await starter(bench);
        const add = await seen.button(page, say('formula.step_add'));
        assert.equal(await add.evaluate((element) => element.classList.contains('clipped')), true, 'it is out of sight');
        await add.evaluate((element) => element.click());
        await settled(page);
        assert.equal((await seen.shownFormula(page)).steps.length, recipe(kStarter).steps.length + 1);
    }],

    ['what gets the focus by Tab scrolls into view, and what is typed there arrives', async (bench) => {
        const { page, keys } = await starter(bench);
        const notes = await seen.field(page, say('formula.notes'));
        await keys.write(notes, 'Ask about bees.');
        const box = await notes.boundingBox();
        assert.ok(box.y >= 0 && box.y + Math.min(box.height, 100) <= 640, JSON.stringify(box));
        await page.keyboard.press('Shift+Tab');
        await settled(page);
        assert.equal((await seen.storedRecipe(page, recipe(kStarter).title)).notes, 'Ask about bees.');
    }],

    ['a sheet takes the focus, keeps it while Tab is pressed, and gives it back on Escape', async (bench) => {
        const { page, keys } = await starter(bench);
        const line = await seen.button(page, ingredientName('shea'));
        await keys.press(line);
        const sheet = page.getByRole('dialog');
        const inside = () => sheet.evaluate((element) =>
            element.contains(document.activeElement) || document.activeElement === document.body);
        assert.equal(await sheet.evaluate((element) => element.contains(document.activeElement)), true);
        for (let i = 0; i < 20; ++i) {
            await page.keyboard.press('Tab');
            assert.equal(await inside(), true, `after ${i + 1} times Tab`);
        }
        await page.keyboard.press('Escape');
        await settled(page);
        assert.equal(await sheet.count(), 0);
        assert.equal(await hasFocus(line), true);
    }],

    ['beneath a sheet nothing can be reached', async (bench) => {
        const { page, keys } = await starter(bench);
        await keys.press(await seen.button(page, ingredientName('shea')));
        const loose = await page.evaluate(() => [...document.querySelectorAll('#mirror button, #mirror input, #mirror textarea')]
            .filter((one) => !one.closest('[inert], [role=dialog]')).map((one) => one.outerHTML));
        assert.deepEqual(loose, []);
    }, { once: true }],

    ['what happened is said in a live message', async (bench) => {
        const { page } = await starter(bench);
        const hand = mirror(page);
        await steps.press(page, hand, 'top.recipe');
        await steps.press(page, hand, 'recipe.to_bin');
        assert.equal(await page.getByRole('status').filter({ hasText: say('recipe.binned') }).count(), 1);
    }, { once: true }],

    ['the sum of the formula is said as it changes', async (bench) => {
        const { page } = await starter(bench);
        const hand = mirror(page);
        const sum = async () => (await page.getByRole('status').allTextContents()).join(' ');
        const percent = await seen.field(page, say('line.percent_of', { name: ingredientName('castor') }));
        await hand.number(percent, '12.6');
        assert.ok((await sum()).includes(say('formula.sum_rest', { rest: '31' })), await sum());
        await hand.number(percent, '60');
        assert.ok((await sum()).includes(say('formula.sum_over', { over: '16.4' })), await sum());
    }, { once: true }],

    ['the gallery of widgets opens by its fragment, without a fault that the audit knows, and is left to the book', async ({ browser, file }) => {
        const page = await open(await profile(browser), address(file) + '#gallery');
        await settled(page);
        assert.equal(await seen.title(page), say('gallery.title'));
        assert.deepEqual((await audit(page)).violations, []);
        await page.keyboard.press('Escape');
        await settled(page);
        assert.equal(await seen.title(page), say('book.title'));
    }, { once: true }],
];
