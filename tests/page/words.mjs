// The words of the page by their keys, so that tests name what they press as the page does and a reworded label breaks
// none of them. Plural by the rule of the shipped table (one, other). With --language=en-XA in the test language that
// engine/words_test_language.h makes by rule.
import { readFileSync } from 'node:fs';

const table = JSON.parse(readFileSync(new URL('../../presets/words/en.json', import.meta.url), 'utf8'));
export const language = process.argv.find((one) => one.startsWith('--language='))?.slice(11) ?? '';

const accents = Object.fromEntries([...'aceinosuyzACEINOSUYZ'].map((plain, i) => [plain, [...'áçéíñöšüýžÁÇÉÍÑÖŠÜÝŽ'][i]]));
const stretched = (text) => text.replace(/\{\w+\}|[a-z]/giu, (one) =>
    (one.length > 1 ? one : (accents[one] ?? one).repeat(/[aeiou]/i.test(one) ? 2 : 1)));

// The text of a key, as it stands in the table or in a form of it.
function entry(key, form = (words) => words) {
    const words = form(table.words[key]);
    if (typeof words !== 'string') throw new Error(`no words for ${key}`);
    return language === 'en-XA' ? stretched(words) : words;
}

export function say(key, args = {}) {
    const counted = (words) => (typeof words === 'object' ? words[Number(args.n) === 1 ? 'one' : 'other'] : words);
    return entry(key, counted).replace(/\{(\w+)\}/g, (whole, name) => (name in args ? setApart(String(args[name])) : whole));
}

// What runs from right to left is set apart in a sentence (first strong isolate … pop directional isolate).
const setApart = (part) => (/[\p{Script=Arabic}\p{Script=Hebrew}]/u.test(part) ? `\u2068${part}\u2069` : part);

// Matches the sentence whatever stands in its places, and gives back what stands there, in order.
export function places(key) {
    const quoted = entry(key).replace(/[.*+?^$()|[\]\\]/g, '\\$&');
    return new RegExp(quoted.replace(/\{\w+\}/g, '(.+?)').replace(/[ \u00A0]/g, '\\s'), 'u');
}
