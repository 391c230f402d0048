// The packer on a tiny shell: what is filled in, what is hashed, what is refused. Plain node.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { mkdtempSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';

const packer = join(dirname(fileURLToPath(import.meta.url)), '../shell/pack.mjs');
const scratch = mkdtempSync(join(tmpdir(), 'tarebench-pack-'));
const shell = join(scratch, 'shell');
mkdirSync(join(shell, 'icons'), { recursive: true });
const wasm = Buffer.from('0061736d01000000', 'hex');
const files = {
    'shell/index.html':
        '<!doctype html><head><!--CSP--><!--HOSTED--><!--STYLE--></head><body><!--PROGRAM--><!--BOOT--></body>',
    'shell/style.css': 'body{margin:0}',
    'shell/boot.js': 'const build = "@BUILD@";',
    'shell/service_worker.js': '// @BUILD@',
    'shell/manifest.webmanifest': '{}',
    'shell/icons/a.png': 'picture',
    'page.js': 'function createTarebench() {}',
    'page.wasm': wasm,
};

function pack(changes = {}, out = 'out') {
    for (const [name, text] of Object.entries({ ...files, ...changes })) writeFileSync(join(scratch, name), text);
    mkdirSync(join(scratch, out), { recursive: true });
    const run = spawnSync(process.execPath, [packer, '--shell', shell, '--js', join(scratch, 'page.js'), '--out', join(scratch, out)]);
    return { code: run.status, err: run.stderr.toString() };
}
const result = (name, out = 'out') => readFileSync(join(scratch, out, name), 'utf8');
const unpacked = (part) => {
    const payload = result('tarebench.html').match(new RegExp(`id="tarebench-${part}"[^>]*>([^<]*)<`))[1];
    return gunzipSync(Buffer.from(payload, 'base64'));
};
const policyOf = (page) => page.match(/Content-Security-Policy" content="([^"]*)"/)[1];

const tests = {
    'the payload unpacks to the wasm and the script that went in'() {
        assert.equal(pack().code, 0);
        assert.deepEqual(unpacked('wasm'), wasm);
        assert.equal(unpacked('glue').toString(), files['page.js']);
    },
    'every script and style of the page is named in its policy by its hash, and nothing else'() {
        for (const name of ['tarebench.html', 'hosted/index.html']) {
            const page = result(name);
            const hashes = [...page.matchAll(/<(?:script|style)>([^]*?)<\/(?:script|style)>/g)].map(
                (found) => `sha256-${createHash('sha256').update(found[1]).digest('base64')}`,
            );
            assert.equal(hashes.length, 2);
            hashes.push(`sha256-${createHash('sha256').update(unpacked('glue')).digest('base64')}`);
            const named = [...policyOf(page).matchAll(/sha256-[^']*/g)].map((found) => found[0]);
            assert.deepEqual(named.sort(), hashes.sort());
            assert.ok(!/unsafe-inline|unsafe-eval'|https?:/.test(policyOf(page).replace("'wasm-unsafe-eval'", '')));
        }
    },
    'the single file may talk to nobody, the hosted copy to its own origin'() {
        assert.match(policyOf(result('tarebench.html')), /connect-src 'none'/);
        assert.match(policyOf(result('hosted/index.html')), /connect-src 'self'.*worker-src 'self'/);
        assert.ok(!result('tarebench.html').includes('rel="manifest"'));
        assert.ok(result('hosted/index.html').includes('rel="manifest"'));
    },
    'the hosted folder has all that the service worker can ask for'() {
        assert.deepEqual(readdirSync(join(scratch, 'out/hosted')).sort(), [
            'icons', 'index.html', 'manifest.webmanifest', 'service_worker.js', 'tarebench.html',
        ]);
        assert.equal(result('hosted/tarebench.html'), result('tarebench.html'));
    },
    'what the home screen is told is true: its pictures are there in the sizes that it names'() {
        const real = dirname(packer);
        const manifest = JSON.parse(readFileSync(join(real, 'manifest.webmanifest'), 'utf8'));
        assert.deepEqual([manifest.display, manifest.start_url, manifest.scope], ['standalone', './', './']);
        for (const { src, sizes, type } of manifest.icons) {
            const picture = readFileSync(join(real, src));  // PNG: width and height stand at bytes 16 and 20
            if (type === 'image/png') assert.equal(`${picture.readUInt32BE(16)}x${picture.readUInt32BE(20)}`, sizes);
        }
        assert.ok(manifest.icons.some((one) => one.purpose === 'maskable'));
        for (const file of manifest.icons.map((one) => one.src))
            assert.ok(readFileSync(join(real, 'service_worker.js'), 'utf8').includes(`'${file}'`), `${file} is kept without a network`);
    },
    'the same parts give the same bytes, other parts another build name'() {
        const build = () => result('hosted/service_worker.js');
        const first = [result('tarebench.html'), build()];
        assert.match(first[1], /^\/\/ [0-9a-f]{12}$/);
        pack();
        assert.deepEqual([result('tarebench.html'), build()], first);
        pack({ 'shell/style.css': 'body{margin:1px}' });
        assert.notEqual(build(), first[1]);
    },
    'a script that would end its own element is refused'() {
        const run = pack({ 'shell/boot.js': 'const text = "</script>";' }, 'refused');
        assert.equal(run.code, 1);
        assert.match(run.err, /boot/);
    },
    'a page without a place for the policy is refused'() {
        const run = pack({ 'shell/index.html': files['shell/index.html'].replace('<!--CSP-->', '') }, 'refused');
        assert.equal(run.code, 1);
        assert.match(run.err, /<!--CSP-->/);
    },
};

let failed = 0;
for (const [sentence, test] of Object.entries(tests)) {
    try {
        test();
    } catch (problem) {
        failed += 1;
        console.log(`${sentence}: ${problem.message}`);
    }
}
rmSync(scratch, { recursive: true });
console.log(`${Object.keys(tests).length - failed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
