// What is shown, read from the mirror: where to find an element, and the recipe and the batch as a person reads them.
import { places, say } from './words.mjs';
import { settled } from './browser.mjs';

// Within the open sheet if there is one: what lies beneath it is out of reach for people too.
export async function within(page) {
    const dialog = page.getByRole('dialog');
    return (await dialog.count()) > 0 ? dialog : page.locator('#mirror');
}
export const button = async (page, name) => (await within(page)).getByRole('button', { name, exact: true }).first();
export const field = async (page, name) => (await within(page)).getByRole('textbox', { name, exact: true }).first();
export const search = async (page, name) => (await within(page)).getByRole('searchbox', { name, exact: true }).first();
export const place = (page, key) =>
    page.getByRole('navigation', { name: say('nav.name') }).getByRole('button', { name: say(key), exact: true });
export const kept = (page, title) =>
    page.getByRole('list', { name: say('book.title') }).getByRole('button', { name: title, exact: true });
export const title = async (page) => page.getByRole('heading', { level: 1 }).textContent();
export const dialogTitle = async (page) => page.getByRole('dialog').getAttribute('aria-label');

export async function screen(page) {
    const current = page.getByRole('navigation').locator('[aria-current=page]');
    return (await current.count()) ? current.textContent() : '';
}

// The formula screen: every line with what its field shows, steps and notes.
export async function shownFormula(page) {
    await settled(page);
    const percentOf = say('line.percent_of', { name: '' });
    return page.evaluate(({ percentOf, step, notes }) => {
        const all = (selector) => [...document.querySelectorAll(`#mirror main ${selector}`)];
        const about = (element) => document.getElementById(element.getAttribute('aria-describedby'))?.textContent ?? '';
        const lines = all('li').map((item) => {
            const field = item.querySelector('input');
            const name = item.querySelector('button');
            return { name: name.textContent, under: about(name), percent: field.value, label: field.getAttribute('aria-label') };
        });
        for (const line of lines) {
            if (line.label !== percentOf + line.name) throw new Error(`the field of ${line.name} is called ${line.label}`);
            delete line.label;
        }
        const notesField = all('textarea').find((one) => one.getAttribute('aria-label') === notes);
        return {
            title: document.querySelector('#mirror h1').textContent,
            lines,
            steps: all('textarea').filter((one) => one.getAttribute('aria-label').startsWith(step))
                .map((one) => one.value),
            notes: notesField?.value ?? '',
        };
    }, { percentOf, step: say('formula.step_n', { n: '' }).trim(), notes: say('formula.notes') });
}

// The batch screen: what was asked for and, in hundredths of a gram, what is to be weighed.
export async function shownBatch(page) {
    await settled(page);
    const seen = await page.evaluate((tableName) => {
        const about = (one) => document.getElementById(one.getAttribute('aria-describedby'))?.textContent ?? '';
        const table = document.querySelector(`#mirror [role=table][aria-label="${tableName}"]`);
        const rows = [...(table?.querySelectorAll('[role=row]') ?? [])].filter((row) => row.querySelector('[role=rowheader]'));
        return {
            about: [...document.querySelectorAll('#mirror main button')].map((one) => `${one.textContent} ${about(one)}`),
            rows: rows.map((row) => [...row.querySelectorAll('[role=rowheader], [role=cell]')].map((cell) => cell.textContent)),
            status: [...document.querySelectorAll('#mirror main [role=status]')].map((one) => one.textContent),
        };
    }, say('batch.table'));
    const total = seen.status.map((words) => places('batch.total').exec(words)).find(Boolean);
    return {
        about: seen.about,
        total: total ? hundredths(total[1]) : null,
        words: seen.status.join(' '),
        lines: seen.rows.map(([name, grams, percent]) => ({ name, grams: hundredths(places('unit.grams').exec(`${grams}$`)[1]), percent })),
    };
}

// "12.34" or "12,34" as 1234, without going through a fraction.
export function hundredths(text) {
    const [whole, part = ''] = text.trim().split(/[.,]/);
    if (!/^\d+$/.test(whole) || !/^\d{0,2}$/.test(part)) throw new Error(`no hundredths: ${text}`);
    return Number(whole) * 100 + Number(part.padEnd(2, '0'));
}

// What lies in the store, newest valid record of each pair: {settings, recipes, own ingredients and what is filed (batch
// records, lots, versions)
// and weigh-outs by id}.
export async function stored(page) {
    const entries = await page.evaluate(() => Object.entries(localStorage).filter(([key]) => key.startsWith('tarebench:')));
    const newest = new Map();
    for (const [key, text] of entries) {
        const parts = /^(\d+) [0-9a-f]{8} (.*)$/su.exec(text);
        if (!parts) continue;
        const base = key.slice(0, -2);
        const saves = Number(parts[1]);
        if (!newest.has(base) || newest.get(base).saves < saves) newest.set(base, { saves, key, json: JSON.parse(parts[2]) });
    }
    const recipes = {}, ingredients = {}, filed = {}, weighings = {};
    let settings = null;
    for (const [base, record] of newest) {
        if (base === 'tarebench:settings') settings = record;
        else if (base.startsWith('tarebench:ingredient:')) ingredients[record.json.ingredient.id] = record;
        else if (base.startsWith('tarebench:recipe:')) recipes[record.json.id] = record;
        else if (base.startsWith('tarebench:weighing:')) weighings[record.json.id] = record;
        else filed[record.json.id] = record;
    }
    return { settings, recipes, ingredients, filed, weighings, keys: entries.map(([key]) => key).sort() };
}

export async function storedRecipe(page, title) {
    const found = Object.values((await stored(page)).recipes).filter((one) => one.json.recipe.title === title);
    if (found.length !== 1) throw new Error(`${found.length} stored recipes are called ${title}`);
    return found[0].json.recipe;
}

// The paper that is being read: what it says, how it looks, where it lies against the sheet around it.
export const paper = (page) => page.evaluate(() => {
    const frame = document.querySelector('#mirror [role=dialog] iframe.paper');
    if (!frame) return null;
    const inner = frame.contentDocument;
    const box = frame.getBoundingClientRect();
    const style = frame.contentWindow.getComputedStyle(inner.body);
    return {
        name: frame.title,
        title: inner.querySelector('h1').textContent,
        words: inner.body.textContent,
        language: inner.documentElement.lang,
        ground: style.backgroundColor,
        styled: style.maxWidth !== 'none',
        codes: inner.querySelectorAll('svg.code').length,
        cells: [...inner.querySelectorAll('.cell')].map((one) => one.style.cssText),
        inside: box.left >= 0 && box.top > 0 && box.right <= innerWidth && box.bottom <= innerHeight && box.height > 200,
        reached: document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2) === frame,
    };
});
