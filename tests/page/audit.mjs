// What axe-core (MPL-2.0, from the registry) finds wrong with the page as assistive technology gets it, against the rules
// of WCAG 2.2 A and AA and its own best practices. One rule is left out: it looks at the colours of the mirror's letters,
// which are not what is seen; tests/test_theme.cpp does that for what is drawn.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const kRules = { 'color-contrast': { enabled: false } };

// {violations: [sentence], passed: how many rules looked at something and found it right, version}
export async function audit(page) {
    if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(`(() => { ${source}\n})()`);
    return page.evaluate(async (rules) => {
        const { violations, passes } = await axe.run(document, { resultTypes: ['violations'], rules });
        return {
            violations: violations.flatMap(({ id, help, nodes }) =>
                nodes.map(({ html }) => `${id}: ${help}: ${html.replace(/\s+/g, ' ').slice(0, 200)}`)),
            passed: passes.length,
            version: axe.version,
        };
    }, kRules);
}
