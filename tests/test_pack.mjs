// node test_pack.mjs unpacker.wasm: the packer on a tiny shell: what is filled in, what is hashed, what is refused.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { mkdtempSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { ordered } from '../shell/pack_order.mjs';
import { split } from '../shell/pack_split.mjs';

const packer = join(dirname(fileURLToPath(import.meta.url)), '../shell/pack.mjs');
const unpacker = process.argv[2];
const scratch = mkdtempSync(join(tmpdir(), 'tarebench-pack-'));
const shell = join(scratch, 'shell');
mkdirSync(join(shell, 'icons'), { recursive: true });
const wasm = Buffer.from('0061736d01000000', 'hex');
const files = {
    'shell/index.html':
        '<!doctype html><head><!--CSP--><!--HOSTED--><!--STYLE--></head><body><!--UNPACKER--><!--BOOT--><!--PROGRAM--></body>',
    'shell/style.css': 'body{margin:0}',
    'shell/boot.js': 'const build = "@BUILD@";',
    'shell/service_worker.js': '// @BUILD@',
    'shell/manifest.webmanifest': '{}',
    'shell/icons/a.png': 'picture',
    'page.js': 'function createTarebench(){}',
    'page.wasm': wasm,
};

function pack(changes = {}, out = 'out') {
    for (const [name, text] of Object.entries({ ...files, ...changes })) writeFileSync(join(scratch, name), text);
    mkdirSync(join(scratch, out), { recursive: true });
    const run = spawnSync(process.execPath, [packer, '--shell', shell, '--js', join(scratch, 'page.js'), '--unpacker', unpacker, '--out', join(scratch, out)]);
    return { code: run.status, err: run.stderr.toString() };
}
const result = (name, out = 'out') => readFileSync(join(scratch, out, name), 'utf8');
// As boot.js does it, a few bytes and one function at a time.
const allUnpacked = ({ unpack }, size) => Array.from({ length: size }, (_, i) => i + 1).every((at) => unpack(at) === at);
function allJoined({ join }) {
    let left = 1;
    while (left > 0) left = join(1);
    return left === 0;
}
const unpackerOf = (code) => new WebAssembly.Instance(new WebAssembly.Module(code)).exports;
const unpacked = (part) => {
    const element = (id) => result('tarebench.html').match(new RegExp(`id="tarebench-${id}"([^>]*)>([^<]*)<`)).slice(1);
    const code = gunzipSync(Buffer.from(element('unpacker')[1], 'base64'));
    const its = unpackerOf(code), { memory, room, begin, begin_join } = its;
    const [sizes, program] = element('program');
    const [size, apart, script] = sizes.match(/data-sizes="(\d+) (\d+) (\d+)"/).slice(1).map(Number);
    const packed = Buffer.from(program, 'base64');
    const from = room(packed.length), between = room(apart + script), to = room(size);
    Buffer.from(memory.buffer).set(packed, from);
    assert.ok(begin(between, apart + script, from, packed.length) && allUnpacked(its, apart + script));
    assert.ok(begin_join(to, size, between, apart) && allJoined(its));
    return Buffer.from(part === 'wasm' ? memory.buffer.slice(to, to + size) : memory.buffer.slice(between + apart, between + apart + script));
};
function joined(parts, size) {
    const its = unpackerOf(readFileSync(unpacker)), { memory, room, begin_join } = its;
    const from = room(parts.length), to = room(size);
    Buffer.from(memory.buffer).set(parts, from);
    return begin_join(to, size, from, parts.length) !== 0 && allJoined(its) && Buffer.from(memory.buffer.slice(to, to + size));
}
// A module of `count` functions in two styles that take turns, each of which calls the one before it; all are exported and
// stand in the table, and `through` calls one of them by its place there.
function moduleOf(count, { more = [] } = {}) {
    const leb = (n) => (n > 127 ? [(n % 128) | 128, ...leb(Math.floor(n / 128))] : [n]);
    const list = (items) => [...leb(items.length), ...items.flat()];
    const text = (name) => list([...Buffer.from(name)].map((byte) => [byte]));
    const section = (id, bytes) => [id, ...leb(bytes.length), ...bytes];
    const body = (code) => { const all = [0, ...code, 0x0b]; return [...leb(all.length), ...all]; };
    const figure = (n) => [0x41, ...leb(n % 60)];
    const before = (i) => (i === 0 ? figure(1) : [0x10, ...leb(i)]); // the import is number 0
    const long = (i) => [...figure(i), ...before(i), 0x6a, ...figure(7), 0x6c, ...figure(3), 0x6a, ...figure(12), 0x73];
    const short = (i) => [...before(i), 0x02, 0x7f, ...figure(i), 0x0b, 0x6b, 0x42, 0x0b, 0xa7, 0x6a];
    const all = Array.from({ length: count }, (_, i) => i);
    return Buffer.from([
        0, 0x61, 0x73, 0x6d, 1, 0, 0, 0,
        ...section(1, list([[0x60, 0, 1, 0x7f], [0x60, 1, 0x7f, 1, 0x7f], [0x60, 0, 0]])),
        ...section(2, list([[...text('a'), ...text('b'), 0, 2]])),
        ...section(3, list([...all.map(() => [0]), [1]])),
        ...section(4, list([[0x70, 0, ...leb(count + 11)]])),
        ...section(7, list([...all.map((i) => [...text(`f${i}`), 0, ...leb(i + 1)]), [...text('through'), 0, ...leb(count + 1)]])),
        ...section(9, list([[0, 0x41, 11, 0x0b, ...list(all.map((i) => leb(i + 1)))]])),
        ...section(10, list([...all.map((i) => body((i % 2 ? long : short)(i))), body([0x20, 0, 0x11, 0, 0])])),
        ...more,
    ]);
}

