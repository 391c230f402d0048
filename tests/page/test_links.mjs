// Links that arrive: pasted, in the address, or into the open page. Sound ones are shown and kept only on wish; a spoilt
// one says in its own words what is wrong with it, and nothing changes.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import { mirror } from './hands.mjs';
import * as seen from './mirror.mjs';
import { recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';
let starterLink = null;  // made by the page, once

async function linkOfStarter({ browser, file }) {
    if (starterLink) return starterLink;
    const context = await profile(browser);
    const page = await open(context, address(file));
    const hand = mirror(page);
    await steps.openStarter(page, hand, kStarter);
    await steps.goTo(page, hand, 'nav.batch');
    starterLink = await steps.linkText(page, hand);
    await context.close();
    return starterLink;
}

// CRC-32 as in the link (polynomial 0xEDB88320), so that a link of a later version can be made that is sound otherwise.
function crc32(bytes) {
    let crc = 0xffffffff;
    for (const byte of bytes) {
        crc ^= byte;
        for (let i = 0; i < 8; ++i) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
    }
    return ~crc >>> 0;
}

export function spoilt(link) {
    const letters = link.slice(1);
    const bytes = Buffer.from(letters, 'base64url');
    const body = Buffer.concat([Buffer.from([15]), bytes.subarray(1, -4)]);
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crc32(body));
    const middle = Math.floor(letters.length / 2);
    return {
        'error.link_truncated': `#${letters.slice(0, -12)}`,
        'error.link_altered': `#${letters.slice(0, middle)}${letters[middle] === 'x' ? 'y' : 'x'}${letters.slice(middle + 1)}`,
        'error.link_newer': `#${Buffer.concat([body, sum]).toString('base64url')}`,
        'error.link_not_ours': 'https://example.org/kitchen#weekly-plan',
    };
}

const records = async (page) => JSON.stringify((await seen.stored(page)).recipes);

// By the keyboard's own copy and paste: first out of a field that holds the text, then onto the page itself.
async function pasteAnywhere(page, text) {
    const hand = mirror(page);
    await steps.press(page, hand, 'book.new');
    await steps.press(page, hand, 'new.link');
    const field = await seen.field(page, say('new.paste_here'));
    await hand.write(field, text);
    await field.focus();
    for (const keys of ['Control+A', 'Control+X']) await page.keyboard.press(keys);
    await settled(page);
    assert.equal(await field.inputValue(), '', 'it is in the clipboard');
    await steps.close(page, hand);
    await page.evaluate(() => document.activeElement.blur());
    await page.keyboard.press('Control+V');
    await page.getByRole('dialog').waitFor({ state: 'attached' });
    await settled(page);
}

export const tests = [
    ['a link pasted under "From a link" is shown first and kept on wish, whole', async (bench) => {
        const link = await linkOfStarter(bench);
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        await steps.readPasted(page, hand, `https://hollow-lane.example/bench/${link}\n`);
        assert.equal(await seen.dialogTitle(page), say('incoming.title'));
        assert.deepEqual((await seen.stored(page)).recipes, {});
        await steps.keepIncoming(page, hand);
        const { tarebench: version, kind, ...whole } = recipe(kStarter);
        const { tarebench: keptVersion, kind: keptKind, ...keptWhole } = await seen.storedRecipe(page, whole.title);
        assert.deepEqual(keptWhole, whole);
    }, { once: true }],

    ['a link that is left is not kept', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file) + (await linkOfStarter(bench)));
        const hand = mirror(page);
        await steps.press(page, hand, 'incoming.leave');
        assert.equal(await page.getByRole('dialog').count(), 0);
        assert.deepEqual((await seen.stored(page)).recipes, {});
        assert.equal(await page.url(), address(bench.file));
    }, { once: true }],

    ['a link pasted into the page while nothing is being typed is taken in', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        await pasteAnywhere(page, await linkOfStarter(bench));
        assert.equal(await seen.dialogTitle(page), say('incoming.title'));
    }],

    ['a link followed within the page that is open already is taken in', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        await steps.newBlank(page, hand);
        const before = await records(page);
        // A moment later: WebKit's driver may lose the answer of a script that moves the address itself.
        await page.evaluate((link) => { setTimeout(() => { location.hash = link; }, 0); }, await linkOfStarter(bench));
        await page.getByRole('dialog').waitFor({ state: 'attached' });
        await settled(page);
        assert.equal(await seen.dialogTitle(page), say('incoming.title'));
        assert.equal(await records(page), before);
        assert.equal(await page.url(), address(bench.file));
    }],

    ['truncated, altered, newer and foreign links each have their own sentence and change nothing: pasted', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        await steps.openStarter(page, hand, kStarter);
        await steps.goTo(page, hand, 'nav.book');
        const before = await records(page);
        await steps.press(page, hand, 'book.new');
        await steps.press(page, hand, 'new.link');
        for (const [key, text] of Object.entries(spoilt(await linkOfStarter(bench)))) {
            await hand.write(await seen.field(page, say('new.paste_here')), text);
            await steps.press(page, hand, 'new.read');
            const sheet = await page.getByRole('dialog').innerText();
            assert.ok(sheet.includes(say(key)), `${key}: ${sheet}`);
            assert.equal(await seen.dialogTitle(page), say('new.link'));
            assert.equal(await records(page), before);
        }
    }, { once: true }],

    ['the same by address', async (bench) => {
        const context = await profile(bench.browser);
        for (const [key, text] of Object.entries(spoilt(await linkOfStarter(bench)))) {
            const page = await open(context, `${address(bench.file)}#${text.slice(text.indexOf('#') + 1)}`);
            await page.getByRole('alert').filter({ hasText: say(key) }).waitFor({ state: 'attached' });
            assert.equal(await page.getByRole('dialog').count(), 0);
            assert.deepEqual((await seen.stored(page)).recipes, {});
            await page.reload();
            await ready(page);
            assert.equal(await page.getByRole('alert').filter({ hasText: say(key) }).count(), 0, 'it is told once');
            await page.close();
        }
    }],
];
