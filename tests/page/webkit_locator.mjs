// Finding elements by role and name, by words or by selector where the driver cannot, as the driver of the other engines
// does. Everything happens in the page, in one call: the way to the elements is sent along with what is to be done there.
import { setTimeout as pause } from 'node:timers/promises';

const kPatience = 15000;

// Runs in the page. way: steps from the whole document on. Knows the few kinds of element that the page is made of.
function found(way) {
    const squeezed = (text) => text.replace(/\s+/g, ' ').trim();
    const kinds = {
        button: 'button', list: 'ul, ol', listitem: 'li', heading: 'h1, h2, h3, h4', navigation: 'nav', main: 'main',
        region: 'section[aria-label]', searchbox: 'input[type=search]', checkbox: 'input[type=checkbox]',
        textbox: 'input:not([type=search], [type=checkbox]), textarea',
    };
    const ofRole = (one, role) =>
        one.hasAttribute('role') ? one.getAttribute('role') === role : Boolean(kinds[role]) && one.matches(kinds[role]);
    const fits = (text, wanted, exact) => {
        if (wanted instanceof RegExp) return wanted.test(squeezed(text));
        return exact ? squeezed(text) === squeezed(wanted) : squeezed(text).toLowerCase().includes(squeezed(wanted).toLowerCase());
    };
    const nameOf = (one) => one.getAttribute('aria-label') ?? one.textContent;
    const text = (value) => (value && value.source !== undefined ? new RegExp(value.source, value.flags) : value);
    const below = (roots, test) => [...new Set(roots.flatMap((root) => [...root.querySelectorAll('*')].filter(test)))]
        .sort((a, b) => (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1));
    let here = [document];
    for (const [kind, what, more = {}] of way) {
        const words = text(what);
        if (kind === 'css') here = below(here, (one) => one.matches(what));
        else if (kind === 'role')
            here = below(here, (one) => ofRole(one, what) && !one.closest('[aria-hidden=true]')
                && (more.name === undefined || fits(nameOf(one), text(more.name), more.exact))
                && (more.level === undefined || one.matches(`h${more.level}`))
                && one.checkVisibility({ visibilityProperty: true }));
        else if (kind === 'text')
            here = below(here, (one) => fits(one.textContent, words, more.exact)
                && ![...one.children].some((child) => fits(child.textContent, words, more.exact)));
        else if (kind === 'with') here = here.filter((one) => fits(one.textContent, words, false));
        else if (kind === 'nth') here = here.slice(what, what === -1 ? undefined : what + 1);
    }
    return here;
}

const plain = (value) => (value instanceof RegExp ? { source: value.source, flags: value.flags } : value);

export class Locator {
    constructor(page, way = []) {
        this.page = page;
        this.way = way;
    }
    further(...step) {
        return new Locator(this.page, [...this.way, step]);
    }
    locator(selector) { return this.further('css', selector); }
    getByRole(role, { name, exact, level } = {}) { return this.further('role', role, { name: plain(name), exact, level }); }
    getByText(words, { exact } = {}) { return this.further('text', plain(words), { exact }); }
    filter({ hasText }) { return this.further('with', plain(hasText)); }
    nth(n) { return this.further('nth', n); }
    first() { return this.nth(0); }
    last() { return this.nth(-1); }

    // deed(elements, argument) runs in the page.
    async onAll(deed, argument) {
        const code = `(argument) => (${deed})((${found})(argument.way), argument.more)`;
        return this.page.run(code, { way: this.way, more: argument });
    }
    async count() { return this.onAll((all) => all.length); }
    async all() { return Array.from({ length: await this.count() }, (_, n) => this.nth(n)); }
    async evaluateAll(deed, argument) { return this.onAll(deed, argument); }
    async allTextContents() { return this.onAll((all) => all.map((one) => one.textContent)); }

    // Waits until the element is there. Several are an error, as in the other engines.
    async evaluate(deed, argument) {
        const code = `(all, argument) => {
            if (all.length === 0) return { none: true };
            if (all.length > 1) throw new Error(all.length + ' elements where one is meant');
            return Promise.resolve((${deed})(all[0], argument)).then((value) => ({ value }));
        }`;
        const until = Date.now() + kPatience;
        for (;;) {
            const answer = await this.onAll(code, argument);
            if (!answer.none) return answer.value ?? undefined;
            if (Date.now() > until) throw new Error(`not there: ${this}`);
            await pause(20);
        }
    }
    async waitFor({ state = 'visible' } = {}) {
        const until = Date.now() + kPatience;
        while (!(await (state === 'visible' ? this.isVisible() : this.count().then(Boolean)))) {
            if (Date.now() > until) throw new Error(`waited in vain for ${this}`);
            await pause(20);
        }
    }
    async isVisible() {
        return this.onAll((all) => all.length > 0 && all[0].checkVisibility({ visibilityProperty: true })
            && all[0].getBoundingClientRect().width > 0);
    }
    async getAttribute(name) { return (await this.evaluate((one, key) => one.getAttribute(key), name)) ?? null; }
    async inputValue() { return this.evaluate((one) => one.value); }
    async innerText() { return this.evaluate((one) => one.innerText); }
    async textContent() { return this.evaluate((one) => one.textContent); }
    async focus() { await this.evaluate((one) => one.focus()); }
    async blur() { await this.evaluate((one) => one.blur()); }
    async boundingBox() {
        return this.evaluate((one) => {
            const { x, y, width, height } = one.getBoundingClientRect();
            return { x, y, width, height };
        });
    }
    // With the mouse, where its middle is, or what lies there complains.
    async click() {
        const { x, y, free } = await this.evaluate((one) => {
            one.scrollIntoView({ block: 'nearest' });
            const box = one.getBoundingClientRect();
            const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
            return { x, y, free: one.contains(document.elementFromPoint(x, y)) };
        });
        if (!free) throw new Error(`something lies over ${this}`);
        await this.page.mouse.click(x, y);
    }
    toString() {
        return this.way.map(([kind, what, more]) => `${kind} ${JSON.stringify(what)}${more ? ` ${JSON.stringify(more)}` : ''}`).join(' > ');
    }
}
