// node tests/page/readme_pictures.mjs [PAGE.html] [FOLDER]: the pictures in README.md, made anew (default
// build/wasm/tarebench.html and tests/page/pictures). For people to look at; nothing is compared.
// Few colours make them small: a page of letters on paper loses nothing that is seen.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateSync } from 'node:zlib';
import { address, launch, open, profile, settled } from './browser.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { decode } from './picture.mjs';
import { ingredientName } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const file = resolve(process.argv[2] ?? join(here, '../../build/wasm/tarebench.html'));
const folder = resolve(process.argv[3] ?? join(here, 'pictures'));
const kPhone = { viewport: { width: 360, height: 640 }, deviceScaleFactor: 2 };
const kDesk = { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1, isMobile: false, hasTouch: false };
const kColours = 64;

// The commonest colours that are not nearly one another, and for each colour the nearest of them.
function palette(picture) {
    const counts = new Map();
    for (let y = 0; y < picture.height; ++y)
        for (let x = 0; x < picture.width; ++x) {
            const [r, g, b] = picture.at(x, y);
            const colour = (r << 16) | (g << 8) | b;
            counts.set(colour, (counts.get(colour) ?? 0) + 1);
        }
    const parts = (colour) => [colour >> 16, (colour >> 8) & 255, colour & 255];
    const apart = (a, b) => Math.max(...parts(a).map((value, i) => Math.abs(value - parts(b)[i])));
    const common = [...counts.keys()].sort((a, b) => counts.get(b) - counts.get(a));
    const chosen = [];
    for (const colour of common) {
        if (chosen.length === kColours) break;
        // What fills whole grounds stays as it is; shades of letters' edges may stand for one another.
        const ground = counts.get(colour) > picture.width * 4;
        if (ground || chosen.every((one) => apart(one, colour) > 7)) chosen.push(colour);
    }
    const nearest = (colour) => chosen.reduce((best, one, i) =>
        (apart(one, colour) < apart(chosen[best], colour) ? i : best), 0);
    return { chosen: chosen.map(parts), index: new Map(common.map((colour) => [colour, nearest(colour)])) };
}

function crc32(data) {  // as PNG wants it; not every node brings it
    let crc = -1;
    for (const byte of data) {
        crc ^= byte;
        for (let bit = 0; bit < 8; ++bit) crc = (crc >>> 1) ^ (crc & 1 ? 0xEDB88320 : 0);
    }
    return ~crc >>> 0;
}

function part(kind, data) {
    const out = Buffer.alloc(data.length + 12);
    out.writeUInt32BE(data.length, 0);
    out.write(kind, 4, 'latin1');
    data.copy(out, 8);
    out.writeUInt32BE(crc32(out.subarray(4, data.length + 8)), data.length + 8);
    return out;
}

function withFewColours(png) {
    const picture = decode(png);
    const { chosen, index } = palette(picture);
    const rows = Buffer.alloc((picture.width + 1) * picture.height);
    for (let y = 0; y < picture.height; ++y)
        for (let x = 0; x < picture.width; ++x) {
            const [r, g, b] = picture.at(x, y);
            rows[y * (picture.width + 1) + 1 + x] = index.get((r << 16) | (g << 8) | b);
        }
    const head = Buffer.alloc(13);
    head.writeUInt32BE(picture.width, 0);
    head.writeUInt32BE(picture.height, 4);
    head.set([8, 3], 8);  // 8 bits, by palette
    return Buffer.concat([
        Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), part('IHDR', head), part('PLTE', Buffer.from(chosen.flat())),
        part('IDAT', deflateSync(rows, { level: 9 })), part('IEND', Buffer.alloc(0)),
    ]);
}

async function shot(page, name) {
    await page.mouse.move(1, 1);  // nothing there lights up beneath it
    await settled(page);
    const png = withFewColours(await page.screenshot());
    writeFileSync(join(folder, `${name}.png`), png);
    console.log(`${name}.png ${(png.length / 1000).toFixed(1)} kB`);
}

async function withPage(browser, window, look) {
    const context = await profile(browser, { locale: 'en', ...window });
    const page = await open(context, address(file));
    await look(page, mirror(page));
    await context.close();
}

mkdirSync(folder, { recursive: true });
const browser = await launch();
await withPage(browser, { ...kPhone, colorScheme: 'light' }, async (page, hand) => {
    await shot(page, 'book');
    await steps.openStarter(page, hand, 'potting_shed_hand_salve');
    await shot(page, 'formula');
    await steps.goTo(page, hand, 'nav.batch');
    await shot(page, 'batch');
});
await withPage(browser, { ...kPhone, colorScheme: 'dark' }, async (page, hand) => {
    await steps.openStarter(page, hand, 'potting_shed_hand_salve');
    await touch(page).press(await seen.field(page, say('line.percent_of', { name: ingredientName('shea') })));
    await shot(page, 'keypad');
});
await withPage(browser, { ...kDesk, colorScheme: 'light' }, async (page, hand) => {
    await steps.openStarter(page, hand, 'kitchen_garden_hand_lotion');
    await shot(page, 'desk');
});
await browser.close();
