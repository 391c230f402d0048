// Changing a formula as a whole, by finger on a phone: what changes is shown before it is taken, and a step back undoes it.
import assert from 'node:assert/strict';
import { address, open, profile } from './browser.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'potting_shed_hand_salve';
const kWax = 'beeswax_yellow';

async function phone({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    await steps.openStarter(page, mirror(page), kStarter);
    return { page, hand: touch(page) };
}
const percentOf = async (page, id) =>
    Number((await seen.storedRecipe(page, recipe(kStarter).title)).lines.find((one) => one.ingredient === id).percent);

export const tests = [
    ['firmer by a step by finger: shown, taken, taken back', async (bench) => {
        const { page, hand } = await phone(bench);
        const before = await percentOf(page, kWax);
        await steps.press(page, hand, 'adjust.firmness');
        await steps.press(page, hand, 'adjust.firmer');
        assert.equal(await percentOf(page, kWax), before, 'nothing is taken yet');
        await steps.press(page, hand, 'adjust.take');
        assert.equal(await percentOf(page, kWax), before + 1);
        await steps.press(page, hand, 'top.undo');
        assert.equal(await percentOf(page, kWax), before);
    }, { once: true }],

    ['one percent changes by finger and a chosen line gives way', async (bench) => {
        const { page, hand } = await phone(bench);
        const [wax, castor] = [await percentOf(page, kWax), await percentOf(page, 'castor')];
        await hand.press(await seen.button(page, ingredientName(kWax)));
        await steps.press(page, hand, 'adjust.give_way');
        await hand.number(await seen.field(page, say('adjust.new_percent', { name: ingredientName(kWax) })), String(wax + 2));
        const box = (id) => page.getByRole('dialog').getByRole('checkbox', { name: ingredientName(id), exact: true });
        await hand.press(box('olive'));  // the rest line, ticked from the start
        await hand.press(box('castor'));
        await steps.press(page, hand, 'adjust.take');
        assert.equal(await percentOf(page, kWax), wax + 2);
        assert.equal(await percentOf(page, 'castor'), castor - 2);
    }, { once: true }],

    ['the batch is made to fit what there is of the wax', async (bench) => {
        const { page, hand } = await phone(bench);
        await hand.press(await seen.button(page, ingredientName(kWax)));
        await steps.press(page, hand, 'adjust.fit');
        await hand.number(await seen.field(page, say('adjust.amount', { name: ingredientName(kWax) })), '20');
        await steps.press(page, hand, 'adjust.take');
        const { batch, lines } = await seen.storedRecipe(page, recipe(kStarter).title);
        const { percent } = lines.find((one) => one.ingredient === kWax);
        assert.ok(Math.abs(batch.grams - 2000 / percent) <= batch.division_g / 2 + 1e-9, `${batch.grams} g`);
    }, { once: true }],
];
