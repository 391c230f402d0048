// The papers on the real page: read in the sheet, printed, saved; a bought sheet of labels; a workshop; the code of a link; and
// what Chromium makes of them on A4 and Letter.
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { address, open, profile, ready, settled } from './browser.mjs';
import * as files from './files.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { pages } from './pdf.mjs';
import { recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kPapers = ['batch_sheet', 'handout', 'shopping_list', 'labels', 'customer_card', 'assessor_pack'];

// The browser's dialog is not opened; how often it would have been is counted.
const watchPrinting = (page) => page.evaluate(() => {
    globalThis.printed = 0;
    const own = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow');
    Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
        configurable: true,
        get() {
            const inner = own.get.call(this);
            if (inner) inner.print = () => { globalThis.printed += 1; };
            return inner;
        },
    });
});

async function toPapers(page, hand, stem) {
    await steps.openStarter(page, hand, stem);
    await steps.goTo(page, hand, 'nav.batch');
    await steps.press(page, hand, 'batch.papers');
    await settled(page);
}

async function journey({ browser, file }, makeHand) {
    const page = await open(await profile(browser), address(file));
    const hand = makeHand(page);
    await watchPrinting(page);
    await toPapers(page, hand, 'frost_line_elbow_butter');
    let printed = 0;
    for (const paper of kPapers) {
        await steps.press(page, hand, `papers.${paper}`);
        await settled(page);
        const shown = await seen.paper(page);
        assert.ok(shown, `${paper} is shown`);
        assert.equal(await seen.dialogTitle(page), say(`papers.${paper}`));
        assert.equal(shown.name, say(`papers.${paper}`));
        assert.ok(shown.title.includes(recipe('frost_line_elbow_butter').title), shown.title);
        assert.equal(shown.ground, 'rgb(255, 255, 255)');
        assert.ok(shown.styled && shown.inside && shown.reached, JSON.stringify({ ...shown, words: '' }));
        assert.equal(shown.codes, paper === 'handout' ? 1 : 0);
        if (paper === 'handout') {
            await steps.press(page, hand, 'papers.print');
            printed += 1;
            const { name, text } = await files.given(page, () => steps.press(page, hand, 'papers.save'));
            assert.equal(name, 'frost-line-elbow-butter-handout.html');
            assert.ok(text.startsWith('<!doctype html>') && text.includes('<style>') && !text.includes('<script'));
        }
        assert.equal(await page.evaluate(() => globalThis.printed), printed);
        await steps.close(page, hand);
        assert.equal((await seen.paper(page)) ?? null, null);
    }

    await steps.press(page, hand, 'papers.sheet');
    await steps.press(page, hand, 'label_sheet_ui.bought');
    for (const [key, value] of [['columns', '2'], ['rows', '4'], ['width', '90'], ['height', '60'], ['left', '10'], ['top', '20']])
        await hand.number(await seen.field(page, say(`label_sheet_ui.${key}`)), value);
    await steps.press(page, hand, 'sheet_ui.done');
    await steps.press(page, hand, 'papers.labels');
    await settled(page);
    const { cells } = await seen.paper(page);
    assert.equal(cells.length, 4, 'one for each tin of the batch');
    assert.match(cells[3], /left: 100mm; top: 80mm; width: 90mm; height: 60mm/);
    await steps.close(page, hand);

    await steps.press(page, hand, 'nav.workshop');
    await hand.number(await seen.field(page, say('workshop.people')), '8');
    await hand.number(await seen.field(page, say('workshop_ui.stations')), '2');
    await steps.press(page, hand, 'papers.workshop');
    await settled(page);
    const plan = await seen.paper(page);
    assert.ok(plan.words.includes(say('workshop.station', { station: 2, n: 4 })), plan.words.slice(0, 400));
    await steps.close(page, hand);
    await page.reload();
    await ready(page);
    assert.equal(await (await seen.field(page, say('workshop.people'))).inputValue(), '8', 'kept, and the page comes back here');
    await page.context().close();
}

