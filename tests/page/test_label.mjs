// The label and the customer card on the real page: filled in, seen, printed, and what is printed measured.
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

const kStem = 'orchard_lip_balm';
const kMm = 96 / 25.4;
const kTolerance = 0.5; // mm
const kBetween = 3; // of the paper, mm: engine/documents_labels.cpp

const near = (value, wanted, what) =>
    assert.ok(Math.abs(value - wanted) <= kTolerance, `${what}: ${value.toFixed(2)} mm for ${wanted.toFixed(2)}`);

// The browser's dialog is not opened; what would be printed is measured where it stands.
const watchPrinting = (page) => page.evaluate(() => {
    globalThis.papers = [];
    const own = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow');
    Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
        configurable: true,
        get() {
            const inner = own.get.call(this);
            inner.print = () => globalThis.papers.push({
                mode: inner.document.compatMode,
                title: inner.document.querySelector('h1').textContent,
                words: inner.document.body.textContent,
                labels: [...inner.document.querySelectorAll('.label')].map((one) => {
                    const { width, height } = one.getBoundingClientRect();
                    return { width, height, letters: inner.getComputedStyle(one.querySelector('p')).fontSize };
                }),
            });
            return inner;
        },
    });
});
const papers = (page) => page.evaluate(() => globalThis.papers);

async function fillIn(page, hand, { shape, width, height, copies }) {
    await steps.press(page, hand, 'label_ui.said');
    await hand.write(await seen.field(page, say('label.field_identity')), 'Winter balm');
    await steps.press(page, hand, shape.name);
    await hand.number(await seen.field(page, say(shape.width)), width);
    await hand.number(await seen.field(page, say('label_ui.height')), height);
    await hand.number(await seen.field(page, say('label_ui.keeps')), '24');
    await hand.write(await seen.field(page, say('label.field_batch')), '26-11');
    await steps.press(page, hand, 'sheet_ui.done');
    await hand.number(await seen.field(page, say('label_ui.copies')), copies);
}
const kTube = { shape: { name: 'label_ui.cylinder', width: 'label_ui.around' }, width: '50.8', height: '50.8', copies: '12' };

async function labelJourney({ browser, file }, makeHand) {
    const page = await open(await profile(browser), address(file));
    const hand = makeHand(page);
    await watchPrinting(page);
    await steps.openStarter(page, hand, kStem);
    await steps.press(page, hand, 'nav.label');
    await steps.press(page, hand, 'ask.card');
    assert.equal(await seen.dialogTitle(page), say('ask.card'), 'two taps from the open recipe');
    const asked = page.getByRole('dialog').getByRole('heading', { level: 2 });
    assert.ok((await asked.count()) >= 6, 'the card answers six questions');
    await steps.press(page, hand, 'ask.print');
    await steps.close(page, hand);
    await fillIn(page, hand, kTube);
    await steps.press(page, hand, 'label_ui.print');
    const [card, labels] = await papers(page);
    assert.ok(card.words.includes(say('ask.nuts_title')) && card.words.includes(say('ask.no_promise')));
    assert.equal(labels.mode, 'CSS1Compat');
    assert.equal(labels.labels.length, 12);
    for (const one of labels.labels) {
        near(one.width / kMm, 50.8, 'width');
        near(one.height / kMm, 50.8, 'height');
        near(parseFloat(one.letters) / kMm, 3.6, 'letters of the title');
    }
    assert.ok(labels.words.includes('Winter balm') && labels.words.includes('26-11'));
    const { name, text } = await files.given(page, () => steps.press(page, hand, 'label_ui.save'));
    assert.equal(name, 'orchard-lip-balm-labels.html');
    assert.equal(text.split('class="label"').length - 1, 12);
    await page.reload();
    await ready(page);
    assert.ok(await seen.button(page, say('label_ui.print')), 'the page comes back to the label');
    const { label } = await seen.storedRecipe(page, recipe(kStem).title);
    assert.deepEqual(label, {
        identity: 'Winter balm', keeps_months: 24, panel: { shape: 'cylinder', height_mm: 50.8, width_mm: 50.8 },
    });
    await page.context().close();
}

