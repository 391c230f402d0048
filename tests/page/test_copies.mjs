// The page as something to take along: saved as a file, hosted, kept by the browser for days without a network.
import assert from 'node:assert/strict';
import { copyFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { address, open, profile, ready, settled } from './browser.mjs';
import * as files from './files.mjs';
import { mirror } from './hands.mjs';
import * as seen from './mirror.mjs';
import { recipe } from './presets.mjs';
import { served } from './server.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';
const { title } = recipe(kStarter);

async function savedPage(page, hand) {
    await steps.goTo(page, hand, 'nav.more');
    const { name, path } = await files.given(page, () => steps.press(page, hand, 'settings.save_page'));
    assert.equal(name, 'tarebench.html');
    return path;
}

// Counts how often the browser is asked to keep what is stored, and refuses.
const kRefusing = () => {
    globalThis.askedToKeep = 0;
    if (!navigator.storage) return;
    navigator.storage.persisted = async () => false;
    navigator.storage.persist = async () => {
        globalThis.askedToKeep += 1;
        return false;
    };
};

const squeezed = (text) => text.replace(/\s+/g, ' ').trim();

export const tests = [
    ['"Save this page" gives the very same page, which opens and can be saved again', async (bench) => {
        const folder = mkdtempSync(join(tmpdir(), 'tarebench-'));
        try {
            const context = await profile(bench.browser);
            const page = await open(context, address(bench.file));
            const hand = mirror(page);
            await steps.openStarter(page, hand, kStarter);
            const original = readFileSync(bench.file, 'utf8');
            let file = await savedPage(page, hand);
            for (let generation = 1; generation <= 2; ++generation) {
                assert.ok(squeezed(readFileSync(file, 'utf8')) === squeezed(original), `generation ${generation} is the same text`);
                const copy = join(folder, `tarebench-${generation}.html`);
                copyFileSync(file, copy);
                const fresh = await open(await profile(bench.browser), address(copy));
                const freshHand = mirror(fresh);
                await steps.openStarter(fresh, freshHand, kStarter);
                file = await savedPage(fresh, freshHand);
            }
        } finally {
            rmSync(folder, { recursive: true, force: true });
        }
    }],

    ['a recipe saved as a file is the recipe', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        await steps.openStarter(page, hand, kStarter);
        await steps.press(page, hand, 'top.recipe');
        const { text } = await files.given(page, () => steps.press(page, hand, 'recipe.save_file'));
        assert.deepEqual(JSON.parse(text), recipe(kStarter));
        // And read again, through the browser's own way of choosing a file.
        await steps.goTo(page, hand, 'nav.book');
        await steps.press(page, hand, 'book.new');
        await files.chosen(page, () => steps.press(page, hand, 'new.file'), 'recipe.json', text);
        await page.getByRole('dialog', { name: say('incoming.title') }).waitFor({ state: 'attached' });
        await steps.keepIncoming(page, hand);
        await steps.goTo(page, hand, 'nav.book');
        assert.equal(await seen.kept(page, title).count(), 2);
    }],

    ['the hosted copy opens by a link, copies links with its own address, and works without a network', async (bench) => {
        await served(bench.hosted, async (base, cutOff) => {
            const permissions = ['clipboard-read', 'clipboard-write'];
            const context = await profile(bench.browser, { offline: false, reach: [base], permissions });
            const page = await open(context, base);
            const hand = mirror(page);
            await steps.openStarter(page, hand, kStarter);
            await steps.press(page, hand, 'top.recipe');
            await steps.press(page, hand, 'recipe.share');
            await steps.press(page, hand, 'share.copy');
            await page.getByRole('status').filter({ hasText: say('share.copied') }).waitFor({ state: 'attached' });
            const link = await page.getByRole('dialog').getByRole('textbox').inputValue();
            assert.ok(link.startsWith(`${base}#`), link);
            if (bench.browser.engine.readsClipboard)
                assert.equal(await page.evaluate(() => navigator.clipboard.readText()), link);
            await steps.close(page, hand);

            const elsewhere = await profile(bench.browser, { offline: false, reach: [base] });
            const friend = await open(elsewhere, link);
            await steps.keepIncoming(friend, mirror(friend));
            assert.deepEqual(await seen.storedRecipe(friend, title), await seen.storedRecipe(page, title));
            assert.equal(await friend.url(), base);

            await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
            await cutOff();
            await page.bringToFront();
            await page.reload();
            await ready(page);
            assert.equal((await seen.storedRecipe(page, title)).title, title);
            assert.ok(await page.evaluate(() => navigator.serviceWorker.controller !== null));
            const again = mirror(page);
            const file = await savedPage(page, again);
            const same = squeezed(readFileSync(file, 'utf8')) === squeezed(readFileSync(bench.file, 'utf8'));
            assert.ok(same, 'what is saved from there is the single file');
        });
    }],

    ['a new version of the hosted copy is offered, and loaded without losing what was changed a moment before', async (bench) => {
        const folder = mkdtempSync(join(tmpdir(), 'tarebench-'));
        try {
            cpSync(bench.hosted, folder, { recursive: true });
            const changed = (file, from, to) => {
                const text = readFileSync(join(folder, file), 'utf8');
                assert.ok(text.includes(from), `${file} holds ${from}`);
                writeFileSync(join(folder, file), text.replace(from, to));
            };
            await served(folder, async (base) => {
                const page = await open(await profile(bench.browser, { offline: false, reach: [base], before: kRefusing }), base);
                const hand = mirror(page);
                const asked = () => page.evaluate(() => navigator.storage && globalThis.askedToKeep);
                const can = Number.isInteger(await asked());  // not every driver has scripts ahead of a served page's own
                if (can) assert.equal(await asked(), 0, 'nothing is asked while there is nothing to keep');
                await steps.openStarter(page, hand, kStarter);
                if (can) assert.equal(await asked(), 1, 'with the first recipe the browser is asked to keep it');
                await steps.goTo(page, hand, 'nav.more');
                const more = squeezed(await page.getByRole('main').innerText());
                for (const key of can ? ['storage.may_go', 'storage.seven_days'] : ['storage.seven_days'])
                    assert.ok(more.includes(squeezed(say(key))), `More says ${key}`);
                await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
                changed('service_worker.js', "const kBuild = 'tarebench-", "const kBuild = 'tarebench-newer-");
                changed('index.html', '<title>', '<meta name="newer" content="yes"><title>');
                await page.evaluate(() => navigator.serviceWorker.getRegistration().then((one) => one.update()).then(() => true));
                await page.getByRole('button', { name: say('page.update_take') }).waitFor({ state: 'attached' });
                assert.ok(await page.evaluate(() => document.querySelector('meta[name=newer]') === null), 'not without being asked');
                await steps.press(page, hand, 'settings.sign_comma');
                await hand.write(await seen.field(page, say('settings.address')), 'https://hollow-lane.example/');
                const take = page.getByRole('button', { name: say('page.update_take') });
                await take.focus();  // it lies above what is seen
                await settled(page);
                await take.click();
                await page.waitForFunction(() => document.querySelector('meta[name=newer]') !== null);
                await ready(page);
                assert.equal((await seen.storedRecipe(page, title)).title, title);
                const { json } = (await seen.stored(page)).settings;
                assert.equal(json.decimal_sign, 'comma');
                assert.equal(json.hosted_address, 'https://hollow-lane.example/', 'what stood in the field that was being edited');
                assert.equal(await page.getByRole('button', { name: say('page.update_take') }).count(), 0);
            });
        } finally {
            rmSync(folder, { recursive: true, force: true });
        }
    }],

    ['opened from disk, links begin with the web address that was set', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        await steps.openStarter(page, hand, kStarter);
        await steps.goTo(page, hand, 'nav.more');
        await hand.write(await seen.field(page, say('settings.address')), 'https://hollow-lane.example/bench/');
        await steps.goTo(page, hand, 'nav.batch');
        const link = await steps.linkText(page, hand);
        assert.match(link, /^https:\/\/hollow-lane\.example\/bench\/#[\w-]+$/);
        await settled(page);
        assert.equal((await seen.stored(page)).settings.json.hosted_address, 'https://hollow-lane.example/bench/');
    }, { once: true }],
];