// A person's own words go nowhere, whatever they are.
async function hostile({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    const hand = mirror(page);
    await steps.openStarter(page, hand, 'orchard_lip_balm');
    const title = '</script><img src=x onerror=alert(1)>\u202E"\u05D0';
    await steps.rename(page, hand, title);
    await steps.goTo(page, hand, 'nav.batch');
    await steps.press(page, hand, 'batch.papers');
    for (const paper of kPapers) {
        await steps.press(page, hand, `papers.${paper}`);
        await settled(page);
        const shown = await seen.paper(page);
        assert.ok(shown.title.includes(title), `${paper}: ${shown.title}`);
        assert.equal(await page.evaluate(() =>
            document.querySelector('#mirror iframe.paper').contentDocument.querySelectorAll('img, script, [onerror]').length), 0);
        await steps.close(page, hand);
    }
    await page.context().close();
}

// Saved and printed by the browser: nothing reaches beyond the margins, and the cells of a sheet lie where they belong.
async function printed({ browser, file }) {
    const page = await open(await profile(browser, { isMobile: false, hasTouch: false }), address(file));
    const hand = mirror(page);
    let count = 0, most = 0;
    const keep = async (name) => {
        const { text } = await files.given(page, () => steps.press(page, hand, 'papers.save'));
        const path = join(dirname(file), `paper-${name}.html`);
        writeFileSync(path, text);
        await steps.close(page, hand);
        return path;
    };
    const reader = await profile(browser, { isMobile: false, hasTouch: false });  // in one window the page would lie behind
    const paper = await reader.newPage();
    const show = (path) => {
        reader.opened.push(address(path));
        return paper.goto(address(path));
    };
    const measured = async (path, margin) => {
        await show(path);
        await paper.emulateMedia({ media: 'print' });
        for (const [format, width, height] of [['A4', 210, 297], ['Letter', 215.9, 279.4]]) {
            await paper.setViewportSize({ width: Math.floor((width - 2 * margin) * 96 / 25.4), height: 1000 });
            const over = await paper.evaluate(() => [...document.body.querySelectorAll('*')].filter((one) =>
                one.namespaceURI.endsWith('xhtml') && (one.getBoundingClientRect().right > innerWidth + 1 || one.scrollWidth > one.clientWidth + 1) &&
                getComputedStyle(one).display !== 'inline' && one.clientWidth > 0).map((one) => `${one.tagName}.${one.className}: ${one.textContent.slice(0, 40)}`));
            assert.deepEqual(over, [], `${path} on ${format}`);
            const sheets = pages(await paper.pdf({ format, preferCSSPageSize: false }));
            for (const { boxes, ...size } of sheets) {
                assert.ok(Math.abs(size.width - width) < 0.5 && Math.abs(size.height - height) < 0.5, 'size of the sheet');
                for (const box of boxes.filter((one) => one.width < size.width - 1))
                    assert.ok(box.x >= margin - 0.5 && box.y >= margin - 0.5 && box.x + box.width <= width - margin + 0.5 &&
                        box.y + box.height <= height - margin + 0.5, `${path} on ${format}: ${JSON.stringify(box)}`);
                count += 1;
            }
        }
    };
    for (const stem of ['kitchen_garden_hand_lotion', 'greenhouse_foot_scrub']) {
        await toPapers(page, hand, stem);
        for (const name of kPapers) {
            await steps.press(page, hand, `papers.${name}`);
            await measured(await keep(`${stem}-${name}`), 10 + 4 * (name === 'batch_sheet'));
        }
        await steps.press(page, hand, 'nav.workshop');
        await steps.press(page, hand, 'papers.workshop');
        await measured(await keep(`${stem}-workshop`), 10);
        await steps.press(page, hand, 'papers.handouts');
        await show(await keep(`${stem}-handouts`));
        assert.ok(pages(await paper.pdf({ format: 'A4' })).length >= 12, 'each handout on a page of its own');
    }
    await steps.goTo(page, hand, 'nav.batch');
    await steps.press(page, hand, 'batch.papers');
    await steps.press(page, hand, 'papers.sheet');
    await steps.press(page, hand, 'label_sheet_ui.bought');
    await steps.press(page, hand, 'sheet_ui.done');
    await steps.press(page, hand, 'papers.sheet');
    await steps.press(page, hand, 'papers.test_print');
    await show(await keep('test-print'));
    const sheets = pages(await paper.pdf({ preferCSSPageSize: true }));
    assert.equal(sheets.length, 1, 'the test print is one sheet');
    const cells = sheets[0].boxes.filter((box) => Math.abs(box.width - 70) < 1 && Math.abs(box.height - 37) < 1)
        .sort((a, b) => Math.round(a.y - b.y) || a.x - b.x);
    assert.equal(cells.length, 24);
    cells.forEach((box, i) => {
        most = Math.max(most, Math.abs(box.x - 70 * (i % 3)), Math.abs(box.y - 0.5 - 37 * Math.floor(i / 3)),
            Math.abs(box.width - 70), Math.abs(box.height - 37));
    });
    assert.ok(most <= 0.5, `cells are ${most} mm off`);
    await page.context().close();
    return `${count} sheets, nothing beyond the margins; cells of a sheet at most ${most.toFixed(2)} mm off`;
}

export const tests = [
    ['by finger: every paper read, printed, saved; a bought sheet of labels; a workshop', (bench) => journey(bench, touch)],
    ['by the mirror alone: the same of all papers', (bench) => journey(bench, mirror), { once: true }],
    ['a hostile title is text in every paper that is read', hostile, { once: true }],
    ['papers printed to PDF lie within their margins on A4 and Letter', printed, { once: true }],
];
