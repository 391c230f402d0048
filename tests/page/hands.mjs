// Three ways of using the page, with the same three deeds: press(element), write(field, text), number(field, text).
//   touch     a finger on the picture, at the place that the element's mirror names; scrolls by dragging; numbers go by
//             the keypad, key by key
//   mirror    role and name alone, as assistive technology and voice control do
//   keyboard  Tab and Shift+Tab until the element has the focus, then Enter or typing
import assert from 'node:assert/strict';
import { settled } from './browser.mjs';
import { say } from './words.mjs';

const kKeys = {
    '/': 'keypad.divide', '*': 'keypad.times', '-': 'keypad.minus', '+': 'keypad.plus',
    '.': 'keypad.decimal', ',': 'keypad.decimal',
};
const kMostTabs = 400;
const kMostDrags = 40;

// ---- touch --------------------------------------------------------------------------------------------------
export class Finger {
    constructor(page) {
        this.page = page;
    }
    async cdp() {
        this.session ??= await this.page.context().newCDPSession(this.page);
        return this.session;
    }
    async send(type, points, timestamp) {
        await (await this.cdp()).send('Input.dispatchTouchEvent', {
            type, touchPoints: points.map(([x, y], id) => ({ x, y, id })), ...(timestamp ? { timestamp } : {}),
        });
    }
    // A quick stroke, by its own clock however slow the machine is.
    async flick(x, y, dy, steps = 8) {
        await this.cdp();
        const start = Date.now() / 1000;
        const sent = [this.send('touchStart', [[x, y]], start)];
        for (let i = 1; i <= steps; ++i) sent.push(this.send('touchMove', [[x, y + (dy * i) / steps]], start + 0.012 * i));
        sent.push(this.send('touchEnd', [], start + 0.012 * (steps + 1)));
        await Promise.all(sent);
        await settled(this.page);
    }
    // Down and up are sent together and dated by the finger: between two answers of a slow machine it would be a held one.
    async tap(x, y) {
        await this.cdp();
        const start = Date.now() / 1000;
        await Promise.all([this.send('touchStart', [[x, y]], start), this.send('touchEnd', [], start + 0.06)]);
        await settled(this.page);
    }
    // A drag that stops before the finger leaves, so that nothing glides on.
    async drag(x, y, dx, dy, steps = 6) {
        await this.send('touchStart', [[x, y]]);
        for (let i = 1; i <= steps; ++i) await this.send('touchMove', [[x + (dx * i) / steps, y + (dy * i) / steps]]);
        await this.page.evaluate(() => new Promise((done) => setTimeout(done, 120)));
        await this.send('touchMove', [[x + dx, y + dy]]);
        await this.send('touchEnd', []);
        await settled(this.page);
    }
    async hold(x, y, ms = 700) {
        await this.send('touchStart', [[x, y]]);
        await this.page.evaluate((time) => new Promise((done) => setTimeout(done, time)), ms);
        await settled(this.page);
        await this.send('touchEnd', []);
        await settled(this.page);
    }
}

// Where an element is drawn, and whether its middle can be reached there now.
export async function drawnAt(locator) {
    return locator.evaluate((element) => {
        const box = element.getBoundingClientRect();
        const x = box.x + box.width / 2;
        const y = box.y + box.height / 2;
        const under = document.elementFromPoint(x, y);
        const reachable = under === element || element.contains(under);
        return { x, y, box: { x: box.x, y: box.y, width: box.width, height: box.height }, reachable };
    });
}

