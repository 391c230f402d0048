// Deeds on the page as a person thinks of them, each with whichever hand is given: make a recipe, add a line, make it
// the rest line, choose containers, share. What they press is found by role and name.
import assert from 'node:assert/strict';
import { settled } from './browser.mjs';
import * as seen from './mirror.mjs';
import { container, ingredientName, productName, recipe } from './presets.mjs';
import { say } from './words.mjs';

// On a wide window formula and batch are one place.
export async function goTo(page, hand, key) {
    const both = ['nav.formula', 'nav.batch'].includes(key) && (await seen.place(page, 'nav.both').count()) > 0;
    await hand.press(seen.place(page, both ? 'nav.both' : key));
}

// Presses what is called so in the open sheet, or on the page.
export async function press(page, hand, key, args) {
    await hand.press(await seen.button(page, say(key, args)));
}

export async function newBlank(page, hand) {
    await press(page, hand, 'book.new');
    assert.equal(await seen.dialogTitle(page), say('new.title'));
    await press(page, hand, 'new.blank');
    assert.equal(await seen.title(page), say('recipe.new_title'));
}

export async function rename(page, hand, title) {
    await press(page, hand, 'top.recipe');
    await press(page, hand, 'recipe.rename');
    await hand.write(await seen.field(page, say('recipe.title')), title);
    await press(page, hand, 'recipe.rename_done');
    assert.equal(await seen.title(page), title);
}

// line: {id, search, percent} in phase A; "rest" instead of a percent makes it the rest line.
export async function addLine(page, hand, line) {
    const name = ingredientName(line.id);
    await press(page, hand, 'formula.add_line', { id: 'A' });
    await hand.write(await seen.search(page, say('ingredient.search')), line.search);
    const found = page.getByRole('list', { name: say('ingredient.found') }).getByRole('button');
    assert.ok((await found.count()) < 69, `the search for ${line.search} leaves fewer than all`);
    await hand.press(await seen.button(page, name));
    assert.equal(await page.getByRole('dialog').count(), 0, 'choosing an ingredient closes the sheet');
    if (line.rest) return restLine(page, hand, name);
    await hand.number(await seen.field(page, say('line.percent_of', { name })), line.percent);
}

export async function restLine(page, hand, name) {
    await hand.press(await seen.button(page, name));
    assert.equal(await seen.dialogTitle(page), name, 'the sheet of a line is called after it');
    await press(page, hand, 'line.rest_on');
}

export async function inContainers(page, hand, { id, count, loss }) {
    const { name } = container(id);
    await press(page, hand, 'batch.say_how_much');
    await press(page, hand, 'batch.in_containers');
    assert.equal(await seen.dialogTitle(page), say('container.title'), 'with no container yet, the list of them opens');
    await hand.press(await seen.button(page, name));
    assert.equal(await seen.dialogTitle(page), say('batch.how_much'));
    await hand.number(await seen.field(page, say('batch.count_of', { name })), String(count));
    await hand.number(await seen.field(page, say('batch.loss')), String(loss));
    await press(page, hand, 'unit.grams', { n: '0.01' });
    await press(page, hand, 'sheet_ui.done');
}

// The text of the link as the share sheet shows it.
export async function linkText(page, hand) {
    await press(page, hand, 'recipe.share');
    const shown = page.getByRole('dialog').getByRole('textbox');
    const text = await shown.inputValue();
    const label = await shown.getAttribute('aria-label');
    assert.equal(label, say('share.link', { n: text.length - text.indexOf('#') - 1 }), 'the sheet says how long the link is');
    await press(page, hand, 'sheet_ui.close');
    return text;
}

export async function keepIncoming(page, hand) {
    assert.equal(await seen.dialogTitle(page), say('incoming.title'));
    await press(page, hand, 'incoming.keep');
    await settled(page);
}

// A starter from the book: its copy opens. The rows of starters stand after those of the kept recipes.
export async function openStarter(page, hand, stem) {
    const { title } = recipe(stem);
    await goTo(page, hand, 'nav.book');
    await hand.press(page.getByRole('main').getByRole('button', { name: title, exact: true }).last());
    assert.equal(await seen.title(page), title);
}

// The sheet where a link can be pasted, with this text in it, read.
export async function readPasted(page, hand, text) {
    await press(page, hand, 'book.new');
    await press(page, hand, 'new.link');
    await hand.write(await seen.field(page, say('new.paste_here')), text);
    await press(page, hand, 'new.read');
}

export async function close(page, hand) {
    await press(page, hand, 'sheet_ui.close');
    assert.equal(await page.getByRole('dialog').count(), 0);
}

// Every screen and every sheet there is, with a starter open; at each, look(name) is called.
// Waits until a list of ingredients is worked out to its end.
export async function read(page) {
    await page.getByRole('button', { name: say('reading_ui.keep', { n: 1 }), exact: true }).waitFor({ state: 'attached', timeout: 20000 });
    await settled(page);
}

