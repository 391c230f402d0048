// Stock and made parts on the real page: looking up a card, an own ingredient that outlives a reload and travels with a
// recipe, an infusion that is used as one ingredient and whose own batch is worked out.
import assert from 'node:assert/strict';
import { address, open, profile, ready } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kOwn = 'Plum kernel oil';
const kInci = 'Prunus Domestica Seed Oil';

async function fresh({ browser, file }, makeHand, density = {}) {
    const page = await open(await profile(browser, density), address(file));
    return { page, hand: makeHand(page) };
}

const pressNamed = async (page, hand, name) => hand.press(await seen.button(page, name));
const texts = (page) => page.getByRole('dialog').allTextContents().then((all) => all.join('\n'));

async function cardOfWax(page, hand) {
    await steps.goTo(page, hand, 'nav.stock');
    await hand.write(await seen.search(page, say('ingredient.search')), 'beesw');
    await pressNamed(page, hand, ingredientName('beeswax_yellow'));
    assert.equal(await seen.dialogTitle(page), ingredientName('beeswax_yellow'));
    const shown = await texts(page);
    for (const key of ['card.inci_eu', 'card.density', 'card.melting', 'card.shelf_life', 'card.usual', 'card.origin', 'card.vegan'])
        assert.ok(shown.includes(say(key)), `the card says ${key}`);
    await steps.close(page, hand);
    await hand.write(await seen.search(page, say('ingredient.search')), '');
}

async function newOwn(page, hand) {
    await steps.press(page, hand, 'stock.new');
    await hand.write(await seen.field(page, say('own.name')), kOwn);
    await steps.press(page, hand, 'own.create');
    assert.equal(await seen.dialogTitle(page), kOwn);
    await hand.write(await seen.field(page, say('own.inci_eu')), kInci);
    await hand.number(await seen.field(page, say('card.density')), '0.915');
    await steps.press(page, hand, 'sheet_ui.done');
}

async function addOwnLine(page, hand) {
    await steps.press(page, hand, 'formula.add_line', { id: 'A' });
    await hand.write(await seen.search(page, say('ingredient.search')), 'plum');
    await pressNamed(page, hand, kOwn);
    await hand.number(await seen.field(page, say('line.percent_of', { name: kOwn })), '100');
}

async function ownJourney(bench, makeHand, density) {
    const { page, hand } = await fresh(bench, makeHand, density);
    await cardOfWax(page, hand);
    await newOwn(page, hand);
    await page.reload();
    await ready(page);
    await steps.goTo(page, hand, 'nav.book');
    await steps.newBlank(page, hand);
    await addOwnLine(page, hand);
    const recipe = await seen.storedRecipe(page, say('recipe.new_title'));
    assert.equal(recipe.ingredients[0].inci.eu, kInci);
    assert.equal(recipe.ingredients[0].density_g_per_ml, 0.915);
    const { ingredients } = await seen.stored(page);
    assert.equal(Object.values(ingredients).length, 1, 'the own ingredient has a record of its own');

    await steps.goTo(page, hand, 'nav.batch');
    const link = await steps.linkText(page, hand);
    const friend = await fresh(bench, makeHand, density);
    await steps.readPasted(friend.page, friend.hand, link);
    await steps.keepIncoming(friend.page, friend.hand);
    await pressNamed(friend.page, friend.hand, kOwn);
    await steps.press(friend.page, friend.hand, 'line.about');
    assert.ok((await texts(friend.page)).includes(say('card.came_along_about')));
    assert.equal(Object.values((await seen.stored(friend.page)).ingredients).length, 0, 'nothing is kept unasked');
    await steps.press(friend.page, friend.hand, 'card.keep');
    await steps.close(friend.page, friend.hand);
    assert.equal(Object.values((await seen.stored(friend.page)).ingredients).length, 1);
    await friend.page.context().close();
    await page.context().close();
}

async function infusionJourney(bench, makeHand) {
    const { page, hand } = await fresh(bench, makeHand);
    await steps.newBlank(page, hand);
    await steps.rename(page, hand, 'Marigold oil');
    await steps.addLine(page, hand, { id: 'sunflower_ho', search: 'sunfl', percent: '90' });
    await steps.press(page, hand, 'formula.add_line', { id: 'A' });
    await hand.write(await seen.search(page, say('ingredient.search')), 'Dried petals');
    await steps.press(page, hand, 'ingredient.as_written', { name: 'Dried petals' });
    await hand.number(await seen.field(page, say('line.percent_of', { name: 'Dried petals' })), '10');
    await steps.press(page, hand, 'top.recipe');
    await steps.press(page, hand, 'recipe.made');
    await steps.press(page, hand, 'made.infusion');
    await hand.number(await seen.field(page, say('made.yield')), '80');
    await pressNamed(page, hand, 'Dried petals');
    await steps.press(page, hand, 'sheet_ui.done');

    await steps.goTo(page, hand, 'nav.book');
    await steps.newBlank(page, hand);
    await steps.press(page, hand, 'formula.add_line', { id: 'A' });
    await hand.write(await seen.search(page, say('ingredient.search')), 'marigold oil');
    await pressNamed(page, hand, 'Marigold oil');
    await hand.number(await seen.field(page, say('line.percent_of', { name: 'Marigold oil' })), '100');
    await steps.goTo(page, hand, 'nav.batch');
    await steps.press(page, hand, 'batch.say_how_much');
    await steps.press(page, hand, 'batch.by_mass');
    await hand.number(await seen.field(page, say('batch.mass')), '100');
    await steps.press(page, hand, 'sheet_ui.done');
    await steps.press(page, hand, 'made.make', { name: 'Marigold oil' });
    assert.equal(await seen.title(page), 'Marigold oil');
    const made = await seen.storedRecipe(page, 'Marigold oil');
    assert.equal(made.batch.grams, 138.8889, '100 g at a yield of 80 %, of which 90 % of what is weighed is oil');
    assert.deepEqual(made.made, { id: made.made.id, kind: 'infusion', yield_percent: 80 });
    await page.context().close();
}

export const tests = [
    ['by finger: a card, an own ingredient that is kept, used, sent and kept apart by its receiver',
        (bench) => ownJourney(bench, touch)],
    ['by the mirror alone: the same', (bench) => ownJourney(bench, mirror), { once: true }],
    ['by keyboard alone: an infusion used as one ingredient, its own batch worked out', (bench) => infusionJourney(bench, keyboard), { once: true }],
    ['by finger: an infusion used as one ingredient', (bench) => infusionJourney(bench, touch)],
];
