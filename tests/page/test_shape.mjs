// Every screen and every sheet on a phone: everything that can be pressed is large enough for a thumb, lies within the
// window, has a name, and says it in the page's own words; and an audit by rules from outside finds nothing.
// (Other sizes, large letters, every recipe and the test language are toured natively: tests/test_screens.cpp.)
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { audit } from './audit.mjs';
import { address, open, profile } from './browser.mjs';
import { mirror } from './hands.mjs';
import * as steps from './steps.mjs';
import { say } from './words.mjs';

const kTarget = 44;
const kNumberField = 48;

// Faults of what stands in the mirror now.
const look = (page) => page.evaluate(({ target, number, foot }) => {
    const faults = [];
    const all = [...document.querySelectorAll('#mirror .twin')].filter((one) => !one.closest('[inert]'));
    const named = (one) => `${one.tagName.toLowerCase()} "${one.getAttribute('aria-label') ?? one.textContent}"`;
    for (const one of all) {
        const words = one.getAttribute('aria-label') ?? (one.children.length ? '' : one.textContent);
        const about = document.getElementById(one.getAttribute('aria-describedby'))?.textContent ?? '';
        for (const text of [words, about]) if (/\[\[|\{\w+\}|undefined|\bnan\b/i.test(text)) faults.push(`${named(one)} says “${text}”`);
        if (!one.matches('button, input, textarea')) continue;
        if (!words.trim()) faults.push(`${named(one)} has no name`);
        const box = one.getBoundingClientRect();
        if (Math.min(box.width, box.height) < target - 0.01) faults.push(`${named(one)} is ${box.width} by ${box.height}`);
        if (one.matches('.field_decimal') && box.height < number - 0.01) faults.push(`${named(one)} is ${box.height} high`);
        if (box.left < -0.01 || box.right > innerWidth + 0.01)
            faults.push(`${named(one)} reaches from ${box.left} to ${box.right} of ${innerWidth}`);
    }
    const ids = all.map((one) => one.dataset.node);
    if (new Set(ids).size !== ids.length) faults.push('an id is there twice');
    // Side by side or one over the other, never overlapping: a thumb must not have to guess.
    const pressable = all.filter((one) => one.matches('button, input, textarea') && !one.matches('.clipped'))
        .map((one) => ({ one, box: one.getBoundingClientRect() }));
    const below = (one) => Boolean(one.closest('nav')) || foot.some((words) => one.textContent.endsWith(words));
    for (let i = 0; i < pressable.length; ++i)
        for (let k = i + 1; k < pressable.length; ++k) {
            const [a, b] = [pressable[i].box, pressable[k].box];
            const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
            const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
            // A row that is half scrolled under the bar of places or the screen's foot is cut off there.
            const bar = below(pressable[i].one) !== below(pressable[k].one);
            if (across > 1 && down > 1 && !bar)
                faults.push(`${named(pressable[i].one)} and ${named(pressable[k].one)} overlap by ${across} by ${down}`);
        }
    if (!document.querySelector('#mirror h1, #mirror [role=dialog] h2')) faults.push('there is no heading');
    if (document.documentElement.scrollWidth > innerWidth) faults.push('the page itself scrolls sideways');
    return faults;
}, { target: kTarget, number: kNumberField, foot: [say('book.new'), say('weigh.in', { g: '' }), say('weigh.next'), say('weigh.end')] });

// (In one engine: the mirror, which is what is looked at, is the same in all.)
async function walk({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    const faults = [];
    const report = [];
    await steps.tour(page, mirror(page), async (name) => {
        faults.push(...(await look(page)).map((fault) => `${name}: ${fault}`));
        const { violations, passed, version } = await audit(page);
        report.push(`axe-core ${version}, ${name}: ${passed} rules passed, ${violations.length} violations`, ...violations);
        faults.push(...violations.map((fault) => `${name}: ${fault}`));
    });
    writeFileSync(join(dirname(file), 'audit.txt'), `${report.join('\n')}\n`);
    assert.deepEqual(faults, []);
    return `audited ${report.length} times`;
}

// An audit that finds nothing must be one that would.
async function finds({ browser, file }) {
    const page = await open(await profile(browser), address(file));
    await page.evaluate(() => document.querySelector('#mirror main').append(document.createElement('button')));
    const { violations } = await audit(page);
    assert.equal(violations.length, 1, violations.join('\n'));
    assert.match(violations[0], /^button-name: /);
}

export const tests = [
    ['every screen and sheet at 360 x 640: names, sizes for a thumb, nothing beyond the edge, nothing that an audit finds',
        walk, { once: true }],
    ['the audit finds a button that has no name', finds, { once: true }],
];