export async function tour(page, hand, look) {
    const there = async (name) => {
        await settled(page);
        await look(name);
    };
    const sheet = async (name, key, args) => {
        await press(page, hand, key, args);
        await there(name);
    };
    await there('book');
    await sheet('new', 'book.new');
    await sheet('from-link', 'new.link');
    await close(page, hand);
    await press(page, hand, 'book.new');
    await sheet('list', 'new.list');
    await hand.write(await seen.field(page, say('new.list_here')), 'Shed salve\n20 g beeswax\n2 tbsp olive oil\nHoney a pinch');
    await press(page, hand, 'new.read');
    await there('list-understood');
    await hand.press(await seen.button(page, 'beeswax'));
    await there('list-line');
    await close(page, hand);
    await openStarter(page, hand, 'kitchen_garden_hand_lotion');
    await there('formula');
    await hand.press(await seen.button(page, productName('hand_lotion')));
    await there('product');
    await close(page, hand);
    await hand.press(await seen.button(page, ingredientName('glycerin')));
    await there('line');
    await sheet('ingredient', 'line.change');
    await close(page, hand);
    await hand.press(page.getByRole('main').getByRole('button', { name: new RegExp(`^${say('phase.name', { id: 'A' })}`) }));
    await there('phase');
    await close(page, hand);
    await sheet('recipe', 'top.recipe');
    await sheet('rename', 'recipe.rename');
    await close(page, hand);
    await press(page, hand, 'top.recipe');
    await sheet('tags', 'recipe.tags');
    await close(page, hand);
    await goTo(page, hand, 'nav.batch');
    await there('batch');
    await sheet('share', 'recipe.share');
    await close(page, hand);
    await hand.press(page.getByRole('main').getByRole('button', { name: container('jar_60ml').name }));
    await there('amount');
    await hand.press(await seen.button(page, container('jar_60ml').name));
    await there('container');
    await close(page, hand);
    await press(page, hand, 'batch.weigh_out');
    await there('weigh');
    for (const key of ['steps', 'this_line', 'end']) {
        await sheet(`weigh-${key.replace('_', '-')}`, `weigh.${key}`);
        await close(page, hand);
    }
    await hand.number(await seen.field(page, say('weigh.scale_shows')), '900');
    await press(page, hand, 'weigh.in', { g: say('unit.grams', { n: '900' }) });
    await there('weigh-too-much');
    await sheet('weigh-adjust', 'weigh.adjust');
    await close(page, hand);
    await press(page, hand, 'weigh.back');
    await sheet('record-new', 'record_ui.write');
    await press(page, hand, 'record_ui.begin');
    await there('record');
    await sheet('record-entry', 'record_ui.went_add');
    await close(page, hand);
    await goTo(page, hand, 'nav.formula');
    await press(page, hand, 'nav.checks');
    await there('checks');
    await press(page, hand, 'nav.cost');
    await hand.write(await seen.field(page, say('cost_ui.currency')), 'EUR');
    await there('cost');
    await hand.press(page.getByRole('main').getByRole('button', { name: ingredientName('glycerin'), exact: true }).last());
    await there('paid');
    await close(page, hand);
    await press(page, hand, 'nav.label');
    await there('label');
    await sheet('customer-card', 'ask.card');
    await close(page, hand);
    await sheet('label-said', 'label_ui.said');
    await sheet('label-colours', 'label_ui.colours');
    await close(page, hand);
    await press(page, hand, 'nav.blend');
    await there('blend');
    await press(page, hand, 'nav.versions');
    await there('versions');
    await goTo(page, hand, 'nav.formula');
    await hand.press(await seen.button(page, ingredientName('shea')));
    await press(page, hand, 'swap_ui.open');
    await hand.press(await seen.button(page, ingredientName('mango')));
    await there('swaps');
    await goTo(page, hand, 'nav.stock');
    await there('stock');
    await hand.press(await seen.button(page, ingredientName('glycerin')));
    await there('card');
    await sheet('lot', 'lot.add');
    await close(page, hand);
    await hand.press(await seen.button(page, ingredientName('glycerin')));
    await sheet('own', 'card.copy');
    await close(page, hand);
    await sheet('own-new', 'stock.new');
    await close(page, hand);
    await goTo(page, hand, 'nav.more');
    await there('more');
    await press(page, hand, 'nav.records');
    await there('records');
    await goTo(page, hand, 'nav.more');
    await hand.press((await seen.within(page)).getByRole('button', { name: sourcesName }));
    await there('sources');
    await close(page, hand);
    await hand.press(await seen.button(page, say('settings.not_said')));
    await there('maker');
    await close(page, hand);
    await goTo(page, hand, 'nav.book');
    await press(page, hand, 'book.new');
    await press(page, hand, 'new.reading');
    await there('reading');
    await press(page, hand, 'reading_ui.example');
    await read(page);
    await there('reading-allowed');
    await press(page, hand, 'reading_ui.line');
    await there('reading-line');
    await close(page, hand);
    await sheet('reading-sum', 'reading_ui.say_sum');
    await close(page, hand);
    await hand.press(await seen.button(page, productName('lip_balm')));
    await there('reading-for');
    await close(page, hand);
    await goTo(page, hand, 'nav.book');
    const { title } = recipe('kitchen_garden_hand_lotion');
    await press(page, hand, 'book.menu_of', { title });
    await press(page, hand, 'recipe.to_bin');
    await sheet('bin', 'book.bin', { n: 1 });
    await close(page, hand);
}
const sourcesName = new RegExp(`^${say('settings.sources', { n: 99 }).split('(')[0].trim()}`);
