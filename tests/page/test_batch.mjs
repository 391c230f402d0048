// The batch by finger on a phone: for people, from what is at hand, a container by the water it takes, a remedy taken,
// scales and a jug. Figures are those of the page; how they come about is proved by the engine's own tests.
import assert from 'node:assert/strict';
import { address, open, profile } from './browser.mjs';
import { touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { container, ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { places, say } from './words.mjs';

const kSalve = 'potting_shed_hand_salve';

async function bench(browser, file, stem) {
    const page = await open(await profile(browser), address(file));
    const hand = touch(page);
    await steps.openStarter(page, hand, stem);
    await steps.goTo(page, hand, 'nav.batch');
    return { page, hand };
}

// Opens the sheet where it is said how much, by the row that says it in short.
async function howMuch(page, hand, shown) {
    await hand.press(page.getByRole('main').getByRole('button', { name: shown }).first());
    assert.equal(await seen.dialogTitle(page), say('batch.how_much'));
}

const sum = (batch) => batch.lines.reduce((all, line) => all + line.grams, 0);
const pressed = async (page, key) => (await seen.button(page, say(key))).getAttribute('aria-pressed');

async function people({ browser, file }) {
    const { page, hand } = await bench(browser, file, kSalve);
    await howMuch(page, hand, container(recipe(kSalve).batch.containers[0].id).name);
    await steps.press(page, hand, 'batch.for_people');
    assert.equal(await pressed(page, 'batch.for_people'), 'true');
    assert.equal(await pressed(page, 'batch.by_mass'), 'false', 'what is not chosen is said to be not pressed');
    await hand.number(await seen.field(page, say('batch.people')), '6');
    await hand.number(await seen.field(page, say('batch.each')), '2');
    await steps.press(page, hand, 'sheet_ui.done');
    const batch = await seen.shownBatch(page);
    assert.ok(batch.words.includes('12 ×'), batch.words);
    assert.equal(sum(batch), batch.total);
}

async function stock({ browser, file }) {
    const { page, hand } = await bench(browser, file, kSalve);
    await howMuch(page, hand, container(recipe(kSalve).batch.containers[0].id).name);
    await steps.press(page, hand, 'batch.from_stock');
    const wax = ingredientName('beeswax_yellow');
    await hand.number(await seen.field(page, say('batch.stock_of', { name: wax })), '16');
    await steps.press(page, hand, 'sheet_ui.done');
    const batch = await seen.shownBatch(page);
    assert.equal(sum(batch), batch.total);
    const line = recipe(kSalve).lines.find((one) => one.ingredient === 'beeswax_yellow');
    assert.ok(Math.abs(batch.total - (1600 * 100) / line.percent) <= 100, 'the wax says how far it goes');
    assert.equal(await page.getByRole('main').getByText(places('batch.stock_out')).count(), 1);
}

async function water({ browser, file }) {
    const { page, hand } = await bench(browser, file, kSalve);
    const { name } = container(recipe(kSalve).batch.containers[0].id);
    await howMuch(page, hand, name);
    await steps.press(page, hand, 'batch.by_water');
    await hand.number(await seen.field(page, say('batch.water_of', { name })), '33.2');
    await hand.number(await seen.field(page, say('batch.fill_percent_of', { name })), '90');
    await steps.press(page, hand, 'sheet_ui.done');
    const batch = await seen.shownBatch(page);
    assert.equal(sum(batch), batch.total);
    assert.ok(batch.words.includes('33.3'), `what it holds is said: ${batch.words}`);
}

async function remedy({ browser, file }) {
    const { page, hand } = await bench(browser, file, kSalve);
    await howMuch(page, hand, container(recipe(kSalve).batch.containers[0].id).name);
    await steps.press(page, hand, 'batch.by_mass');
    await hand.number(await seen.field(page, say('batch.mass')), '40');
    await steps.press(page, hand, 'sheet_ui.done');
    const mix = page.getByRole('main').getByRole('button', { name: places('remedy.mix_ahead_short') });
    assert.equal(await mix.count(), 1);
    const before = await seen.shownBatch(page);
    await hand.press(mix);
    assert.equal(await mix.count(), 0, 'taken, it is no longer needed');
    const after = await seen.shownBatch(page);
    assert.equal(sum(after), after.total);
    assert.equal(after.total, before.total);
    assert.equal(await page.getByRole('main').getByText(places('batch.mix_of')).count(), 1, 'what is mixed ahead stands above the lines');
    await steps.press(page, hand, 'top.undo');
    assert.deepEqual((await seen.shownBatch(page)).lines, before.lines);
}

async function scalesAndJug({ browser, file }) {
    const { page, hand } = await bench(browser, file, kSalve);
    await steps.goTo(page, hand, 'nav.more');
    await hand.write(await seen.field(page, say('settings.scale_name', { n: 1 })), 'Pocket');
    await hand.number(await seen.field(page, say('settings.scale_capacity', { n: 1 })), '100');
    await hand.press(page.getByRole('main').getByRole('button', { name: say('settings.jug_add'), exact: true }));
    await hand.number(await seen.field(page, say('settings.jug_empty', { n: 1 })), '60');
    await steps.goTo(page, hand, 'nav.batch');
    await howMuch(page, hand, container(recipe(kSalve).batch.containers[0].id).name);
    await hand.press((await seen.within(page)).getByRole('button', { name: new RegExp(`^${say('settings.jug_n', { n: 1 })}, `) }));
    await steps.press(page, hand, 'sheet_ui.done');
    const batch = await seen.shownBatch(page);
    assert.ok(batch.lines.some((line) => places('batch.on_scale_jug').test(line.percent)));
    assert.equal(sum(batch), batch.total);
}

export const tests = [
    ['a class of six gets two tins each', people, { once: true }],
    ['sixteen grams of wax say how far it goes', stock, { once: true }],
    ['a tin is filled by the water it takes to the brim', water, { once: true }],
    ['a remedy stands worked out, is taken by one tap and undone by another', remedy, { once: true }],
    ['a pocket scale and a jug decide where each line is weighed', scalesAndJug, { once: true }],
];
