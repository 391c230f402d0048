// Figures as the person writes them: comma or point by browser or setting; undo and redo; typing at any speed.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import { keyboard, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';
const percentOf = (id) => say('line.percent_of', { name: ingredientName(id) });
const { title } = recipe(kStarter);
const kOneLanguage = { webkit: 'its language is one of those that the machine has installed' };

async function starter({ browser, file }, hand, options = {}) {
    const page = await open(await profile(browser, options), address(file));
    const quick = mirror(page);
    await steps.openStarter(page, quick, kStarter);
    return { page, quick, hand: hand(page) };
}

export const tests = [
    ['where figures have a comma they are shown, typed and read with one; a point is read as well', async (bench) => {
        const { page, hand } = await starter(bench, mirror, { locale: 'de-DE' });
        const castor = await seen.field(page, percentOf('castor'));
        assert.equal(await (await seen.field(page, percentOf('tocopherol'))).inputValue(), '0,4');
        for (const [typed, grid] of [['12,5', 12.5], ['12.25', 12.25], ['1/8', 0.125]]) {
            await hand.number(castor, typed);
            assert.equal((await seen.storedRecipe(page, title)).lines[3].percent, grid);
        }
        await castor.blur();
        assert.equal((await seen.shownFormula(page)).lines[3].percent, '0,125');
        const finger = touch(page);
        await finger.number(castor, '9,5');
        assert.equal((await seen.storedRecipe(page, title)).lines[3].percent, 9.5);
        assert.equal((await seen.shownFormula(page)).lines[3].percent, '9,5');
        await steps.goTo(page, hand, 'nav.batch');
        const { lines, total } = await seen.shownBatch(page);
        assert.equal(lines.reduce((sum, line) => sum + line.grams, 0), total);
    }, { without: kOneLanguage }],

    ['the browser\'s sign is remembered for the next start, and put right where it has another one by now', async (bench) => {
        const { page } = await starter(bench, mirror, { locale: 'de-DE' });
        const remembered = () => page.evaluate(() => localStorage.getItem('tarebench-sign'));
        await page.waitForFunction(() => localStorage.getItem('tarebench-sign') === 'de-DE 1');
        const last = async () => (await seen.shownFormula(page)).lines.at(-1).percent;
        await page.evaluate(() => localStorage.setItem('tarebench-sign', 'de-DE 0'));
        await page.reload();
        await ready(page);
        assert.equal(await last(), '0.4');
        await page.waitForFunction(() => localStorage.getItem('tarebench-sign') === 'de-DE 1');
        await settled(page);
        assert.equal(await last(), '0,4');
        await page.evaluate(() => localStorage.setItem('tarebench-sign', 'en-GB 0'));
        await page.reload();
        await ready(page);
        assert.equal(await last(), '0,4', 'that of another language is no answer');
        assert.equal(await remembered(), 'de-DE 1', 'what is asked is remembered at once');
    }, { without: kOneLanguage }],

    ['the decimal sign can be chosen, and the choice is kept', async (bench) => {
        const { page, hand } = await starter(bench, mirror);
        const shown = async () => (await seen.shownFormula(page)).lines.at(-1).percent;
        assert.equal(await shown(), '0.4');
        await steps.goTo(page, hand, 'nav.more');
        await steps.press(page, hand, 'settings.sign_comma');
        await steps.goTo(page, hand, 'nav.formula');
        assert.equal(await shown(), '0,4');
        assert.equal((await seen.stored(page)).settings.json.decimal_sign, 'comma');
    }, { once: true }],

    ['undo takes back one deed after the other, redo brings them again', async (bench) => {
        const { page, hand } = await starter(bench, mirror);
        const states = [await seen.storedRecipe(page, title)];
        const remember = async () => states.push(await seen.storedRecipe(page, title));
        await hand.press(await seen.button(page, ingredientName('shea')));
        await steps.press(page, hand, 'line.remove');
        await remember();
        await steps.restLine(page, hand, ingredientName('jojoba'));
        await remember();
        await hand.press(await seen.button(page, ingredientName('castor')));
        await steps.press(page, hand, 'line.up');
        await steps.close(page, hand);
        await remember();
        assert.equal(new Set(states.map((one) => JSON.stringify(one))).size, 4, 'four different recipes');
        for (const state of states.slice(0, -1).reverse()) {
            await steps.press(page, hand, 'top.undo');
            assert.deepEqual(await seen.storedRecipe(page, title), state);
        }
        assert.equal(await (await seen.button(page, say('top.undo'))).getAttribute('aria-disabled'), 'true');
        for (const state of states.slice(1)) {
            await steps.press(page, hand, 'top.redo');
            assert.deepEqual(await seen.storedRecipe(page, title), state);
        }
    }, { once: true }],

    ['nothing is lost of what is typed quickly', async (bench) => {
        const { page, hand } = await starter(bench, keyboard);
        await steps.press(page, hand, 'top.recipe');
        await steps.press(page, hand, 'recipe.rename');
        const field = await seen.field(page, say('recipe.title'));
        for (let round = 0; round < 5; ++round) {
            const text = `Frost-line elbow butter, pot ${round}`;
            await hand.write(field, text);
            assert.equal(await field.inputValue(), text);
        }
    }],
];
