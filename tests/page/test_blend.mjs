// Blend and keeping on the real page: read in the mirror, rated, laid over another recipe; by finger kept, too, and by a lot
// on the shelf.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const words = (page) => page.evaluate(() => document.querySelector('#mirror main').textContent);

// Read, rated, laid over another.
async function journey({ browser, file }, makeHand) {
    const page = await open(await profile(browser), address(file));
    const hand = makeHand(page);
    await steps.openStarter(page, hand, 'harvest_supper_body_oil');
    await steps.openStarter(page, hand, 'orchard_lip_balm');
    await steps.press(page, hand, 'nav.blend');
    await settled(page);
    let said = await words(page);
    for (const part of [`${say('blend_ui.shares')}: ${say('blend_ui.wax')} 22`, say('blend_ui.no_lye'), say('blend_ui.no_day'),
        say('blend_ui.firmer_than', { name: recipe('potting_shed_hand_salve').title }), `18:1 ${say('acid.18_1')}, `])
        assert.ok(said.includes(part), `${part} in ${said.slice(0, 3000)}`);

    await steps.press(page, hand, 'blend_ui.rate4');
    await hand.press(page.getByRole('checkbox', { name: recipe('harvest_supper_body_oil').title, exact: true }));
    await hand.number(await seen.field(page, say('blend_ui.other_temp')), '41');
    await settled(page);
    said = await words(page);
    for (const part of [say('blend_ui.expected', { rating: '4', word: say('blend_ui.rate4') }), say('blend_ui.at', { c: '41' }), ' \u00b7 '])
        assert.ok(said.includes(part), part);
    return { page, hand };
}

// And kept by a lot on the shelf, which is there after a reload.
async function journeyToShelf(bench, makeHand) {
    const { page, hand } = await journey(bench, makeHand);
    await steps.goTo(page, hand, 'nav.stock');
    await hand.write(await seen.search(page, say('ingredient.search')), 'shea');
    await hand.press(await seen.button(page, ingredientName('shea')));
    await steps.press(page, hand, 'lot.add');
    await hand.write(await seen.field(page, say('lot.number')), 'S-1');
    const day = `${new Date().getFullYear() + 2}-06-15`;
    await hand.write(await seen.field(page, say('lot.best_before')), day);
    await steps.press(page, hand, 'lot.add');
    await steps.close(page, hand);
    await steps.goTo(page, hand, 'nav.formula');
    await steps.press(page, hand, 'nav.blend');
    await page.reload();
    await ready(page);
    const said = await words(page);
    for (const part of [say('blend_ui.dated', { day, name: ingredientName('shea'), lot: 'S-1' }), say('blend_ui.at_most'),
        say('blend_ui.expected', { rating: '4', word: say('blend_ui.rate4') })])
        assert.ok(said.includes(part), `${part}, kept, and the page comes back here`);
}

export const tests = [
    ['by finger: a blend is read, rated, laid over another, and the shelf says how long it keeps', (bench) => journeyToShelf(bench, touch)],
    ['by the mirror alone: the same of the blend', async (bench) => void (await journey(bench, mirror))],
    ['by keyboard alone: the same of the blend', async (bench) => void (await journey(bench, keyboard)), { once: true }],
];
