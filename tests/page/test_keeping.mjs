// What is kept on the device and what is said when it cannot be: two keys in turn, damage, refusal, a full store,
// another window.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import * as files from './files.mjs';
import { mirror } from './hands.mjs';
import * as seen from './mirror.mjs';
import { recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';
const { title } = recipe(kStarter);

const squeezed = (text) => text.replace(/\s+/g, ' ');
const bookSays = async (page, words) => squeezed(await page.getByRole('main').innerText()).includes(squeezed(words));

async function renamedTwice({ browser, file }) {
    const context = await profile(browser);
    const page = await open(context, address(file));
    const hand = mirror(page);
    await steps.openStarter(page, hand, kStarter);
    await steps.rename(page, hand, 'First title');
    await steps.rename(page, hand, 'Second title');
    return { context, page, hand };
}

export const tests = [
    ['a damaged record: the older state opens, the damage is shown, and its text is neither lost nor overwritten', async (bench) => {
        const { page, hand } = await renamedTwice(bench);
        const newest = Object.values((await seen.stored(page)).recipes)[0];
        const damaged = await page.evaluate((key) => {
            const text = localStorage.getItem(key).replace('Second', 'Sekond');
            localStorage.setItem(key, text);
            return text;
        }, newest.key);
        await page.reload();
        await ready(page);
        if ((await seen.screen(page)) !== say('nav.book')) await steps.goTo(page, hand, 'nav.book');
        assert.equal(await seen.kept(page, 'First title').count(), 1);
        assert.ok(await bookSays(page, say('store.damaged', { n: 1 })));
        // The next save must not take the damaged text's place before it is somewhere safe.
        await hand.press(seen.kept(page, 'First title'));
        await steps.rename(page, hand, 'Third title');
        await page.reload();
        await ready(page);
        await steps.goTo(page, hand, 'nav.book');
        assert.equal(await seen.kept(page, 'Third title').count(), 1);
        const kept = await page.evaluate(() => Object.values(localStorage));
        assert.ok(kept.some((text) => text.includes(damaged)), 'the damaged text is still on the device');
        assert.ok(await bookSays(page, say('store.damaged', { n: 1 })), 'and still shown');
        const { text } = await files.given(page, () => steps.press(page, hand, 'store.save_damaged'));
        assert.ok(text.includes(damaged), 'it can be saved as a file');
    }, { once: true }],

    ['both records of a recipe damaged: the others open, the damage is shown', async (bench) => {
        const { page, hand } = await renamedTwice(bench);
        const [id] = Object.keys((await seen.stored(page)).recipes);
        await steps.openStarter(page, hand, kStarter);
        await page.evaluate((part) => {
            for (const key of Object.keys(localStorage).filter((one) => one.includes(part)))
                localStorage.setItem(key, localStorage.getItem(key).slice(0, 40));
        }, id);
        await page.reload();
        await ready(page);
        await steps.goTo(page, hand, 'nav.book');
        assert.equal(await seen.kept(page, title).count(), 1);
        assert.ok(await bookSays(page, say('store.damaged', { n: 2 })));
    }, { once: true }],

    ['storage refused: the page says so and works', async (bench) => {
        const context = await profile(bench.browser, {
            before: () => Object.defineProperty(globalThis, 'localStorage', {
                get() { throw new DOMException('denied', 'SecurityError'); },
            }),
        });
        const page = await open(context, address(bench.file));
        const hand = mirror(page);
        assert.ok(await bookSays(page, say('store.refused')));
        await steps.openStarter(page, hand, kStarter);
        assert.equal((await seen.shownFormula(page)).lines.length, recipe(kStarter).lines.length);
        await steps.goTo(page, hand, 'nav.batch');
        assert.ok((await seen.shownBatch(page)).total > 0);
        await steps.goTo(page, hand, 'nav.book');
        assert.ok(await bookSays(page, say('store.refused')));
    }],

    ['storage full: the page says so, keeps what was there, and saves again once there is room', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        await steps.openStarter(page, hand, kStarter);
        await page.evaluate(() => {
            for (let size = 1 << 22; size >= 1; size >>= 1)
                for (let i = 0; i < 3; ++i) {
                    try {
                        localStorage.setItem('elsewhere', (localStorage.getItem('elsewhere') ?? '') + 'x'.repeat(size));
                    } catch { /* as full as it gets */ }
                }
        });
        await steps.rename(page, hand, 'A title that no longer fits, however hard one tries to squeeze it in');
        await steps.goTo(page, hand, 'nav.book');
        assert.ok(await bookSays(page, say('store.full')));
        assert.equal((await seen.storedRecipe(page, title)).title, title, 'the last good record is untouched');
        await page.evaluate(() => localStorage.removeItem('elsewhere'));
        await hand.press(seen.kept(page, 'A title that no longer fits, however hard one tries to squeeze it in'));
        await steps.rename(page, hand, 'It fits');
        assert.equal((await seen.storedRecipe(page, 'It fits')).title, 'It fits');
        await steps.goTo(page, hand, 'nav.book');
        assert.equal(await bookSays(page, say('store.full')), false);
    }],

    ['two windows of one browser: what one makes, the other shows', async (bench) => {
        // (WebKit tells nothing of a store to a window that has shown another page before.)
        const context = await profile(bench.browser, { own: true });
        const one = await open(context, address(bench.file));
        const other = await open(context, address(bench.file));
        await one.bringToFront();
        const hand = mirror(one);
        await steps.openStarter(one, hand, kStarter);
        await steps.rename(one, hand, 'Made next door');
        await other.bringToFront();
        await seen.kept(other, 'Made next door').waitFor({ state: 'attached' });
        await settled(other);
        const otherHand = mirror(other);
        await otherHand.press(seen.kept(other, 'Made next door'));
        await steps.rename(other, otherHand, 'Renamed over here');
        await one.bringToFront();
        await one.getByRole('heading', { level: 1, name: 'Renamed over here' }).waitFor({ state: 'attached' });
    }],

    ['a recipe goes to the bin and back, and for good only from there', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        await steps.openStarter(page, hand, kStarter);
        await steps.press(page, hand, 'top.recipe');
        await steps.press(page, hand, 'recipe.to_bin');
        assert.equal(await seen.kept(page, title).count(), 0);
        await page.reload();
        await ready(page);
        await steps.press(page, hand, 'book.bin', { n: 1 });
        await steps.press(page, hand, 'bin.restore', { title });
        await steps.close(page, hand);
        assert.equal(await seen.kept(page, title).count(), 1);
        await steps.press(page, hand, 'book.menu_of', { title });
        await steps.press(page, hand, 'recipe.to_bin');
        await steps.press(page, hand, 'book.bin', { n: 1 });
        await steps.press(page, hand, 'bin.erase', { title });
        assert.deepEqual((await seen.stored(page)).recipes, {});
    }, { once: true }],
];
