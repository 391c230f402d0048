// node compare_doors.mjs NATIVE WASM_JS: the command line, native and as wasm under node, must answer alike:
// same bytes on both streams, same exit code, for every preset recipe and verb and for bad inputs.
// Native reads a file and wasm reads "-" (and the other way round for the verb sheet), so both ways are tried. As many
// programs run side by side as there are processors.
// Says nothing about whether the answers are right; that is for test_*.cpp.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const [native, wasm] = process.argv.slice(2);
const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const scratch = mkdtempSync(join(tmpdir(), 'tarebench-doors-'));
let passed = 0;
let failed = 0;

let free = availableParallelism();
const waiting = [];

// What a program says to these arguments and this input.
async function said([command, ...before], verb, name, input) {
    if (free === 0) await new Promise((go) => waiting.push(go));
    else free -= 1;
    const child = spawn(command, [...before, verb, name]);
    const out = [];
    const err = [];
    child.stdout.on('data', (part) => out.push(part));
    child.stderr.on('data', (part) => err.push(part));
    child.stdin.on('error', () => {});  // it may end before it has read all
    child.stdin.end(input);
    const code = await new Promise((done, fail) => child.on('close', done).on('error', fail));
    if (waiting.length > 0) waiting.shift()();
    else free += 1;
    return { code, out: Buffer.concat(out), err: Buffer.concat(err) };
}

let files = 0;
async function answer(program, verb, input, byFile) {
    if (!byFile) return said(program, verb, '-', input);
    const file = join(scratch, `input-${++files}`);
    writeFileSync(file, input);
    return said(program, verb, file, '');
}

// Compares one verb on one input; `expected` is an exit code, or null where either will do. Returns the output.
async function compare(what, verb, input, expected) {
    const byFile = verb !== 'sheet';
    const [one, two] = await Promise.all([
        answer([native], verb, input, byFile), answer([process.execPath, wasm], verb, input, !byFile)]);
    const problems = [];
    if (one.code !== two.code) problems.push(`exit code ${one.code} against ${two.code}`);
    if (!one.out.equals(two.out)) problems.push(`other output: ${firstDifference(one.out, two.out)}`);
    if (!one.err.equals(two.err)) problems.push(`other message: ${one.err} against ${two.err}`);
    if (expected !== null && one.code !== expected) problems.push(`exit code ${one.code}, ${one.err}`);
    if (one.code === 0 && one.out.length === 0) problems.push('no output');
    if (one.code !== 0 && !/^[^\n]+: [^\n]+\n$/.test(one.err)) problems.push(`not one line "place: what": ${one.err}`);
    if (problems.length === 0) passed += 1;
    else failed += 1;
    for (const problem of problems) console.log(`${verb} on ${what}: ${problem}`);
    return one.code === 0 ? one.out.toString('utf8') : '';
}

function firstDifference(one, two) {
    let at = 0;
    while (at < one.length && one[at] === two[at]) at += 1;
    return `at byte ${at}: "${one.subarray(at - 20, at + 20)}" against "${two.subarray(at - 20, at + 20)}"`;
}

const recipes = readdirSync(join(root, 'presets/recipes')).filter((name) => name.endsWith('.json')).sort();
let fragment = '';
await Promise.all(recipes.map(async (name) => {
    const recipe = readFileSync(join(root, 'presets/recipes', name));
    const others = ['batch', 'blend', 'card', 'check', 'label', 'pack', 'sheet'].map((verb) => compare(name, verb, recipe, 0));
    const link = await compare(name, 'link', recipe, 0);
    if (link) {
        fragment = JSON.parse(link).link;
        const opened = await compare(`the link of ${name}`, 'open', fragment, 0);
        // A link once more from what it opened to is the same link.
        if (opened && (await compare(`${name} opened again`, 'link', opened, 0)) !== link) {
            console.log(`link on ${name}: another link after one way there and back`);
            failed += 1;
        }
    }
    await Promise.all(others);
}));

