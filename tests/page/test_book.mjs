// The book by finger: searching, order, tags, bin, backup and putting it back, coming back to where one was, and two
// windows that change the same recipe.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import * as files from './files.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';
const kOther = 'kitchen_garden_hand_lotion';
const { title } = recipe(kStarter);
const other = recipe(kOther).title;

const titles = (page) => page.getByRole('list', { name: say('book.title') }).getByRole('listitem')
    .evaluateAll((items) => items.map((item) => item.querySelector('button').textContent));

async function opened({ browser, file }, hand = touch, options = {}) {
    const page = await open(await profile(browser, options), address(file));
    return { page, hand: hand(page) };
}

async function chosen(page, hand, key, text) {
    await files.chosen(page, () => steps.press(page, hand, key), 'backup.json', text);
    await page.getByRole('dialog', { name: say('restore.title') }).waitFor({ state: 'attached' });
    await settled(page);
}

// Of the checksum that a record carries (IEEE 802.3, as the engine's).
function crc32(bytes) {
    let sum = 0xffffffff;
    for (const byte of bytes) {
        sum ^= byte;
        for (let i = 0; i < 8; ++i) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
    }
    return (sum ^ 0xffffffff) >>> 0;
}

// The newest record of the recipe, changed as another window would, under the turn that comes next. The page that does it
// is not told of it: no browser tells a page of its own writing.
const writtenNextDoor = async (page, change) => {
    const [record] = Object.values((await seen.stored(page)).recipes);
    const kept = structuredClone(record.json);
    change(kept.recipe);
    const saves = record.saves + 1;
    kept.saves = saves;
    const covered = `${saves} ${JSON.stringify(kept)}`;
    const sum = crc32(Buffer.from(covered)).toString(16).padStart(8, '0');
    const key = record.key.slice(0, -1) + (record.key.endsWith('a') ? 'b' : 'a');
    await page.evaluate(([where, text]) => localStorage.setItem(where, text), [key, `${saves} ${sum} ${JSON.stringify(kept)}`]);
};

