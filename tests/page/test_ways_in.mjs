// A list pasted, looked at and kept, by a finger at 360 x 640; and a formula said in grams. The text itself comes in
// by the mirror's field, as a phone's paste does.
import assert from 'node:assert/strict';
import { address, open, profile, settled } from './browser.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kMessy = ['Shed salve', '20 g beeswax', '50g shea butter', '2 tbsp olive oil', 'Honey a pinch', 'Pour into tins while warm.'].join('\n');

async function phone({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    return { page, hand: touch(page), quick: mirror(page) };
}

async function pasteList({ page, hand, quick }, text) {
    await steps.press(page, hand, 'book.new');
    await steps.press(page, hand, 'new.list');
    assert.equal(await seen.dialogTitle(page), say('new.list'));
    await quick.write(await seen.field(page, say('new.list_here')), text);
    await steps.press(page, hand, 'new.read');
    assert.equal(await seen.dialogTitle(page), say('pasted_ui.title'));
}

// As much as somebody may paste by mistake: an article instead of a list.
const kMuch = `Shed salve\n20 g beeswax\n50 g shea butter\n${'It was a long winter on the allotments, and the wax was hard. '.repeat(1700)}`.trim();

export const tests = [
    ['a hundred kilobytes pasted by mistake are taken in, what can be read of them is read, and the page goes on', async (bench) => {
        const bench1 = await phone(bench);
        const { page, hand } = bench1;
        assert.ok(kMuch.length > 100000);
        await pasteList(bench1, kMuch);
        assert.equal(await (await seen.within(page)).getByRole('button', { name: 'beeswax' }).count(), 1);
        await steps.press(page, hand, 'pasted_ui.back');
        assert.equal((await (await seen.field(page, say('new.list_here'))).inputValue()).length, kMuch.length, 'the text is whole');
        await steps.press(page, hand, 'sheet_ui.close');
        assert.deepEqual((await seen.stored(page)).recipes, {});
    }],

    ['a messy list is pasted by touch: shown, chosen from, left out, kept', async (bench) => {
        const bench1 = await phone(bench);
        const { page, hand } = bench1;
        await pasteList(bench1, kMessy);
        assert.deepEqual((await seen.stored(page)).recipes, {});
        const shown = await page.getByRole('dialog').innerText();
        assert.ok(shown.includes(say('pasted.amount_vague', { line: 5, column: 7, detail: 'a pinch' })), shown);
        await hand.press(await seen.button(page, 'beeswax'));
        assert.equal(await seen.dialogTitle(page), say('pasted_ui.line'));
        await hand.press(await seen.button(page, ingredientName('beeswax_yellow')));
        assert.equal(await seen.dialogTitle(page), say('pasted_ui.title'));
        await hand.press(await seen.button(page, 'Honey'));
        await steps.press(page, hand, 'pasted_ui.leave_out');
        await steps.press(page, hand, 'incoming.keep');
        await settled(page);
        assert.equal(await seen.title(page), 'Shed salve');
        const { lines, notes } = await seen.shownFormula(page);
        assert.deepEqual(lines.map((line) => line.name), ['beeswax_yellow', 'shea', 'olive'].map(ingredientName));
        assert.equal(notes, 'Pour into tins while warm.');
        const sum = lines.reduce((all, line) => all + Math.round(Number(line.percent) * 10000), 0);
        assert.equal(sum, 1000000);
    }, { once: true }],

    ['what bare numbers are is switched by touch', async (bench) => {
        const bench1 = await phone(bench);
        const { page, hand } = bench1;
        await pasteList(bench1, 'Candelilla wax 20\nOlive oil 80');
        await steps.press(page, hand, 'pasted_ui.grams');
        await steps.press(page, hand, 'incoming.keep');
        const { batch } = await seen.storedRecipe(page, say('recipe.new_title'));
        assert.equal(batch.grams, 100);
    }, { once: true }],

    ['a list that is left is not kept, and its text can be changed', async (bench) => {
        const bench1 = await phone(bench);
        const { page, hand } = bench1;
        await pasteList(bench1, 'Candelilla wax 20 %\nOlive oil 70 %');
        await steps.press(page, hand, 'pasted_ui.back');
        assert.equal(await seen.dialogTitle(page), say('new.list'));
        assert.equal(await (await seen.field(page, say('new.list_here'))).inputValue(), 'Candelilla wax 20 %\nOlive oil 70 %');
        await steps.press(page, hand, 'sheet_ui.close');
        assert.deepEqual((await seen.stored(page)).recipes, {});
    }, { once: true }],

    ['a formula is said in grams by the keypad and read back in percent', async (bench) => {
        const bench1 = await phone(bench);
        const { page, hand } = bench1;
        await pasteList(bench1, 'Candelilla wax 20 %\nOlive oil 80 %');
        await steps.press(page, hand, 'incoming.keep');
        await steps.press(page, hand, 'amounts.title');
        await hand.number(await seen.field(page, say('amounts.of', { name: ingredientName('candelilla') })), '30');
        await hand.number(await seen.field(page, say('amounts.of', { name: ingredientName('olive') })), '90');
        await steps.press(page, hand, 'amounts.take');
        const { lines } = await seen.shownFormula(page);
        assert.deepEqual(lines.map((line) => line.percent), ['25', '75']);
    }, { once: true }],
];
