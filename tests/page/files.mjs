// Files between page and person: what the page gives to be saved, and what a person chooses to have read.
import { readFileSync } from 'node:fs';

const own = (page) => page.context().engine;

// What the page gives as a file when the deed is done: {name, path, text}.
export async function given(page, deed) {
    const [{ name, path }] = await Promise.all([own(page).given ? own(page).given(page) : downloaded(page), deed()]);
    return { name, path, text: readFileSync(path, 'utf8') };
}

async function downloaded(page) {
    const download = await page.waitForEvent('download');
    return { name: download.suggestedFilename(), path: await download.path() };
}

// The deed makes the page ask for a file: this one is chosen.
export async function chosen(page, deed, name, text) {
    const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), deed()]);
    await chooser.setFiles(file);
}
