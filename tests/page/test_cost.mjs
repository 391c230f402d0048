// Cost on the real page: a pack bought in another currency with its rate, work, a price by margin; all of it there after a
// reload; and a batch that takes from the shelf.
import assert from 'node:assert/strict';
import { address, open, profile, ready } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const sum = (n) => say('money.amount', { n, currency: 'EUR' });
const write = async (page, hand, key, text, args) => hand.write(await seen.field(page, say(key, args)), text);
const number = async (page, hand, key, text, args) => hand.number(await seen.field(page, say(key, args)), text);
const reads = async (page, words) => (await page.getByRole('main').allTextContents()).join('\n').includes(words);

// abroad: the pack is paid in another currency, which asks for a rate.
async function costJourney({ browser, file }, makeHand, abroad = false) {
    const page = await open(await profile(browser, {}), address(file));
    const hand = makeHand(page);
    await steps.newBlank(page, hand);
    await steps.addLine(page, hand, { id: 'castor', search: 'castor', percent: '100' });
    await steps.goTo(page, hand, 'nav.batch');
    await steps.inContainers(page, hand, { id: 'tin_30ml', count: 4, loss: 0 });
    await steps.goTo(page, hand, 'nav.formula');
    await steps.press(page, hand, 'nav.cost');
    await write(page, hand, 'cost_ui.currency', 'eur');
    const name = ingredientName('castor');
    assert.ok(await reads(page, say('cost.no_price', { what: name })), 'what has no price is said');
    await hand.press(page.getByRole('main').getByRole('button', { name, exact: true }).last());
    assert.equal(await seen.dialogTitle(page), say('paid.title'));
    await number(page, hand, 'paid.size', '100');
    await number(page, hand, 'paid.price', '10');
    if (abroad) await write(page, hand, 'paid.currency', 'gbp');
    await steps.press(page, hand, 'paid.add');
    if (abroad) {
        assert.ok(await reads(page, say('cost.no_rate', { name, what: 'GBP' })));
        await hand.press(await seen.button(page, say('rate.title')));
        await write(page, hand, 'rate.from', 'gbp');
        await number(page, hand, 'rate.amount', '1');
        await number(page, hand, 'rate.gives', '1.2');
        await steps.press(page, hand, 'rate.add');
        await steps.close(page, hand);
    }
    await number(page, hand, 'cost_ui.minutes_batch', '60');
    await number(page, hand, 'cost_ui.hour', '12');
    await number(page, hand, 'cost_ui.step', '50', { name: say('cost_ui.wholesale') });
    await page.reload();
    await ready(page);
    assert.ok(await reads(page, sum('12.00')), 'the work is in it after a reload');
    assert.ok(!(await reads(page, say('cost.no_rate', { name, what: 'GBP' }))), 'the rate too');
}

export const tests = [
    ['by finger: prices, a rate, work and a margin, there after a reload', (bench) => costJourney(bench, touch, true)],
    ['by the mirror alone: what a batch costs', (bench) => costJourney(bench, mirror)],
    ['by keyboard alone: what a batch costs', (bench) => costJourney(bench, keyboard), { once: true }],
];
