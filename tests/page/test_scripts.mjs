// Texts in letters that the page's own font lacks: typed by touch, drawn by the browser, kept, sent, shown. Whether they are
// letters and not boxes is seen by comparing: two words of the same length are the same row of boxes, but not the same word.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import { drawnAt, mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { differing, drawnShare, picture } from './picture.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kTitle = 'مرهم الشفاه';
const kOther = 'بلسم الأيدي';  // as many letters
const kWax = '蜜蝋のワックス';
const kNote = 'Stir 🌿 slowly, 湯煎で溶かす。';

// Counts what the page makes and uploads, ahead of its own scripts.
const kCount = () => {
    globalThis.made = { canvases: 0, uploads: 0 };
    const create = Document.prototype.createElement;
    Document.prototype.createElement = function (tag, ...more) {
        if (String(tag).toLowerCase() === 'canvas') made.canvases += 1;
        return create.call(this, tag, ...more);
    };
    for (const kind of [WebGLRenderingContext, WebGL2RenderingContext]) {
        const upload = kind.prototype.texImage2D;
        kind.prototype.texImage2D = function (...all) {
            if (all[all.length - 1] instanceof HTMLCanvasElement) made.uploads += 1;
            return upload.apply(this, all);
        };
    }
};
const counts = (page) => page.evaluate(() => ({ ...made }));

async function shot(page, locator) {
    const { box } = await drawnAt(locator);
    return picture(page, box);
}

const heading = (page) => page.getByRole('heading', { level: 1 });
const notes = (page) => seen.field(page, say('formula.notes'));

async function named(page, hand, title) {
    await steps.newBlank(page, hand);
    await steps.rename(page, hand, title);
}

async function ownOf(page, hand, name) {
    await steps.goTo(page, hand, 'nav.stock');
    await steps.press(page, hand, 'stock.new');
    await hand.write(await seen.field(page, say('own.name')), name);
    await steps.press(page, hand, 'own.create');
    assert.equal(await seen.dialogTitle(page), name);
    await steps.close(page, hand);
}

async function journey({ browser, file }, makeHand) {
    const page = await open(await profile(browser), address(file));
    const hand = makeHand(page);
    await ownOf(page, hand, kWax);
    await steps.goTo(page, hand, 'nav.book');
    await named(page, hand, kTitle);
    const title = await shot(page, heading(page));
    assert.ok(drawnShare(title) > 0.01, 'the title is drawn');
    await steps.press(page, hand, 'formula.add_line', { id: 'A' });
    await hand.write(await seen.search(page, say('ingredient.search')), '蜜蝋');
    await hand.press(await seen.button(page, kWax));
    await hand.number(await seen.field(page, say('line.percent_of', { name: kWax })), '100');
    assert.ok(drawnShare(await shot(page, await seen.button(page, kWax))) > 0.01, 'the line is drawn');
    await hand.write(await notes(page), kNote);
    await page.evaluate(() => document.activeElement.blur());
    await settled(page);
    assert.equal(await (await notes(page)).inputValue(), kNote);
    const note = await shot(page, await notes(page));
    assert.ok(drawnShare(note) > 0.01, 'the note is drawn');

    await page.reload();
    await ready(page);
    assert.equal(await seen.title(page), kTitle);
    assert.equal(differing(title, await shot(page, heading(page))), 0, 'after a reload the same picture stands there');
    const kept = await seen.storedRecipe(page, kTitle);
    assert.equal(kept.notes, kNote);
    assert.ok(JSON.stringify(kept.ingredients[0]).includes(kWax));

    await steps.goTo(page, hand, 'nav.batch');
    const link = await steps.linkText(page, hand);
    const friend = await open(await profile(browser), address(file) + link);
    const other = makeHand(friend);
    await steps.keepIncoming(friend, other);
    assert.equal(await seen.title(friend), kTitle);
    await seen.button(friend, kWax).then((button) => button.waitFor({ state: 'attached' }));
    assert.equal(differing(title, await shot(friend, heading(friend))), 0, 'the receiver sees it as it was sent');
    await friend.context().close();
    await page.context().close();
}

