// The road from a recipe to what goes with the tins: weighed out with two mistakes and an adjustment, the page opened anew at
// every step and nothing lost; written down; batch sheet and a bought sheet of labels. By finger on a phone, and through the
// mirror alone. That the figures are right is proved by the engine's own tests.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { places, say } from './words.mjs';

const kSalve = 'potting_shed_hand_salve';
const kWax = ingredientName('beeswax_yellow');
const g = (figure) => say('unit.grams', { n: String(figure) });

async function weighing(page) {
    const all = Object.values((await seen.stored(page)).weighings);
    assert.equal(all.length, 1);
    return all[0].json;
}
// What the button at the thumb says: as much as is asked for.
const asked = (page) => page.locator('#mirror').getByRole('button', { name: new RegExp(`^${places('weigh.in').source}$`) }).first();
async function status(page) {
    const shown = page.getByRole('main').getByRole('status');
    return (await shown.count()) > 0 ? shown.first().textContent() : '';
}

// The page goes and comes back; what is kept and what is shown are the same.
async function anew(page) {
    await settled(page);
    const before = await weighing(page), shown = await status(page);
    await page.reload();
    await ready(page);
    const after = await weighing(page);
    assert.deepEqual({ ...after, saves: 0, changed: '' }, { ...before, saves: 0, changed: '' });
    assert.equal(await status(page), shown, 'the same line with the same figure');
}

async function pour(page, hand, figure) {
    await hand.number(await seen.field(page, say('weigh.scale_shows')), figure);
    await anew(page);
    assert.equal(await (await seen.field(page, say('weigh.scale_shows'))).inputValue(), figure, 'typed and not lost');
    await steps.press(page, hand, 'weigh.in', { g: g(figure) });
    await anew(page);
}

async function road(page, hand) {
    await steps.openStarter(page, mirror(page), kSalve);
    await steps.goTo(page, mirror(page), 'nav.batch');
    await steps.press(page, hand, 'batch.weigh_out');
    assert.match(await status(page), new RegExp(`^${say('weigh.add')} `));
    await anew(page);

    // Too much wax: all in proportion.
    await pour(page, hand, '45');
    await steps.press(page, hand, 'weigh.do_bring_up');
    await anew(page);
    // Too little shea, and there is no more: it stays so.
    await pour(page, hand, '20');
    await steps.press(page, hand, 'weigh.no_more_of_it');
    await steps.press(page, hand, 'weigh.do_leave');
    await anew(page);
    for (let line = 2; line < 5; ++line) await hand.press(asked(page));
    await anew(page);

    // After the cold spoon: firmer.
    await steps.press(page, hand, 'weigh.adjust');
    await hand.number(await seen.field(page, say('adjust.new_percent', { name: kWax })), '20');
    await steps.press(page, hand, 'weigh.do_adjust');
    await anew(page);
    await hand.press(asked(page));
    await hand.press(asked(page));
    await anew(page);
    assert.ok((await status(page)).startsWith(say('weigh.all_in')), 'all is in');
    const { acts } = await weighing(page);
    assert.deepEqual(acts.map((act) => act.do), ['pour', 'proportion', 'pour', 'accept', 'pour', 'pour', 'pour', 'adjust', 'pour', 'pour']);

    // Written down: what was weighed as a batch record, what the adjustment made of the recipe as a version.
    await steps.press(page, hand, 'weigh.end');
    await steps.press(page, hand, 'weigh.record');
    const { filed, weighings } = await seen.stored(page);
    assert.equal(Object.keys(weighings).length, 0);
    const kinds = Object.values(filed).map((one) => one.json.kind).sort();
    assert.deepEqual(kinds, ['batch_record', 'version', 'version']);

    // On paper: the record with what the scale showed, the sheet for the next batch, a label for every tin.
    await steps.press(page, hand, 'record_ui.paper');
    const { words } = await paperOf(page);
    assert.match(words, /\n45(\.0+)?\n/);
    await steps.close(page, hand);
    await steps.goTo(page, hand, 'nav.batch');
    await steps.press(page, hand, 'batch.papers');
    await steps.press(page, hand, 'papers.batch_sheet');
    assert.ok((await paperOf(page)).title.includes(recipe(kSalve).title));
    await steps.close(page, hand);
    await steps.press(page, hand, 'papers.sheet');
    await steps.press(page, hand, 'label_sheet_ui.bought');
    await steps.press(page, hand, 'sheet_ui.done');
    await steps.press(page, hand, 'papers.labels');
    const { cells } = await paperOf(page);
    const { containers } = recipe(kSalve).batch;
    assert.equal(cells.length, containers.reduce((all, one) => all + one.count, 0), 'one for each tin');
    await page.context().close();
}

async function paperOf(page) {
    await settled(page);
    return seen.paper(page);
}

export const tests = [
    ['by finger: weighed out with two mistakes and an adjustment, opened anew at every step; record, batch sheet, labels', async ({ browser, file }) => {
        const page = await open(await profile(browser), address(file));
        await road(page, touch(page));
    }],

    ['through the mirror: the same road', async ({ browser, file }) => {
        const page = await open(await profile(browser), address(file));
        await road(page, mirror(page));
    }],
];
