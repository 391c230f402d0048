// The main job on a phone, page opened from disk, network cut: a formula of six lines with a rest line, 14 tubes, grams
// that add up, kept over a reload, sent as a link, opened elsewhere. By finger, by the mirror alone, by keyboard alone.
import assert from 'node:assert/strict';
import { address, open, profile, ready } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { container, ingredientName } from './presets.mjs';
import { served } from './server.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kTitle = 'Seed-swap cuticle stick';
const kLines = [
    { id: 'beeswax_yellow', search: 'beesw', percent: '250/12', grid: 208333 },
    { id: 'cocoa', search: 'cocoa', percent: '8', grid: 80000 },
    { id: 'shea', search: 'shea', percent: '14.5', grid: 145000 },
    { id: 'castor', search: 'castor', percent: '10+2.25', grid: 122500 },
    { id: 'sunflower_ho', search: 'sunfl', rest: true, grid: 1000000 - 208333 - 80000 - 145000 - 122500 - 4000 },
    { id: 'tocopherol', search: 'tocoph', percent: '0.4', grid: 4000 },
];
const kTube = 'lip_tube_round';
const kCount = 14;
const kLossPercent = 5;

// url: where the page lies, on disk or on this machine's own server.
export async function journey(browser, url, makeHand, { prepare = async () => {}, ...options } = {}) {
    const context = await profile(browser, options);
    const page = await open(context, url);
    const hand = makeHand(page);
    await prepare(page);

    await steps.newBlank(page, hand);
    await steps.rename(page, hand, kTitle);
    for (const line of kLines) await steps.addLine(page, hand, line);
    const formula = await seen.shownFormula(page);
    assert.deepEqual(formula.lines.map((line) => line.name), kLines.map((line) => ingredientName(line.id)));
    assert.deepEqual(formula.lines.map((line) => Number(line.percent) * 10000).map(Math.round), kLines.map((line) => line.grid));
    assert.equal(formula.lines[4].under, say('line.rest'));

    await steps.goTo(page, hand, 'nav.batch');
    await steps.inContainers(page, hand, { id: kTube, count: kCount, loss: kLossPercent });
    const batch = await seen.shownBatch(page);
    addsUp(batch);

    // Everything is there after a reload: what is stored, and what is shown of it.
    const before = await seen.storedRecipe(page, kTitle);
    assert.deepEqual(before, {
        tarebench: 1, kind: 'formula', title: kTitle, product: before.product,
        lines: kLines.map(({ id, rest, grid }) => {
            return { ingredient: id, ...(rest ? { rest: true } : { percent: grid / 10000 }), phase: 'A' };
        }),
        phases: [{ id: 'A' }], steps: [],
        batch: { containers: [{ id: kTube, count: kCount }], loss_percent: kLossPercent, division_g: 0.01 }, notes: '',
    });
    await page.reload();
    await ready(page);
    await prepare(page);
    assert.deepEqual(await seen.storedRecipe(page, kTitle), before);
    assert.equal(await seen.screen(page), say('nav.batch'), 'one is where one was');
    await steps.goTo(page, hand, 'nav.formula');
    assert.deepEqual(await seen.shownFormula(page), formula);
    await steps.goTo(page, hand, 'nav.batch');
    assert.deepEqual(await seen.shownBatch(page), batch);

    // The friend's browser knows nothing yet.
    const link = await steps.linkText(page, hand);
    const [start, letters] = link.split('#');
    assert.equal(start, url.startsWith('file:') ? '' : url, 'from disk there is no address to begin with');
    assert.match(letters, /^[A-Za-z0-9_-]+$/);
    assert.ok(letters.length <= 150, `the link takes ${letters.length} characters`);
    const elsewhere = await profile(browser, options);
    const friend = await open(elsewhere, `${url}#${letters}`);
    const friendHand = makeHand(friend);
    await prepare(friend);
    assert.deepEqual(Object.keys((await seen.stored(friend)).recipes), [], 'nothing is kept before it is wished');
    for (const { id } of kLines)
        assert.equal(await friend.getByRole('dialog').getByText(ingredientName(id)).count(), 1, `the preview shows ${id}`);
    await steps.keepIncoming(friend, friendHand);
    assert.deepEqual(await seen.shownFormula(friend), formula);
    assert.deepEqual(await seen.storedRecipe(friend, kTitle), before);
    await steps.goTo(friend, friendHand, 'nav.batch');
    assert.deepEqual(await seen.shownBatch(friend), batch);
    assert.equal(await friend.url(), url, 'the fragment is gone from the address');
}

function addsUp(batch) {
    // 14 tubes of 4.25 g, and 5 % stay in the jug: fill ÷ (1 − loss), up to the next hundredth.
    const fill = Math.round(container(kTube).fill.max_g * 100) * kCount;
    const total = Math.ceil((fill * 100) / (100 - kLossPercent));
    assert.equal(batch.total, total);
    assert.equal(batch.lines.length, kLines.length);
    assert.equal(batch.lines.reduce((sum, line) => sum + line.grams, 0), total, 'the lines add to the batch exactly');
    batch.lines.forEach((line, i) => {
        assert.equal(line.name, ingredientName(kLines[i].id));
        assert.ok(Math.abs(line.grams - (kLines[i].grid / 1e6) * total) < 1, `${line.name} is less than a division off its share`);
    });
}

const blind = (page) => page.evaluate(() => {
    document.getElementById('canvas').style.visibility = 'hidden';
});

export const tests = [
    ['by finger: percent, 14 tubes, grams that add up, reload, link, the same recipe elsewhere',
        ({ browser, file }) => journey(browser, address(file), touch)],
    ['the same through the mirror by role and name, with the picture hidden',
        ({ browser, file }) => journey(browser, address(file), mirror, { prepare: blind })],
    ['the same by keyboard alone',
        ({ browser, file }) => journey(browser, address(file), keyboard)],
    ['the same from a server',
        ({ browser, hosted }) => served(hosted, (base) => journey(browser, base, mirror, { offline: false, reach: [base] }))],
];