const recipeOf = (lines, batch) => JSON.stringify({ tarebench: 1, kind: 'formula', title: 'Test', lines, batch });
const half = { name: 'Plum kernel oil', percent: 50, phase: 'A' };
const bad = {
    nothing: '',
    'a word': 'hello',
    'half a file': '{"tarebench":1,',
    'no recipe': '{"a":[1,2,3]}',
    'a list': '[]',
    'deep nesting': '['.repeat(20000),
    'a formula that adds to 50': recipeOf([half], { grams: 250 }),
    'a negative batch': recipeOf([half, { name: 'Rest', rest: true, phase: 'A' }], { grams: -1 }),
    'a text for a number': recipeOf([{ ...half, percent: 'half' }], { grams: 250 }),
    'percent over 100': recipeOf([{ ...half, percent: 1e300 }], { grams: 250 }),
    'a newer version': '{"tarebench":999,"kind":"formula","title":"x","lines":[]}',
    'bytes that are no UTF-8': Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x3a, 0x31, 0x7d]),
};
const more = [];  // comparisons under way
for (const [what, input] of Object.entries(bad))
    for (const verb of ['batch', 'blend', 'label', 'pack', 'sheet']) more.push(compare(what, verb, input, 2));
for (const what of ['nothing', 'half a file', 'no recipe', 'a list', 'a newer version', 'bytes that are no UTF-8'])
    more.push(compare(what, 'link', bad[what], 2));

// Readings: drawn, walked, a single point, nothing that fits, all kinds of statements; and what is refused.
const listed = (count) => Array.from({ length: count }, (_, i) => ({ name: `Name ${i}` }));
const reading = (count, more) => JSON.stringify({ listed: listed(count), samples: 400, ...more });
const lantern = 'Ricinus Communis Seed Oil, Butyrospermum Parkii Butter, Cera Alba 20%, Tocopherol, Lavandula Angustifolia Oil, Linalool';
const readings = {
    'one name': reading(1, {}),
    'twenty names, the line unknown': reading(20, {}),
    'twelve with narrow limits': reading(12, { one_percent_after: 8, limits: [{ item: 0, min: 30, max: 31 }, { item: 4, min: 7, max: 7.5 }] }),
    'nine with an equation': reading(9, { groups: [{ items: [1, 2], min: 12.3456, max: 12.3456 }] }),
    'a single point': reading(4, { one_percent_after: 4, limits: [{ item: 0, max: 25 }] }),
    'what cannot be': reading(4, { limits: [{ item: 1, max: 10 }, { item: 3, min: 15 }] }),
    'a list as printed': JSON.stringify({ product: 'salve', market: 'eu', date: '2026-06-01', list: lantern, one_percent_after: 3,
        properties: [{ property: 'density', min: 0.9, max: 0.97 }], known_limits: true }),
};
for (const [what, input] of Object.entries(readings)) more.push(compare(what, 'read', input, 0));
for (const what of ['nothing', 'half a file', 'no recipe', 'a list', 'bytes that are no UTF-8'])
    more.push(compare(what, 'read', bad[what], 2));

// What is filed, in a backup.
const filed = ['batch_record', 'lot', 'version'].map((kind) => readFileSync(join(root, `tests/data/v1_${kind}.json`), 'utf8'));
more.push(compare('a backup', 'lots', `{"tarebench":1,"kind":"backup","made":"","records":[\n${filed.join(',\n')}\n]}\n`, 0));
for (const what of ['nothing', 'half a file', 'no recipe', 'a list', 'a newer version', 'bytes that are no UTF-8'])
    more.push(compare(what, 'lots', bad[what], 2));
// Costs: two currencies, a volume, what has no price; and what is refused.
const paid = (more) => JSON.stringify({ recipe: JSON.parse(readFileSync(join(root, 'presets/recipes/orchard_lip_balm.json'))),
    prices: { currency: 'EUR', packs: [{ ingredient: 'beeswax_yellow', g: 500, price: 9.8, delivery: 1.2, currency: 'EUR' },
        { ingredient: 'castor', ml: 1000, price: 6.5, currency: 'GBP' }], rates: [{ from: 'GBP', to: 'EUR', gives: 1.16, day: '2026-10-01' }],
    hour: { amount: 18, currency: 'EUR' }, makings: [{ minutes_batch: 45 }], wholesale: { margin_percent: 50 }, ...more } });
more.push(compare('costs', 'cost', paid({}), 0));
more.push(compare('a coin that is not there', 'cost', paid({ hour: { amount: 18.005, currency: 'EUR' } }), 2));
for (const what of ['nothing', 'half a file', 'no recipe', 'a list', 'bytes that are no UTF-8'])
    more.push(compare(what, 'cost', bad[what], 2));