export function touch(page) {
    const finger = new Finger(page);
    // The part of the window that scrolls: between what stays at top and bottom.
    const area = async () => page.evaluate((keypadName) => {
        const box = (element) => element.getBoundingClientRect();
        const dialog = document.querySelector('#mirror [role=dialog]');
        const keypad = [...document.querySelectorAll('#mirror section')]
            .find((one) => one.getAttribute('aria-label').startsWith(keypadName));
        const nav = document.querySelector('#mirror nav button');
        const head = dialog ? dialog.querySelector('h2') : document.querySelector('#mirror h1');
        const pad = keypad && [...keypad.querySelectorAll('button')].map((one) => box(one).top).sort((a, b) => a - b)[0] - 30;
        return { top: box(head).bottom + 24, bottom: pad ?? (dialog || !nav ? innerHeight : box(nav).top), left: 0, right: innerWidth };
    }, say('keypad.name', { field: '' }).trim());
    const reach = async (locator) => {
        await locator.waitFor({ state: 'attached' });
        for (let i = 0; i < kMostDrags; ++i) {
            const at = await drawnAt(locator);
            if (at.reachable) return at;
            const { top, bottom } = await area();
            const middle = (top + bottom) / 2;
            const most = (bottom - top) * 0.4;
            const wanted = Math.max(-most, Math.min(most, middle - at.y));
            if (Math.abs(wanted) < 12) break;  // it should be here, but something lies over it
            await finger.drag(180, middle - wanted / 2, 0, wanted);
        }
        const at = await drawnAt(locator);
        if (at.reachable) return at;
        throw new Error(`a finger does not get to ${await name(locator)}`);
    };
    const press = async (locator) => {
        const { x, y } = await reach(locator);
        await finger.tap(x, y);
    };
    return {
        kind: 'touch',
        finger,
        reach,
        press,
        async write(locator, text) {
            await press(locator);
            assert.equal(await hasFocus(locator), true, `a tap on ${await name(locator)} opens its native field`);
            await page.keyboard.press('Control+A');
            await page.keyboard.type(text);
            await settled(page);
        },
        async number(locator, text) {
            await press(locator);
            const label = await locator.getAttribute('aria-label');
            const keypad = page.getByRole('region', { name: say('keypad.name', { field: label }), exact: true });
            await keypad.waitFor({ state: 'attached' });
            for (const key of text)
                await press(keypad.getByRole('button', { name: kKeys[key] ? say(kKeys[key]) : key, exact: true }));
            await press(keypad.getByRole('button', { name: say('keypad.done'), exact: true }));
            assert.equal(await keypad.count(), 0, 'Done closes the keypad');
        },
    };
}

// ---- mirror -------------------------------------------------------------------------------------------------
export function mirror(page) {
    const press = async (locator) => {
        await locator.focus();
        await settled(page);
        await locator.click();
        await settled(page);
    };
    const write = async (locator, text) => {
        await locator.fill(text);
        await settled(page);
    };
    return { kind: 'mirror', press, write, number: write };
}

// ---- keyboard -----------------------------------------------------------------------------------------------
export function keyboard(page) {
    const goTo = async (locator) => {
        await locator.waitFor({ state: 'attached' });
        for (let i = 0; i < kMostTabs; ++i) {
            const where = await locator.evaluate((element) => {
                const now = document.activeElement;
                if (now === element) return 'here';
                if (now === document.body || now.contains(element)) return 'on';
                return now.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING ? 'back' : 'on';
            });
            if (where === 'here') {
                await settled(page);
                return;
            }
            await page.keyboard.press(where === 'on' ? 'Tab' : 'Shift+Tab');
        }
        throw new Error(`Tab does not get to ${await name(locator)}`);
    };
    const write = async (locator, text) => {
        await goTo(locator);
        await page.keyboard.press('Control+A');
        await page.keyboard.type(text);
        await settled(page);
    };
    return {
        kind: 'keyboard',
        goTo,
        async press(locator) {
            await goTo(locator);
            await page.keyboard.press('Enter');
            await settled(page);
        },
        write,
        number: write,
    };
}

export const hasFocus = (locator) => locator.evaluate((element) => element === document.activeElement);
export const name = (locator) =>
    locator.evaluate((element) => element.getAttribute('aria-label') ?? element.textContent).catch(() => String(locator));
