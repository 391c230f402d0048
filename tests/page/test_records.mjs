// Batch records, lots and versions on the real page: a lot on the shelf, a record begun from the batch and written into,
// the lot followed to where its units went; a version kept, compared and taken again. All of it outlives a reload.
import assert from 'node:assert/strict';
import { address, open, profile, ready } from './browser.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kSalve = 'potting_shed_hand_salve';
const kWax = 'beeswax_yellow';

const filed = async (page, kind) =>
    Object.values((await seen.stored(page)).filed).map((one) => one.json).filter((json) => json.kind === kind);
const write = async (page, hand, key, text) => hand.write(await seen.field(page, say(key)), text);

async function addLot(page, hand) {
    await steps.goTo(page, hand, 'nav.stock');
    await hand.write(await seen.search(page, say('ingredient.search')), 'beesw');
    await hand.press(await seen.button(page, ingredientName(kWax)));
    await steps.press(page, hand, 'lot.add');
    await write(page, hand, 'lot.number', 'BW-7');
    await write(page, hand, 'lot.best_before', '2027-06-30');
    await steps.press(page, hand, 'lot.add');
    assert.equal((await filed(page, 'lot'))[0].number, 'BW-7');
    await steps.close(page, hand);
}

async function beginRecord(page, hand) {
    await steps.goTo(page, hand, 'nav.batch');
    await steps.press(page, hand, 'record_ui.write');
    await write(page, hand, 'record.who', 'Wren');
    await steps.press(page, hand, 'record_ui.begin');
    await steps.press(page, hand, 'record_ui.lots_at_hand', { n: 1 });
    await steps.press(page, hand, 'record_ui.as_planned');
    await steps.press(page, hand, 'record_ui.units_went_add');
    await hand.number(await seen.field(page, say('record_ui.how_many')), '2');
    await write(page, hand, 'record_text.sent', 'market stall');
    await steps.press(page, hand, 'record_ui.add');
}

async function keepAndTakeVersion(page, hand) {
    await steps.goTo(page, hand, 'nav.formula');
    await steps.press(page, hand, 'nav.versions');
    await write(page, hand, 'version_ui.name', 'first');
    await steps.press(page, hand, 'version_ui.keep');
    const percentOf = () => seen.storedRecipe(page, recipe(kSalve).title).then((one) => one.lines.find((line) => line.ingredient === kWax).percent);
    const before = await percentOf();
    await steps.press(page, hand, 'nav.lines');
    await hand.number(await seen.field(page, say('line.percent_of', { name: ingredientName(kWax) })), String(before + 1));
    assert.equal(await percentOf(), before + 1);
    await steps.press(page, hand, 'nav.versions');
    await hand.press(await seen.button(page, 'first'));
    assert.ok((await page.getByRole('dialog').textContent()).includes('+1'), 'the difference is said');
    await steps.press(page, hand, 'version_ui.take');
    assert.equal(await percentOf(), before);
}

async function journey({ browser, file }, makeHand, density = {}) {
    const page = await open(await profile(browser, density), address(file));
    const hand = makeHand(page);
    await addLot(page, hand);
    await steps.openStarter(page, hand, kSalve);
    await beginRecord(page, hand);
    await keepAndTakeVersion(page, hand);

    await page.reload();
    await ready(page);
    const [record] = await filed(page, 'batch_record');
    const { title } = recipe(kSalve);
    assert.equal(record.who, 'Wren');
    assert.deepEqual(record.entries.map((one) => one.kind), ['weighed', 'weighed', 'sent']);
    assert.equal((await filed(page, 'version')).length, 1, 'the record froze it, and the name is on the same one');
    await steps.goTo(page, hand, 'nav.more');
    await steps.press(page, hand, 'nav.records');
    await hand.press(await seen.button(page, `${record.number} · ${title}`));
    assert.equal(await seen.title(page), record.number);
    await hand.press(await seen.button(page, ingredientName(kWax)));
    await steps.press(page, hand, 'lot.trace');
    assert.equal(await seen.dialogTitle(page), say('lot.trace'));
    const row = await seen.button(page, `${record.number} · ${title}`);
    const traced = await row.evaluate((one) => document.getElementById(one.getAttribute('aria-describedby')).textContent);
    assert.ok(traced.includes('market stall'), traced);
    await page.context().close();
}

export const tests = [
    ['by finger: a lot, a batch record, where the units went, a version taken again', (bench) => journey(bench, touch)],
    ['by the mirror alone: a lot, a batch record, where the units went, a version taken again', (bench) => journey(bench, mirror), { once: true }],
];
