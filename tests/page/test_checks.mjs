// The checks of a recipe on the real page: said for whom and where, found too much, lowered by one tap, and the line held
// to what it then brings.
import assert from 'node:assert/strict';
import { address, open, profile, ready } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kOil = 'peppermint';
const kCeiling = '3.5'; // of the 4 % that all oils together may be in a rinsed-off foot scrub, 0.5 % are cypress

async function checksJourney({ browser, file }, makeHand) {
    const page = await open(await profile(browser), address(file));
    const hand = makeHand(page);
    await steps.openStarter(page, hand, 'greenhouse_foot_scrub');
    await hand.number(await seen.field(page, say('line.percent_of', { name: ingredientName(kOil) })), '9');
    await steps.press(page, hand, 'nav.checks');
    await steps.press(page, hand, 'meant.title');
    await steps.press(page, hand, 'market.eu');
    await steps.press(page, hand, 'person.adult');
    await steps.press(page, hand, 'sheet_ui.done');
    const lower = say('ceiling.lower', { percent: kCeiling });
    await hand.press(await seen.button(page, lower));
    assert.equal(await page.getByRole('button', { name: lower, exact: true }).count(), 0, 'at the ceiling nothing is over it');
    await steps.press(page, hand, 'nav.lines');
    await hand.press(await seen.button(page, ingredientName(kOil)));
    await steps.press(page, hand, 'hold.title');
    await hand.press(await seen.button(page, 'menthol'));
    await seen.button(page, say('hold.off'));
    await steps.close(page, hand);
    await steps.press(page, hand, 'nav.checks');
    await page.reload();
    await ready(page);
    const { market, person, lines } = await seen.storedRecipe(page, 'Greenhouse foot scrub');
    assert.equal(market, 'eu');
    assert.equal(person, 'adult');
    const { percent, hold } = lines.find((line) => line.ingredient === kOil);
    assert.equal(percent, Number(kCeiling));
    assert.equal(hold.constituent, 'menthol');
    assert.ok(await seen.button(page, say('nav.checks')), 'the page comes back to the checks');
    await page.context().close();
}

export const tests = [
    ['by finger: the checks are asked for, too much of an oil is lowered to its ceiling, and that is kept', (bench) => checksJourney(bench, touch)],
    ['by the mirror alone: the same of the checks', (bench) => checksJourney(bench, mirror), { once: true }],
    ['by keyboard alone: the same of the checks', (bench) => checksJourney(bench, keyboard), { once: true }],
];
