// From the ingredient list of the invented Lantern Street balm to a recipe in the book; and what is no list.
import assert from 'node:assert/strict';
import { address, open, profile, ready } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kList = 'Ingredients: Ricinus Communis Seed Oil, Butyrospermum Parkii Butter, Theobroma Cacao Seed Butter, Tocopherol';

async function reading(bench, makeHand) {
    const page = await open(await profile(bench.browser), address(bench.file));
    const hand = makeHand(page);
    await steps.press(page, hand, 'book.new');
    await steps.press(page, hand, 'new.reading');
    return { page, hand };
}

async function readingJourney(bench, makeHand) {
    const { page, hand } = await reading(bench, makeHand);
    await hand.write(await seen.field(page, say('reading_ui.list')), kList);
    await steps.press(page, hand, 'reading_ui.read');
    await steps.read(page);
    await hand.write(await seen.field(page, say('recipe.title')), 'Lantern Street balm');
    await steps.press(page, hand, 'reading_ui.keep', { n: 1 });
    const recipe = await seen.storedRecipe(page, say('reading_ui.recipe_title', { title: 'Lantern Street balm', n: 1 }));
    assert.deepEqual(recipe.lines.map((line) => line.ingredient), ['castor', 'shea', 'cocoa', 'tocopherol']);
    const percents = recipe.lines.map((line) => line.percent);
    assert.ok(Math.abs(percents.reduce((sum, one) => sum + one, 0) - 100) < 1e-9, `${percents} add to 100`);
    for (let i = 1; i < 3; ++i) assert.ok(percents[i] <= percents[i - 1], `${percents} fall as the list does`);
    assert.ok(recipe.notes.includes('Ricinus Communis Seed Oil'), 'where it comes from is noted');
    await page.context().close();
}

export const tests = [
    ['by finger: from an ingredient list to a recipe in the book', (bench) => readingJourney(bench, touch)],
    ['by the mirror alone: the same of an ingredient list', (bench) => readingJourney(bench, mirror)],

    ['by keyboard alone: the same of an ingredient list', (bench) => readingJourney(bench, keyboard), { once: true }],

    ['loaded again, the question is there as it was left, worked out anew', async (bench) => {
        const { page, hand } = await reading(bench, mirror);
        await hand.write(await seen.field(page, say('reading_ui.list')), kList);
        await steps.press(page, hand, 'reading_ui.read');
        await steps.read(page);
        await page.reload();
        await ready(page);
        await steps.read(page);
        const main = await page.locator('#mirror').textContent();
        for (const words of [ingredientName('cocoa'), say('reading_ui.allowed')]) assert.ok(main.includes(words), words);
        await page.context().close();
    }, { once: true }],

    ['two hundred names, right-to-left script, emoji, a name said twice and a shop\u2019s page are read as far as they go', async (bench) => {
        const { page, hand } = await reading(bench, mirror);
        const lists = [
            Array.from({ length: 200 }, (_, i) => `Plant ${i + 1} Oil`).join(', '),
            '\u0632\u064A\u062A, \u0634\u0645\u0639, \u05E9\u05E2\u05D5\u05D4',
            '\u{1F41D} Cera Alba, \u{1F33B} Helianthus Annuus Seed Oil', 'Cera Alba, Cera Alba, Lanolin',
            'Home > Balms\n\u2605\u2605\u2605\u2605 (128 reviews)\n\u00A38.50\nAdd to basket\nIngredients: Ricinus Communis Seed Oil, ' +
                'Cera Alba, Butyrospermum Parkii Butter.\nYou may also like\nPrivacy, cookies, contact',
        ];
        for (const list of lists) {
            await hand.write(await seen.field(page, say('reading_ui.list')), list);
            await steps.press(page, hand, 'reading_ui.read');
            await page.getByRole('heading', { name: say('reading_ui.listed') }).waitFor({ state: 'attached', timeout: 60000 });
            const names = await page.getByRole('list', { name: say('reading_ui.listed') }).getByRole('listitem').count();
            assert.ok(names > 0, list.slice(0, 40));
            await steps.press(page, hand, 'reading_ui.other');
            assert.equal(await (await seen.field(page, say('reading_ui.list'))).inputValue(), list, 'the text is whole');
        }
        await page.context().close();
    }, { once: true }],

    ['what is no ingredient list is said, and stays in its field', async (bench) => {
        const { page, hand } = await reading(bench, mirror);
        const field = await seen.field(page, say('reading_ui.list'));
        for (const text of ['', 'x'.repeat(10000)]) {
            await hand.write(field, text);
            await steps.press(page, hand, 'reading_ui.read');
            assert.equal(await field.inputValue(), text);
            const main = await page.locator('#mirror').textContent();
            assert.ok(main.includes(say('error.list_empty')), 'it says that there is no ingredient');
        }
        await page.context().close();
    }, { once: true }],

    ['what cannot all be true is told in its own words, with what would mend it', async (bench) => {
        const { page, hand } = await reading(bench, mirror);
        await hand.write(await seen.field(page, say('reading_ui.list')), 'Castor oil 10 %, Shea butter 30 %, Cocoa butter');
        await steps.press(page, hand, 'reading_ui.read');
        await page.waitForFunction((words) => document.querySelector('#mirror').textContent.includes(words),
            say('reading_ui.nothing_fits'));
        await page.waitForFunction((words) => document.querySelector('#mirror').textContent.includes(words), say('reading_ui.mend'));
        await page.context().close();
    }, { once: true }],
];