export const tests = [
    ['by finger: a title in Arabic, an own ingredient in Japanese, a note with emoji; drawn, kept, sent, shown',
        (bench) => journey(bench, touch)],

    ['letters beyond the font are letters, not boxes: two words of one length look different', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(page);
        const pictures = [];
        for (const title of [kTitle, kOther, 'Βάλσαμο', 'Бальзам', '蜜蝋膏', '椰子油']) {
            await steps.goTo(page, hand, 'nav.book');
            await named(page, hand, title);
            pictures.push(await shot(page, heading(page)));
            assert.ok(drawnShare(pictures[pictures.length - 1]) > 0.005, title);
        }
        for (let i = 0; i < pictures.length; i += 2) assert.ok(differing(pictures[i], pictures[i + 1]) > 0.005, `pair ${i / 2}`);
    }],

    ['while all is in Latin letters nothing is made; a picture is uploaded once', async (bench) => {
        const page = await open(await profile(bench.browser, { before: kCount }), address(bench.file));
        const hand = mirror(page);
        await steps.openStarter(page, hand, 'orchard_lip_balm');
        await steps.goTo(page, hand, 'nav.batch');
        await steps.goTo(page, hand, 'nav.more');
        assert.deepEqual(await counts(page), { canvases: 0, uploads: 0 });
        await steps.goTo(page, hand, 'nav.book');
        await named(page, hand, kTitle);
        await steps.goTo(page, hand, 'nav.batch');
        await steps.goTo(page, hand, 'nav.formula');
        const before = await counts(page);
        assert.ok(before.uploads > 0);
        for (const key of ['nav.batch', 'nav.formula', 'nav.batch', 'nav.formula']) await steps.goTo(page, hand, key);
        assert.deepEqual(await counts(page), before);
    }, { once: true }],

    ['after the graphics were lost, and with another theme, the text is drawn again', async (bench) => {
        const page = await open(await profile(bench.browser, { colorScheme: 'light', mayWarn: /CONTEXT_LOST|lost/i }), address(bench.file));
        const hand = mirror(page);
        await named(page, hand, kTitle);
        const light = await shot(page, heading(page));
        await page.evaluate(async () => {
            const gl = document.getElementById('canvas').getContext('webgl2') || document.getElementById('canvas').getContext('webgl');
            const lose = gl.getExtension('WEBGL_lose_context');
            lose.loseContext();
            await new Promise((done) => setTimeout(done, 100));
            lose.restoreContext();
            await new Promise((done) => setTimeout(done, 100));
        });
        await settled(page);
        assert.equal(differing(light, await shot(page, heading(page))), 0, 'drawn again');
        await page.emulateMedia({ colorScheme: 'dark' });
        await page.waitForFunction(() => getComputedStyle(document.documentElement).colorScheme === 'dark');
        await settled(page);
        const dark = await shot(page, heading(page));
        assert.ok(drawnShare(dark) > 0.01);
        assert.ok(differing(light, dark) > 0.5);
    }, { once: true }],

    ['a field tells a phone which keyboard it wants, and a title written by an input method stands there once', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = touch(page);
        await steps.openStarter(page, hand, 'orchard_lip_balm');
        const wishes = (field) => field.evaluate((one) => ['inputmode', 'enterkeyhint', 'autocapitalize', 'autocorrect'].map((name) =>
            one.getAttribute(name)));
        assert.deepEqual((await wishes(page.locator('#mirror .field_decimal').first())).slice(0, 2), ['decimal', 'next']);
        await steps.press(page, hand, 'top.recipe');
        await steps.press(page, hand, 'recipe.rename');
        const title = await seen.field(page, say('recipe.title'));
        assert.deepEqual(await wishes(title), ['text', 'done', 'sentences', 'on']);
        await hand.press(title);
        await page.keyboard.press('Control+A');
        const session = await page.context().newCDPSession(page);
        for (const text of ['に', 'にほ', 'にほん']) {
            await session.send('Input.imeSetComposition', { text, selectionStart: text.length, selectionEnd: text.length });
            await settled(page);
            assert.equal(await title.inputValue(), text);
        }
        await session.send('Input.insertText', { text: '日本の軟膏' });
        await settled(page);
        assert.equal(await title.inputValue(), '日本の軟膏');
        await page.keyboard.press('Enter');
        await settled(page);
        assert.equal(await seen.title(page), '日本の軟膏');
    }, { once: true }],

    ['a field with a text from right to left is edited from right to left', async (bench) => {
        const page = await open(await profile(bench.browser), address(bench.file));
        const hand = touch(page);
        await steps.newBlank(page, hand);
        const field = await notes(page);
        await hand.write(field, kTitle);
        assert.equal(await field.evaluate((one) => getComputedStyle(one).direction), 'rtl');
        await hand.write(field, 'Balm');
        assert.equal(await field.evaluate((one) => getComputedStyle(one).direction), 'ltr');
    }],
];