const policyOf = (page) => page.match(/Content-Security-Policy" content="([^"]*)"/)[1];

const tests = {
    'functions in another order do the same, called, exported and from the table'() {
        const as = moduleOf(300), other = ordered(as);
        assert.ok(!other.equals(as));
        const [one, two] = [as, other].map((bytes) => new WebAssembly.Instance(new WebAssembly.Module(bytes), { a: { b() {} } }).exports);
        assert.deepEqual(Object.keys(two), Object.keys(one));
        for (let i = 0; i < 300; ++i) {
            assert.equal(two[`f${i}`](), one[`f${i}`]());
            assert.equal(two.through(i + 11), one.through(i + 11));
        }
    },
    'the same module always comes in the same order'() {
        assert.ok(ordered(moduleOf(200)).equals(ordered(moduleOf(200))));
    },
    'a module whose functions have names stays as it is, and so does one without functions'() {
        const named = moduleOf(100, { more: [0, 5, 4, ...Buffer.from('name')] });
        assert.equal(ordered(named), named);
        assert.equal(ordered(wasm), wasm);
    },
    'code that was taken apart is put together again, byte by byte'() {
        const as = moduleOf(300), parts = split(as);
        assert.equal(parts.readUInt32LE(0), 301);
        assert.deepEqual(joined(parts, as.length), as);
        const own = readFileSync(unpacker); // as compilers write it
        assert.ok(split(own).readUInt32LE(0) > 2);
        assert.deepEqual(joined(split(own), own.length), own);
    },
    'a module without code, or with instructions that are not known, stays in one piece'() {
        const vectors = moduleOf(3);
        vectors[vectors.lastIndexOf(0x11)] = 0xfd;
        for (const one of [wasm, vectors]) {
            assert.equal(split(one).readUInt32LE(0), 0);
            assert.deepEqual(joined(split(one), one.length), one);
        }
    },
    'parts that do not fit one another are not joined'() {
        const as = moduleOf(20), parts = split(as);
        assert.equal(joined(parts.subarray(0, parts.length - 1), as.length), false);
        assert.equal(joined(parts, as.length + 1), false);
        const fewer = Buffer.from(parts);
        fewer.writeUInt32LE(20, 0);
        assert.equal(joined(fewer, as.length), false);
    },
    'the payload unpacks to the wasm and the script that went in'() {
        assert.equal(pack().code, 0);
        assert.deepEqual(unpacked('wasm'), wasm);
        assert.equal(unpacked('glue').toString(), files['page.js']);
    },
    'of a damaged program less is unpacked than there was'() {
        const parts = [Buffer.alloc(5), Buffer.from('no stream of this kind')];
        parts[0].writeUInt32LE(1 << 16, 1);
        const { memory, room, begin, unpack } = unpackerOf(readFileSync(unpacker));
        const packed = Buffer.concat(parts);
        const from = room(packed.length), to = room(1000);
        Buffer.from(memory.buffer).set(packed, from);
        assert.ok(begin(to, 1000, from, packed.length));
        assert.equal(unpack(1000), 0);
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
    'letters outside ASCII are written so in scripts and style, and refused in the page itself'() {
        const spoken = { 'page.js': 'const createTarebench = () => "a\u2026b";', 'shell/style.css': 'p::after{content:"\u201c"}' };
        assert.equal(pack(spoken).code, 0);
        assert.doesNotMatch(result('tarebench.html'), /[^\0-\x7f]/);
        assert.match(result('tarebench.html'), /content:"\\201c *"/i);
        assert.match(unpacked('script').toString(), /a\\u2026b/);
        const run = pack({ 'shell/index.html': files['shell/index.html'].replace('<body>', '<body>\u2026') }, 'refused');
        assert.equal(run.code, 1);
        assert.match(run.err, /ASCII/);
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
