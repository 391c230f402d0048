// When things fail: each way in which the program cannot run, or no longer, gives a readable page that says what to do
// and, where there is JavaScript, lists the stored recipes as text and lets them be saved.
import assert from 'node:assert/strict';
import { address, open, profile, ready, settled } from './browser.mjs';
import * as files from './files.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { differing, drawnShare, picture } from './picture.mjs';
import { ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kStarter = 'orchard_lip_balm';
const { title, lines } = recipe(kStarter);

async function starter({ browser, file }, options = {}) {
    const context = await profile(browser, options);
    const page = await open(context, address(file));
    const hand = mirror(page);
    await steps.openStarter(page, hand, kStarter);
    return { context, page, hand };
}

// A page where a recipe lies in the store already, with something amiss ahead of the page's own scripts.
async function amiss(bench, before, options = {}) {
    const { context } = await starter(bench, options);
    const page = await context.newPage();
    await page.addInitScript(before);
    await page.goto(address(bench.file));
    return { context, page };
}

// What every such page has: the reason, the recipe as text, everything as a file. Returns the file's text.
async function readable(page, kind, reason) {
    await page.locator(`#notice .${kind}`).first().waitFor({ state: 'visible' });
    assert.match(await page.locator('#notice').innerText(), reason);
    assert.equal(await page.locator('#stage').isVisible(), false);
    const words = await page.locator('#rescue').innerText();
    assert.ok(words.includes(title), 'the title');
    for (const line of lines) {
        const name = line.name || line.ingredient.replaceAll('_', ' ');
        assert.ok(words.includes(`${line.rest ? 'rest' : `${line.percent} %`}`) && words.includes(name), `the line of ${name}`);
    }
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true, 'nothing sticks out');
    for (const one of await page.locator('#rescue button').all()) assert.ok((await one.boundingBox()).height >= 44);
    const { text } = await files.given(page, () => page.locator('#rescue').getByRole('button', { name: /file/ }).click());
    assert.ok(Object.values(JSON.parse(text).records).some((record) => record.includes(title)));
    return text;
}

// The faults that a test brings about itself are none of the page's.
async function forgive(context) {
    context.faults.length = 0;
    for (const page of context.pages()) await page.evaluate(() => { if (globalThis.tarebench) tarebench.errors.length = 0; });
}

const noWebGl = (kinds) => `{
    const own = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
        return ${kinds}.test(kind) ? null : own.call(this, kind, ...rest);
    };
}`;