// The saved file, printed by the browser: every label has its size and stands where a grid from the margins puts it.
async function measured({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    const hand = mirror(page);
    await steps.openStarter(page, hand, kStem);
    await steps.press(page, hand, 'nav.label');
    const made = [];
    for (const [copies, width, height, format, sheet] of [
        [14, 50.8, 50.8, 'A4', [210, 297]], [30, 60, 40, 'A4', [210, 297]], [5, 182, 30.5, 'Letter', [215.9, 279.4]]]) {
        await fillIn(page, hand, {
            shape: { name: 'label_ui.rectangle', width: 'label_ui.width' },
            width: String(width), height: String(height), copies: String(copies),
        });
        const { text } = await files.given(page, () => steps.press(page, hand, 'label_ui.save'));
        const path = join(dirname(file), `labels-${width}x${height}.html`);
        writeFileSync(path, text);
        const paper = await open(page.context(), address(path), { running: false });
        const pdf = await paper.pdf({ format, preferCSSPageSize: false });
        await paper.close();
        const all = pages(pdf);
        const like = (box, w, h) => Math.abs(box.width - w) < 2 && Math.abs(box.height - h) < 2;
        const bars = all.flatMap(({ boxes }) => boxes.filter((box) => like(box, 50, 2) && box.height > 1));
        assert.ok(bars.length >= 1, 'the bar to measure the print by is there');
        near(bars[0].width, 50, 'bar');
        const body = Math.min(sheet[0] - 20, 190);
        const left = (sheet[0] - body) / 2 + 4, columns = Math.floor((body - 8 + kBetween) / (width + kBetween));
        let count = 0;
        for (const { boxes, ...size } of all) {
            near(size.width, sheet[0], 'sheet');
            near(size.height, sheet[1], 'sheet');
            const labels = boxes.filter((box) => like(box, width, height)).sort((a, b) => Math.round(a.y - b.y) || a.x - b.x);
            const top = labels[0] ? labels[0].y : 0;
            labels.forEach((box, i) => {
                const [row, column] = [Math.floor(i / columns), i % columns];
                near(box.width, width, `width of label ${count + i + 1}`);
                near(box.height, height, `height of label ${count + i + 1}`);
                near(box.x, left + column * (width + kBetween), `left of label ${count + i + 1}`);
                near(box.y, top + row * (height + kBetween), `top of label ${count + i + 1}`);
                assert.ok(box.y >= 10 - kTolerance && box.y + box.height <= sheet[1] - 10 + kTolerance, 'whole on its sheet');
                made.push(Math.max(Math.abs(box.width - width), Math.abs(box.height - height),
                    Math.abs(box.x - left - column * (width + kBetween)), Math.abs(box.y - top - row * (height + kBetween))));
            });
            count += labels.length;
        }
        assert.equal(count, copies, `${width} x ${height} on ${format}`);
    }
    return `${made.length} labels, at most ${Math.max(...made).toFixed(2)} mm off`;
}

// On the screen too: the picture of the label is as many points wide as its millimetres make.
async function trueSize({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    const hand = mirror(page);
    await steps.openStarter(page, hand, kStem);
    await steps.press(page, hand, 'nav.label');
    await settled(page);
    const size = say('label_ui.size', { width: '60', height: '40' });
    const box = await page.evaluate((words) => {
        const found = [...document.querySelectorAll('#mirror main .twin')]
            .find((one) => one.textContent.startsWith(words) && one.textContent.length > words.length);
        const { width, height } = found.getBoundingClientRect();
        return { width, height };
    }, size);
    near(box.width / kMm, 60, 'width');
    near(box.height / kMm, 40, 'height');
}

export const tests = [
    ['by finger: the customer card in two taps, the label filled in, printed at its size, saved, kept', (bench) => labelJourney(bench, touch)],
    ['by the mirror alone: the same of label and customer card', (bench) => labelJourney(bench, mirror), { once: true }],
    ['the label is shown at its true size', trueSize],
    ['labels printed to PDF lie within half a millimetre of their size and place, on A4 and Letter', measured, { once: true }],
];
