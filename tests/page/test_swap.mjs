// What could stand in a line's place, on the real page: candelilla for beeswax by finger on a phone, beside the recipe as
// it is; the nearest formula of several by the mirror on a wide window, beside the lines, and the versions side by side.
import assert from 'node:assert/strict';
import { address, open, profile } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'potting_shed_hand_salve';
const kWax = 'beeswax_yellow';
const lines = async (page) => (await seen.storedRecipe(page, recipe(kStarter).title)).lines;
const percentOf = async (page, id) => {
    const line = (await lines(page)).find((one) => one.ingredient === id);
    return line ? line.percent : undefined;
};
const reads = async (page, beginning) => (await page.getByRole('main').textContent()).includes(beginning);

async function severalJourney({ browser, file }, makeHand) {
    const page = await open(await profile(browser, { viewport: { width: 1440, height: 900 }, isMobile: false, hasTouch: false }), address(file));
    const hand = makeHand(page);
    await steps.openStarter(page, hand, kStarter);
    await steps.press(page, hand, 'nav.versions');
    await steps.press(page, hand, 'version_ui.keep');
    await hand.press(await seen.button(page, ingredientName('apricot')));
    await steps.press(page, hand, 'swap_ui.open');
    await steps.press(page, hand, 'swap_ui.several');
    await hand.press(page.getByRole('checkbox', { name: ingredientName('canola'), exact: true }));
    const apart = say('swap_ui.apart', { percent: '' }).trim();
    assert.ok(await reads(page, apart), 'how far it is apart is said');
    assert.ok((await page.getByRole('textbox', { name: say('line.percent_of', { name: ingredientName(kWax) }), exact: true }).count()) === 1,
        'the lines stand beside it');
    await steps.press(page, hand, 'adjust.take');
    assert.equal(await percentOf(page, 'apricot'), undefined);
    await steps.press(page, hand, 'nav.versions');
    await hand.press(page.getByRole('checkbox', { name: say('version_ui.many'), exact: true }));
    for (const name of [say('version_ui.now'), new RegExp(`^${say('version_ui.nameless')}`)])
        await hand.press(page.getByRole('checkbox', { name, exact: true }));
    assert.ok(await reads(page, `${ingredientName('apricot')}: A`), 'what one of them lacks is said');
}

export const tests = [
    ['by finger candelilla stands in for beeswax: shown beside the recipe, taken, taken back', async ({ browser, file }) => {
        const page = await open(await profile(browser), address(file));
        await steps.openStarter(page, mirror(page), kStarter);
        const hand = touch(page);
        const before = await percentOf(page, kWax);
        await hand.press(await seen.button(page, ingredientName(kWax)));
        await steps.press(page, hand, 'swap_ui.open');
        await hand.press(await seen.button(page, ingredientName('candelilla')));
        assert.ok(await reads(page, `${ingredientName('candelilla')}: A`), 'the swap stands beside the recipe as it is');
        assert.ok(await reads(page, `${say('compare.animal')}: A 1, B 0`));
        assert.equal(await percentOf(page, 'candelilla'), undefined, 'nothing is taken yet');
        await steps.press(page, hand, 'adjust.take');
        assert.equal(await percentOf(page, 'candelilla'), before / 2);
        assert.equal(await percentOf(page, kWax), undefined);
        await steps.press(page, hand, 'top.undo');
        assert.equal(await percentOf(page, kWax), before);
    }],

    ['by the mirror the nearest of several is taken, and the versions lie side by side', (bench) => severalJourney(bench, mirror)],
    ['by keyboard alone: the same of several and of the versions', (bench) => severalJourney(bench, keyboard), { once: true }],
];