export const tests = [
    ['no JavaScript: the page says what to do', async (bench) => {
        const page = await open(await profile(bench.browser, { javaScriptEnabled: false }), address(bench.file), { running: false });
        const notice = page.locator('#notice .script');
        assert.equal(await notice.isVisible(), true);
        const words = await notice.innerText();
        for (const part of ['JavaScript', 'Safari', 'Add to Home Screen', 'Android']) assert.ok(words.includes(part), part);
        assert.ok((await notice.boundingBox()).width <= 360);
    }, { without: {
        firefox: 'its protocol has no way to switch scripts off', webkit: 'its protocol has no way to switch scripts off',
    } }],

    ['no WebAssembly: the page says which browsers have it, with what is kept; the file brings it back elsewhere', async (bench) => {
        const { page } = await amiss(bench, 'delete globalThis.WebAssembly;');
        const file = await readable(page, 'wasm', /WebAssembly[^]*Firefox/);
        const other = await open(await profile(bench.browser), address(bench.file));
        const hand = mirror(other);
        await steps.press(other, hand, 'book.new');
        await files.chosen(other, () => steps.press(other, hand, 'new.file'), 'tarebench-records.json', file);
        await other.getByRole('dialog', { name: say('restore.title') }).waitFor({ state: 'attached' });
        await steps.press(other, hand, 'restore.put');
        assert.equal(await seen.kept(other, title).count(), 1);
        assert.deepEqual((await seen.storedRecipe(other, title)).lines, lines);
    }],

    ['a browser too old to unpack the program: the same', async (bench) => {
        const { page } = await amiss(bench, 'delete globalThis.DecompressionStream;');
        await readable(page, 'wasm', /too old/);
    }, { once: true }],

    ['no WebGL: the page says so, with what is kept', async (bench) => {
        const { page } = await amiss(bench, noWebGl('/webgl/'), { mayWarn: /WebGL|context/i });
        await readable(page, 'drawing', /no WebGL[^]*acceleration/);
    }],

    ['no WebGL 2, but the older one: the page is drawn all the same', async (bench) => {
        const { page } = await amiss(bench, noWebGl('/webgl2/'), { mayWarn: /WebGL|context/i });
        await ready(page);
        assert.equal(await seen.title(page), title);
        const kind = await page.evaluate(() => document.getElementById('canvas').getContext('webgl') instanceof WebGLRenderingContext);
        assert.equal(kind, true);
        assert.ok(drawnShare(await picture(page)) > 0.05, 'there is something to be seen');
    }],

    ['a drawing context that is lost and given back: the same picture, nothing lost', async (bench) => {
        const { page } = await starter(bench);
        const before = await picture(page);
        const kept = await seen.storedRecipe(page, recipe(kStarter).title);
        await page.evaluate(async () => {
            const gl = document.getElementById('canvas').getContext('webgl2') ?? document.getElementById('canvas').getContext('webgl');
            const extension = gl.getExtension('WEBGL_lose_context');
            const arrives = (kind) => new Promise((done) => document.getElementById('canvas').addEventListener(kind, done, { once: true }));
            const lost = arrives('webglcontextlost');
            extension.loseContext();
            await lost;
            await new Promise((done) => setTimeout(done, 0));  // not within the event that tells of the loss
            const back = arrives('webglcontextrestored');
            extension.restoreContext();
            await back;
        });
        await settled(page);
        assert.ok(drawnShare(before) > 0.05, 'there was something to be seen');
        assert.ok(differing(before, await picture(page)) < 0.002);
        assert.deepEqual(await seen.storedRecipe(page, recipe(kStarter).title), kept);
        const hand = mirror(page);
        await hand.press(await seen.button(page, ingredientName('shea')));
        assert.equal(await seen.dialogTitle(page), ingredientName('shea'));
    }],

    ['a drawing context that is lost for good is replaced', async (bench) => {
        const { page } = await starter(bench);
        const before = await picture(page);
        await page.evaluate(() => {
            globalThis.oldCanvas = document.getElementById('canvas');
            const gl = oldCanvas.getContext('webgl2') ?? oldCanvas.getContext('webgl');
            gl.getExtension('WEBGL_lose_context').loseContext();
        });
        await page.waitForFunction(() => document.getElementById('canvas') !== globalThis.oldCanvas);
        await settled(page);
        assert.ok(differing(before, await picture(page)) < 0.002);
        await touch(page).press(await seen.button(page, ingredientName('shea')));
        assert.equal(await seen.dialogTitle(page), ingredientName('shea'));
    }],

    ['a drawing context that is lost, and no other to be had: a readable page with what is kept', async (bench) => {
        const { page } = await starter(bench, { mayWarn: /WebGL|context/i });
        await page.evaluate(() => {
            const gl = document.getElementById('canvas').getContext('webgl2') ?? document.getElementById('canvas').getContext('webgl');
            HTMLCanvasElement.prototype.getContext = () => null;
            gl.getExtension('WEBGL_lose_context').loseContext();
        });
        await readable(page, 'drawing', /no WebGL/);
    }],

    ['a fault inside the program: the page says that it has stopped, with what is kept, and loads again', async (bench) => {
        const { context, page, hand } = await starter(bench);
        await steps.goTo(page, hand, 'nav.book');
        await steps.press(page, hand, 'book.new');
        // In the midst of what the program does when a recipe is made.
        await page.evaluate(() => {
            crypto.getRandomValues = () => { throw new WebAssembly.RuntimeError('unreachable'); };
        });
        await (await seen.button(page, say('new.blank'))).click();
        await readable(page, 'crash', /Something went wrong/);
        await forgive(context);
        await page.locator('#rescue').getByRole('button', { name: /Load again/ }).click();
        await ready(page);
        assert.equal(await seen.kept(page, title).count(), 1);
    }],

    ['storage refused: the page works and says so; if it stops, it says what that means', async (bench) => {
        const context = await profile(bench.browser, {
            before: () => Object.defineProperty(globalThis, 'localStorage', {
                get() { throw new DOMException('denied', 'SecurityError'); },
            }),
        });
        const page = await open(context, address(bench.file));
        const squeezed = (text) => text.replace(/\s+/g, ' ');
        assert.ok(squeezed(await page.getByRole('main').innerText()).includes(squeezed(say('store.refused'))));
        await steps.openStarter(page, mirror(page), kStarter);
        await page.evaluate(() => tarebench.fail('crash'));
        assert.match(await page.locator('#rescue').innerText(), /keeps nothing for this page/);
        assert.equal(await page.locator('#rescue').getByRole('button', { name: /Load again/ }).isVisible(), true);
    }, { once: true }],

    ['a damaged record beside a whole one: the whole one is listed, both are in the file', async (bench) => {
        const { page } = await starter(bench);
        await page.evaluate(() => {
            localStorage.setItem('tarebench:recipe:torn.a', '3 00000000 {"recipe":{"title":"Half a');
            tarebench.fail('crash');
        });
        const file = await readable(page, 'crash', /stopped/);
        assert.ok(file.includes('Half a'));
    }, { once: true }],
];
