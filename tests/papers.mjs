// node tests/papers.mjs: the papers in tests/data (test_papers.cpp holds them against what the engine makes) before a validator
// of HTML that is not ours (html-validate, its recommended rules and its reading of the standard), and that nothing in them runs.
// Last line "N passed, N failed".
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { HtmlValidate } from 'html-validate';

const validator = new HtmlValidate({
    extends: ['html-validate:standard', 'html-validate:a11y'],
    rules: {
        // Sizes of labels are their own; a paper is one file.
        'no-inline-style': 'off',
        // Twelve handouts in one print are twelve times the same paper.
        'heading-level': ['error', { allowMultipleH1: true }],
        'no-dup-id': 'error',
        'element-required-content': 'error',
        // Taste: how entities, self-closing and spaces are written.
        'no-trailing-whitespace': 'off',
        'doctype-style': 'off',
    },
});
const kRuns = /<script|<iframe|<object|<embed|<link|<meta http-equiv| on[a-z]+=|javascript:| src=|@import|url\(/i;

const data = join(fileURLToPath(import.meta.url), '../data');
let passed = 0;
let failed = 0;
async function look(what, html) {
    const report = await validator.validateString(html);
    const faults = report.results.flatMap(({ messages }) => messages.map((one) => `${one.line}:${one.column} ${one.ruleId}: ${one.message}`));
    // Text is escaped, so that what looks like markup is some.
    const runs = kRuns.exec(html.replace(/>[^<]*</g, '><'));
    if (runs) faults.push(`holds ${runs[0]}`);
    if (faults.length === 0) passed += 1;
    else failed += 1;
    for (const fault of faults) console.log(`${what}: ${fault}`);
}

for (const file of readdirSync(join(data, 'papers')).sort())
    for (const part of readFileSync(join(data, 'papers', file), 'utf8').split(/^==== /m).slice(1)) {
        const end = part.indexOf('\n');
        await look(`${file}, ${part.slice(0, end)}`, part.slice(end + 1));
    }
for (const file of readdirSync(data).filter((one) => one.endsWith('.html')).sort())
    await look(file, readFileSync(join(data, file), 'utf8'));
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 40 ? 0 : 1);
