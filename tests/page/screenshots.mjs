// node tests/page/screenshots.mjs [PAGE.html] [FOLDER]: pictures of every screen and sheet (tour_*), and of the main ones in
// the states that a person meets, at three window sizes, light and dark, as FOLDER/screen-width-theme.png (default
// build/wasm/tarebench.html and screenshots/ beside it).
// For people to look at; nothing is compared.
import { mkdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { address, launch, open, profile, settled } from './browser.mjs';
import { mirror, touch } from './hands.mjs';
import * as seen from './mirror.mjs';
import { container, ingredientName, recipe } from './presets.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const file = resolve(process.argv[2] ?? join(here, '../../build/wasm/tarebench.html'));
const folder = resolve(process.argv[3] ?? join(dirname(file), 'screenshots'));
const kWindows = [
    { viewport: { width: 360, height: 640 }, deviceScaleFactor: 2 },
    { viewport: { width: 820, height: 1180 }, deviceScaleFactor: 1, isMobile: false },
    { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1, isMobile: false, hasTouch: false },
];
const kTall = 6400;
const kStarter = 'orchard_lip_balm';
const kTube = 'lip_tube_round';

async function take(browser, window, colorScheme) {
    const context = await profile(browser, { ...window, colorScheme });
    const page = await open(context, address(file));
    const hand = mirror(page);
    const shot = async (name, of = page) => {
        await of.evaluate(() => document.activeElement.blur());
        await of.mouse.move(1, 1);  // nothing there lights up beneath it
        await settled(of);
        await of.screenshot({ path: join(folder, `${name}-${window.viewport.width}-${colorScheme}.png`) });
    };
    await shot('book_first');
    await steps.openStarter(page, hand, 'potting_shed_hand_salve');
    await steps.openStarter(page, hand, kStarter);
    await shot('formula');
    await hand.press(await seen.button(page, ingredientName('shea')));
    await shot('line');
    await steps.close(page, hand);
    await steps.press(page, hand, 'formula.add_line', { id: 'B' });
    await hand.write(await seen.search(page, say('ingredient.search')), 'oil');
    await shot('ingredient');
    await steps.close(page, hand);
    if (window.hasTouch !== false) {
        await touch(page).press(await seen.field(page, say('line.percent_of', { name: ingredientName('castor') })));
        await shot('keypad');
        await page.keyboard.press('Escape');
        await settled(page);
    }
    await steps.goTo(page, hand, 'nav.batch');
    await shot('batch');
    await hand.press(page.getByRole('main').getByRole('button', { name: container(kTube).name }));
    await shot('amount');
    await steps.close(page, hand);
    await steps.press(page, hand, 'top.recipe');
    await shot('recipe');
    await steps.press(page, hand, 'recipe.share');
    await shot('share');
    const link = await page.getByRole('dialog').getByRole('textbox').inputValue();
    await steps.close(page, hand);
    await steps.goTo(page, hand, 'nav.more');
    await shot('more');
    await steps.goTo(page, hand, 'nav.book');
    await shot('book');
    await steps.press(page, hand, 'book.new');
    await shot('new');
    await steps.close(page, hand);
    await steps.newBlank(page, hand);
    await shot('blank');
    await steps.goTo(page, hand, 'nav.batch');
    await shot('batch_blank');
    const friend = await open(await profile(browser, { ...window, colorScheme }), address(file) + link.slice(link.indexOf('#')));
    await shot('incoming', friend);
    const round = await open(await profile(browser, { ...window, colorScheme }), address(file));
    let n = 0;
    await steps.tour(round, mirror(round), (name) => shot(`tour_${String(++n).padStart(2, '0')}_${name}`, round));
    await gallery(browser, window, colorScheme);
    for (const one of browser.contexts()) await one.close();
}

// Every widget in every state, in a window so tall that all of it is seen.
async function gallery(browser, { viewport: { width }, ...window }, colorScheme) {
    const tall = { ...window, viewport: { width, height: kTall }, deviceScaleFactor: 1, colorScheme };
    const page = await open(await profile(browser, tall), address(file) + '#gallery');
    await settled(page);
    await page.screenshot({ path: join(folder, `gallery-${width}-${colorScheme}.png`) });
}

mkdirSync(folder, { recursive: true });
const browser = await launch();
for (const window of kWindows)
    for (const colorScheme of ['light', 'dark']) {
        await take(browser, window, colorScheme);
        console.log(`${window.viewport.width} x ${window.viewport.height}, ${colorScheme}`);
    }
await browser.close();
console.log(`${recipe(kStarter).title} and the rest: ${folder}`);
