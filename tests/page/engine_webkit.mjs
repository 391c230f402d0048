// WebKit as it is packaged for GTK, driven over WebDriver. Where the protocol has no way, this stands instead:
//   fingers   there are none: events of a finger are made by script, so the browser's own part in a touch (scrolling,
//             what counts as a wish of the person) is not proved here
//   a phone   the window is not narrower than 447 points, one pixel a point
//   network   nothing can be cut off; what was asked for is read from the page's own record (browser.mjs)
import { Page } from './webkit_page.mjs';
import { Session } from './webkit_session.mjs';

export const name = 'webkit';
export const density = 1;

class Context {
    constructor(browser, session) {
        this.browser = browser;
        this.session = session;
        this.spare = session.window;
        this.windows = [];
        this.scripts = [];
    }
    pages() { return [...this.windows]; }
    // The window that the session began with, or a further one.
    async newPage() {
        const handle = this.spare ?? (await this.session.call(this.session.window, 'POST', '/window/new', { type: 'window' })).handle;
        this.spare = null;
        const page = new Page(this, handle);
        this.windows.push(page);
        await page.setViewportSize(this.viewport);
        return page;
    }
    // The last window stays, empty: with it the session would end.
    async closed(page) {
        this.windows = this.windows.filter((one) => one !== page);
        if (this.windows.length) return page.send('DELETE', '/window');
        this.spare = page.handle;
        return page.send('POST', '/url', { url: 'about:blank' });
    }
    async addInitScript(script) { this.scripts.push(script); }
    async setOffline() {}
    setDefaultTimeout() {}
    on() {}
    async close() {
        this.browser.open.delete(this);
        await this.session.end();
    }
}

class Browser {
    open = new Set();
    contexts() { return [...this.open]; }
    isConnected() { return true; }
    async newContext({ viewport }) {
        const context = new Context(this, await Session.start());
        context.viewport = viewport;
        this.open.add(context);
        return context;
    }
    async close() { for (const context of this.contexts()) await context.close(); }
}

export const launch = async () => new Browser();
export const understood = (options) => options;

export const picture = (page) => page.screenshot();

// The deeds in one go, each event dated as a finger's would be; where the page itself must notice time, it passes.
export async function touch(page, deeds) {
    await page.run(`async (deeds) => {
        let now = performance.now();
        const down = new Map();
        const tell = (kind, id, [x, y]) => {
            const over = down.get(id);
            const target = over && over.isConnected ? over : document.elementFromPoint(x, y) ?? document.body;
            if (kind === 'pointerdown') down.set(id, target);
            const event = new PointerEvent(kind, {
                pointerType: 'touch', pointerId: id + 100, isPrimary: id === 0, button: kind === 'pointermove' ? -1 : 0,
                buttons: kind === 'pointerup' ? 0 : 1, clientX: x, clientY: y, bubbles: true, cancelable: true, composed: true,
            });
            Object.defineProperty(event, 'timeStamp', { value: now });
            target.dispatchEvent(event);
        };
        const at = new Map();
        for (const [deed, what] of deeds) {
            if (deed === 'pass') {
                now += what;
            } else if (deed === 'hold') {
                await new Promise((done) => setTimeout(done, what));
                now = performance.now();
            } else {
                for (const [id, place] of what.entries()) {
                    tell(down.has(id) ? 'pointermove' : 'pointerdown', id, place);
                    at.set(id, place);
                }
                for (const id of [...down.keys()].filter((one) => one >= what.length)) {
                    tell('pointerup', id, at.get(id));
                    down.delete(id);
                }
            }
        }
    }`, deeds);
}
