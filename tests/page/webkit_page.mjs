// A window of WebKit, with as much of the other engines' driver's ways as the tests use.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Locator } from './webkit_locator.mjs';

const kPatience = 15000;
const kKeys = {
    Tab: '\uE004', Enter: '\uE006', Escape: '\uE00C', Shift: '\uE008', Control: '\uE009', Backspace: '\uE003', Delete: '\uE017',
    ArrowLeft: '\uE012', ArrowUp: '\uE013', ArrowRight: '\uE014', ArrowDown: '\uE015', Home: '\uE011', End: '\uE010',
};
const key = (name) => kKeys[name] ?? name.toLowerCase();

export class Page extends Locator {
    constructor(context, handle) {
        super(null);
        this.page = this;
        this.itsContext = context;
        this.handle = handle;
        this.scripts = [];
        this.files = 0;
        this.copies = new Map();  // addresses of altered copies, and whose
        this.keyboard = { press: (name) => this.pressKeys(name), type: (text) => this.typeText(text) };
        this.mouse = { click: (x, y) => this.clickAt(x, y), move: (x, y) => this.moveTo(x, y) };
    }
    context() { return this.itsContext; }
    send(method, path, body) { return this.itsContext.session.call(this.handle, method, path, body); }

    // code: of a function of one argument; what it returns, or what its promise holds, comes back.
    async run(code, argument) {
        const script = `const done = arguments[1];
            Promise.resolve().then(() => (${code})(arguments[0])).then(
                (value) => done({ value }), (error) => done({ error: String(error && error.stack || error), message: String(error) }));`;
        const answer = await this.send('POST', '/execute/async', { script, args: [argument ?? null] });
        if (answer.error) throw new Error(`${answer.message}\n${answer.error}`);
        return answer.value ?? undefined;
    }
    async evaluate(deed, argument) {
        return this.run(typeof deed === 'function' ? `${deed}` : `() => (${deed})`, argument);
    }
    async waitForFunction(deed, argument) {
        const until = Date.now() + kPatience;
        let last = 'no answer';
        while (!(await this.evaluate(deed, argument).then((answer) => (last = answer), (error) => { last = error.message; }))) {
            if (Date.now() > until) throw new Error(`waited in vain for ${deed}, last: ${last}`);
            await pause(20);
        }
    }

    // ---- where it is ----------------------------------------------------------------------------------------
    async addInitScript(script) { this.scripts.push(script); }
    // There is no script ahead of the page's own by this protocol. From disk, a copy of the page has it as its first one,
    // allowed by the copy's own policy.
    prepared(url) {
        const scripts = [...this.itsContext.scripts, ...this.scripts].map((one) => (typeof one === 'function' ? `(${one})();` : one));
        if (scripts.length === 0 || !url.startsWith('file:')) return url;
        const code = scripts.join('\n');
        const hash = createHash('sha256').update(code).digest('base64');
        const [file, fragment] = url.split('#');
        const text = readFileSync(fileURLToPath(file), 'utf8').replace("script-src '", `script-src 'sha256-${hash}' '`)
            .replace('<title>', () => `<script>${code}</script><title>`);
        const copy = join(this.itsContext.session.folder, `${this.copies.size}-${basename(fileURLToPath(file))}`);
        writeFileSync(copy, text);
        const address = pathToFileURL(copy).href;
        this.copies.set(address, file);
        return fragment === undefined ? address : `${address}#${fragment}`;
    }
    async goto(url) {
        await this.send('POST', '/url', { url: this.prepared(url) });
    }
    async url() {
        const [file, ...rest] = (await this.send('GET', '/url')).split('#');
        return [this.copies.get(file) ?? file, ...rest].join('#');
    }
    async reload() { await this.send('POST', '/refresh', {}); }
    async goBack() { await this.send('POST', '/back', {}); }
    async close() { await this.itsContext.closed(this); }
    async bringToFront() {}

    // ---- keys, mouse, picture ---------------------------------------------------------------------------------
    async act(id, type, actions, more = {}) { await this.send('POST', '/actions', { actions: [{ id, type, actions, ...more }] }); }
    async pressKeys(name) {
        const keys = name.split('+').map(key);
        await this.act('keys', 'key', [
            ...keys.map((value) => ({ type: 'keyDown', value })), ...[...keys].reverse().map((value) => ({ type: 'keyUp', value })),
        ]);
    }
    async typeText(text) {
        await this.act('keys', 'key', [...text].flatMap((value) => [{ type: 'keyDown', value }, { type: 'keyUp', value }]));
    }
    async moveTo(x, y) { await this.act('mouse', 'pointer', [{ type: 'pointerMove', x: Math.round(x), y: Math.round(y), duration: 0 }]); }
    async clickAt(x, y) {
        await this.act('mouse', 'pointer', [
            { type: 'pointerMove', x: Math.round(x), y: Math.round(y), duration: 0 },
            { type: 'pointerDown', button: 0 }, { type: 'pointerUp', button: 0 },
        ], { parameters: { pointerType: 'mouse' } });
    }
    async screenshot({ path } = {}) {
        const png = Buffer.from(await this.send('GET', '/screenshot'), 'base64');
        if (path) writeFileSync(path, png);
        return png;
    }
    // The window as large as it takes for this much room within; the browser allows none narrower than 447.
    async setViewportSize({ width, height }) {
        for (let i = 0; i < 3; ++i) {
            const window = await this.send('GET', '/window/rect');
            const room = await this.run('() => [innerWidth, innerHeight]');
            const wanted = { width: window.width + width - room[0], height: window.height + height - room[1] };
            if (wanted.width === window.width && wanted.height === window.height) return;
            await this.send('POST', '/window/rect', { x: 0, y: 0, ...wanted });
            if (wanted.width < 447) return;
        }
    }

    // ---- files --------------------------------------------------------------------------------------------------
    async waitForEvent(kind) {
        if (kind === 'filechooser') return this.chooser();
        if (kind === 'download') return this.download();
        throw new Error(`nothing tells of a ${kind}`);
    }
    async download() {
        const { downloads, folder } = this.itsContext.session;
        const until = Date.now() + kPatience;
        for (;;) {
            const name = readdirSync(downloads).find((one) => !one.endsWith('.wkdownload'));
            const size = name && statSync(join(downloads, name)).size;
            await pause(60);
            if (name && size > 0 && statSync(join(downloads, name)).size === size) {
                const path = join(folder, `given-${++this.files}-${name}`);  // out of the way of the next of that name
                renameSync(join(downloads, name), path);
                return { suggestedFilename: () => name, path: async () => path };
            }
            if (Date.now() > until) throw new Error('no file was given');
        }
    }
    // No dialog opens: the field that would open it is filled by a script.
    async chooser() {
        await this.run(`() => {
            globalThis.chosenBy = null;
            HTMLInputElement.prototype.click = function () { globalThis.chosenBy = this; };
        }`);
        await this.waitForFunction(() => globalThis.chosenBy !== null);
        return {
            setFiles: ({ name, mimeType, buffer }) => this.run(`(file) => {
                const given = new DataTransfer();
                given.items.add(new File([file.text], file.name, { type: file.type }));
                chosenBy.files = given.files;
                chosenBy.dispatchEvent(new Event('change'));
            }`, { name, type: mimeType, text: buffer.toString('utf8') }),
        };
    }
}
