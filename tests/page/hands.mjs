// Three ways of using the page, with the same three deeds: press(element), write(field, text), number(field, text).
//   touch     a finger on the picture, at the place that the element's mirror names; scrolls by dragging; numbers go by
//             the keypad, key by key
//   mirror    role and name alone, as assistive technology and voice control do
//   keyboard  Tab and Shift+Tab until the element has the focus, then Enter (of a box to tick: the space bar) or typing
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
// What fingers do is a list of deeds, each with its own time, which the engine carries out:
//   ['down' | 'move' | 'up', [[x, y], …]]  all fingers that are on the glass then
//   ['pass', ms]                           time that passes for the page, by the dates of what it is told
//   ['hold', ms]                           time that passes for everybody: the page must notice by itself
export class Finger {
    constructor(page) {
        this.page = page;
    }
    async does(...deeds) {
        await this.page.context().engine.touch(this.page, deeds);
        await settled(this.page);
    }
    moves(x, y, dx, dy, steps) {
        return Array.from({ length: steps }, (_, i) => (i + 1) / steps)
            .flatMap((share) => [['pass', 12], ['move', [[x + dx * share, y + dy * share]]]]);
    }
    async tap(x, y) {
        await this.does(['down', [[x, y]]], ['pass', 20], ['up', []]);
    }
    // A quick stroke that lets go while moving.
    async flick(x, y, dy, steps = 8) {
        await this.does(['down', [[x, y]]], ...this.moves(x, y, 0, dy, steps), ['pass', 12], ['up', []]);
    }
    // A drag that stops before the finger leaves, so that nothing glides on.
    async drag(x, y, dx, dy, steps = 6) {
        const end = [[x + dx, y + dy]];
        await this.does(['down', [[x, y]]], ...this.moves(x, y, dx, dy, steps), ['pass', 120], ['move', end], ['up', []]);
    }
    async hold(x, y, ms = 700) {
        await this.does(['down', [[x, y]]], ['hold', ms], ['up', []]);
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
        let share = 0.8;  // of what scrolls, at one stroke; where its end lies over a bar at the foot, less
        for (let i = 0, last; i < kMostDrags; ++i) {
            const at = await drawnAt(locator);
            if (at.reachable) return at;
            if (at.y === last) share = 0.4;
            last = at.y;
            const { top, bottom } = await area();
            const middle = (top + bottom) / 2;
            const most = (bottom - top) * share;
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
    // In one go over what stands there, as dictation, paste or a switch does; the browser itself makes the events of it.
    const write = async (locator, text) => {
        await locator.evaluate((element, words) => {
            element.focus();
            element.select();
            document.execCommand(words === '' ? 'delete' : 'insertText', false, words);
        }, text);
        await settled(page);
    };
    return { kind: 'mirror', press, write, number: write };
}

// ---- keyboard -----------------------------------------------------------------------------------------------
export function keyboard(page) {
    const goTo = async (locator) => {
        await locator.waitFor({ state: 'attached' });
        for (let pressed = 0; pressed < kMostTabs;) {
            // How often, as the page stands; it may change on the way, so this is asked again at the end.
            const away = await locator.evaluate((element) => {
                const all = [...document.querySelectorAll('#mirror :is(button, input, textarea)')]
                    .filter((one) => !one.closest('[inert]') && one.tabIndex >= 0 && !one.disabled);
                const now = document.activeElement;
                if (now === element) return 0;
                return all.includes(now) && all.includes(element) ? all.indexOf(element) - all.indexOf(now) : 1;
            });
            if (away === 0) return settled(page);
            for (let i = 0; i < Math.abs(away); ++i) await page.keyboard.press(away > 0 ? 'Tab' : 'Shift+Tab');
            pressed += Math.abs(away);
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
            await page.keyboard.press(await locator.evaluate((element) => (element.type === 'checkbox' ? ' ' : 'Enter')));
            await settled(page);
        },
        write,
        number: write,
    };
}

export const hasFocus = (locator) => locator.evaluate((element) => element === document.activeElement);
export const name = (locator) =>
    locator.evaluate((element) => element.getAttribute('aria-label') ?? element.textContent).catch(() => String(locator));