// Weighing out: as asked, two mistakes with their choices, an adjustment; and what is refused.
const weighed = (name, more) => JSON.stringify({ recipe: JSON.parse(readFileSync(join(root, 'presets/recipes', name))), ...more });
const salve = 'potting_shed_hand_salve.json';
const weighings = {
    'nothing poured': weighed(salve, {}),
    'too much wax': weighed(salve, { jug_g: 150, acts: [{ line: 0, shows_g: 60 }] }),
    'two mistakes and an adjustment': weighed(salve, { jug_g: 150, pot_g: 900, scales: [{ division_g: 0.01, capacity_g: 500 }, { division_g: 1 }],
        acts: [{ line: 0, shows_g: 60 }, { line: 0, choose: 'proportion' }, { line: 1, shows_g: 20 }, { line: 1, choose: 'accept' },
            { line: 4, shows_g: 330, not_zeroed: true }, { line: 0, percent: 20 }, { fill_g: 27.5 }] }),
    'too much preservative': weighed('kitchen_garden_hand_lotion.json', { acts: [{ line: 7, shows_g: 4 }] }),
};
for (const [what, input] of Object.entries(weighings)) more.push(compare(what, 'weigh', input, 0));
for (const what of ['nothing', 'half a file', 'no recipe', 'a list', 'bytes that are no UTF-8'])
    more.push(compare(what, 'weigh', bad[what], 2));
more.push(compare('a line that is not there', 'weigh', weighed(salve, { acts: [{ line: 70, shows_g: 1 }] }), 2));
more.push(compare('a choice nobody has', 'weigh', weighed(salve, { acts: [{ line: 0, choose: 'dance' }] }), 2));

// Swaps: all that stand in for a line, one of them with prices, the nearest formula; and what is refused.
for (const [what, asked] of Object.entries({
    'all for a wax': { line: 0 },
    'one oil': { line: 2, by: 'sunflower' },
    'the nearest': { line: 0, nearest: ['candelilla', 'sunflower_wax'], others_move: true },
})) more.push(compare(what, 'swap', weighed(salve, asked), 0));
for (const asked of [{}, { line: 70 }, { line: 0, by: 'nobody' }, { line: 0, nearest: [] }, { line: 0, dance: 1 }])
    more.push(compare(JSON.stringify(asked), 'swap', weighed(salve, asked), 2));

const links = { nothing: '', 'a word': 'hello', 'a hash alone': '#', 'bytes that are no UTF-8': bad['bytes that are no UTF-8'] };
if (fragment) {
    const middle = Math.floor(fragment.length / 2);
    const other = fragment[middle] === 'A' ? 'B' : 'A';
    links['a link cut short'] = fragment.slice(0, middle);
    links['an altered link'] = fragment.slice(0, middle) + other + fragment.slice(middle + 1);
    links['a link with more behind it'] = `${fragment}AAAA`;
    links['a very long link'] = fragment + 'A'.repeat(300000);
}
for (const [what, input] of Object.entries(links)) more.push(compare(what, 'open', input, 2));

// Bad files kept for the unit tests, each to one of the verbs that read a recipe: either verdict will do, as long as it is one.
readdirSync(join(root, 'tests/data')).filter((entry) => entry.startsWith('bad_')).sort().forEach((name, i) =>
    more.push(compare(name, ['batch', 'label', 'sheet', 'link'][i % 4], readFileSync(join(root, 'tests/data', name)), null)));
await Promise.all(more);

for (const program of [[native], [process.execPath, wasm]]) {
    const missing = await said(program, 'batch', join(scratch, 'none'), '');
    const unknown = await said(program, 'dance', '-', '{}');
    for (const [what, run] of Object.entries({ missing, unknown })) {
        const fine = run.code === 2 && run.out.length === 0 && /^[^\n]+: [^\n]+\n$/.test(run.err);
        if (!fine) console.log(`${program.at(-1)}, ${what}: exit code ${run.code}, "${run.err}"`);
        if (fine) passed += 1;
        else failed += 1;
    }
}

rmSync(scratch, { recursive: true });
if (recipes.length === 0) {
    console.log('no preset recipe was found');
    failed += 1;
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