export const tests = [
    ['by finger: search, order, a tag to filter by, the bin and back', async (bench) => {
        const { page, hand } = await opened(bench);
        await steps.openStarter(page, hand, kStarter);
        await steps.openStarter(page, hand, kOther);
        await steps.goTo(page, hand, 'nav.book');
        await hand.write(await seen.search(page, say('book.search')), 'castor');
        assert.deepEqual(await titles(page), [title]);
        await page.keyboard.press('Enter');
        await steps.press(page, hand, 'book.menu_of', { title });
        await steps.press(page, hand, 'recipe.tags');
        await hand.write(await seen.field(page, say('tags.new')), 'stall seven');
        await steps.press(page, hand, 'tags.add');
        await steps.close(page, hand);
        await hand.write(await seen.search(page, say('book.search')), ' ');
        assert.equal((await titles(page)).length, 2);
        await hand.press(await seen.button(page, 'stall seven'));
        assert.deepEqual(await titles(page), [title]);
        await steps.press(page, hand, 'book.any_tag');
        await steps.press(page, hand, 'book.sort_title');
        assert.deepEqual(await titles(page), [title, other].sort());
        await page.reload();
        await ready(page);
        assert.deepEqual(await titles(page), [title, other].sort(), 'the order is kept');
        await steps.press(page, hand, 'book.menu_of', { title });
        await steps.press(page, hand, 'recipe.to_bin');
        assert.deepEqual(await titles(page), [other]);
        await steps.press(page, hand, 'book.bin', { n: 1 });
        await steps.press(page, hand, 'bin.restore', { title });
        await steps.close(page, hand);
        assert.deepEqual((await titles(page)).sort(), [title, other].sort());
    }],

    ['everything as one file, and back on another device: a preview, then all of it', async (bench) => {
        const { page, hand } = await opened(bench);
        await steps.openStarter(page, hand, kStarter);
        await steps.rename(page, hand, 'Mine');
        await steps.goTo(page, hand, 'nav.more');
        assert.equal(await page.getByText(say('backup.last', { when: say('backup.never') })).count(), 1);
        const { name, text: file } = await files.given(page, () => steps.press(page, hand, 'backup.make'));
        assert.match(name, /^tarebench-backup-\d{4}-\d\d-\d\d\.json$/);
        assert.equal(JSON.parse(file).kind, 'backup');
        assert.equal(await page.getByText(say('backup.last', { when: say('backup.today') })).count(), 1);
        // Changed here since: the file's version comes beside it.
        await steps.goTo(page, hand, 'nav.formula');
        await steps.rename(page, hand, 'Mine, firmer');
        await steps.goTo(page, hand, 'nav.more');
        await chosen(page, hand, 'backup.open', file);
        assert.equal(await page.getByRole('heading', { name: say('restore.counts', { fresh: 0, changed: 1, same: 0 }) }).count(), 1);
        await steps.press(page, hand, 'restore.put');
        assert.deepEqual((await titles(page)).sort(), ['Mine', 'Mine, firmer']);
        // On another device.
        const there = await opened(bench);
        await steps.goTo(there.page, there.hand, 'nav.more');
        await chosen(there.page, there.hand, 'backup.open', file);
        assert.equal(await there.page.getByRole('heading', { name: say('restore.counts', { fresh: 1, changed: 0, same: 0 }) }).count(), 1);
        await steps.press(there.page, there.hand, 'restore.put');
        assert.deepEqual(await titles(there.page), ['Mine']);
        await there.page.reload();
        await ready(there.page);
        assert.deepEqual(await titles(there.page), ['Mine']);
    }],

    ['loaded again, the page is where one was, with the recipe that was open', async (bench) => {
        const { page, hand } = await opened(bench, mirror, { own: true });  // a browser may go back past what no person did
        await steps.openStarter(page, hand, kStarter);
        await steps.goTo(page, hand, 'nav.batch');
        await page.reload();
        await ready(page);
        assert.equal(await seen.screen(page), say('nav.batch'));
        assert.equal(await seen.title(page), title);
        await page.goBack();
        await settled(page);
        assert.equal(await seen.screen(page), say('nav.book'), 'back leads to the book');
    }],

    ['two windows change one recipe without knowing of each other: both versions are kept and it is said', async (bench) => {
        const { page, hand } = await opened(bench, mirror);
        await steps.openStarter(page, hand, kStarter);
        await writtenNextDoor(page, (theirs) => { theirs.notes = 'over there'; });
        await hand.write(await seen.field(page, say('formula.notes')), 'over here');
        await settled(page);
        const ours = say('recipe.other_window', { title });
        assert.equal(await page.getByText(say('store.other_window', { title: ours })).count() > 0, true);
        assert.equal((await seen.storedRecipe(page, title)).notes, 'over there');
        assert.equal((await seen.storedRecipe(page, ours)).notes, 'over here');
        assert.equal(await seen.title(page), ours, 'one goes on with one’s own');
        await hand.write(await seen.field(page, say('formula.notes')), 'over here, and on');
        await page.reload();
        await ready(page);
        assert.equal((await seen.storedRecipe(page, ours)).notes, 'over here, and on');
        await steps.goTo(page, hand, 'nav.book');
        assert.deepEqual((await titles(page)).sort(), [title, ours].sort());
    }],

    ['a long title is read whole on a phone, in the bar and on its sheet', async (bench) => {
        const { page, hand } = await opened(bench, mirror);
        await steps.openStarter(page, hand, kStarter);
        const long = 'Frost-line elbow butter for the longest night of the year, made over';
        await steps.rename(page, hand, long);
        await steps.press(page, hand, 'top.recipe');
        const dialog = page.getByRole('dialog');
        const head = await dialog.getByRole('heading', { level: 2 }).boundingBox();
        const first = await dialog.getByRole('button', { name: say('recipe.open'), exact: true }).boundingBox();
        assert.ok(head.y + head.height <= first.y, 'the head has room for it');
    }, { once: true }],
];
