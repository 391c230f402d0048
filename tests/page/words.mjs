// The words of the page by their keys, so that tests name what they press as the page does and a reworded label breaks
// none of them. Plural by the rule of the shipped table (one, other).
import { readFileSync } from 'node:fs';

const table = JSON.parse(readFileSync(new URL('../../presets/words/en.json', import.meta.url), 'utf8'));

export function say(key, args = {}) {
    let words = table.words[key];
    if (words === undefined) throw new Error(`no words for ${key}`);
    if (typeof words === 'object') words = Number(args.n) === 1 ? words.one : words.other;
    return words.replace(/\{(\w+)\}/g, (whole, name) => (name in args ? setApart(String(args[name])) : whole));
}

// What runs from right to left is set apart in a sentence (first strong isolate … pop directional isolate).
const setApart = (part) => (/[\p{Script=Arabic}\p{Script=Hebrew}]/u.test(part) ? `\u2068${part}\u2069` : part);

// Matches the sentence whatever stands in its places, and gives back what stands there, in order.
export function places(key) {
    const quoted = table.words[key].replace(/[.*+?^$()|[\]\\]/g, '\\$&');
    return new RegExp(quoted.replace(/\{\w+\}/g, '(.+?)'), 'u');
}
