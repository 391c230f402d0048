// node pack.mjs --shell shell --js tarebench_page.js --unpacker unpacker.wasm --out folder [--quick yes]
// Makes the one file, folder/tarebench.html, and the hosted copy of the same page, folder/hosted/.
// The program, wasm and script on end, goes in compressed by xz (LZMA in base64), with the unpacker (gzip) that boot.js runs
// first. Every script and style is named in the policy by its hash, the compressed one too, so nothing else can run. Except
// where it is to be quick, scripts and style are shortened by esbuild, and the wasm is brought into a shape that compresses
// better (pack_order.mjs, pack_split.mjs).
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { ordered } from './pack_order.mjs';
import { split } from './pack_split.mjs';

const options = {};
for (let i = 2; i < process.argv.length; i += 2) options[process.argv[i].replace(/^--/, '')] = process.argv[i + 1];
const { shell, js, unpacker, out } = options;
if (!shell || !js || !unpacker || !out) fail('usage: pack.mjs --shell FOLDER --js FILE --unpacker FILE --out FOLDER');

function fail(sentence) {
    console.error(`pack: ${sentence}`);
    process.exit(1);
}

const read = (name) => readFileSync(join(shell, name), 'utf8');
const sha256 = (text, encoding) => createHash('sha256').update(text).digest(encoding);

const parts = {
    page: read('index.html'),
    style: read('style.css'),
    boot: read('boot.js'),
    worker: read('service_worker.js'),
    manifest: read('manifest.webmanifest'),
    glue: readFileSync(js, 'utf8'),
};
const wasm = readFileSync(js.replace(/\.js$/, '.wasm'));

// One name for this very build: same parts, same name.
const hash = createHash('sha256');
for (const part of [...Object.values(parts), wasm, readFileSync(unpacker)]) hash.update(sha256(part));
const build = hash.digest('hex').slice(0, 12);
for (const name of Object.keys(parts)) parts[name] = parts[name].replaceAll('@BUILD@', build);

for (const name of ['boot', 'glue'])
    if (/<\/script|<!--/i.test(parts[name])) fail(`the script ${name} holds text that would end it inside a page`);
if (/<\/style/i.test(parts.style)) fail('style.css holds text that would end it inside a page');

// Shorter: without the names, blanks and remarks that only a reader needs.
function minified(text, loader) {
    const run = spawnSync('esbuild', ['--minify', '--target=es2019', `--loader=${loader}`], { input: text, maxBuffer: 1 << 26 });
    if (run.status !== 0) fail(`esbuild could not shorten the ${loader}: ${run.error ? run.error.message : run.stderr}`);
    return run.stdout.toString().trim();
}
if (!options.quick) {
    parts.boot = minified(parts.boot, 'js');
    parts.glue = minified(parts.glue, 'js');
    parts.style = minified(parts.style, 'css');
}
const scripts = [parts.boot, parts.glue];

// Five bytes of properties, as the unpacker wants them, then xz's raw stream. How a byte is foretold was tried out: by the
// three high bits of the one before it, and not by where it stands.
const kHigh = 3;
const kDictionary = 1 << 26;
function squeezed(bytes) {
    const run = spawnSync('xz', ['--format=raw', `--lzma1=preset=${options.quick ? 1 : '9e,nice=273'},dict=64MiB,lc=${kHigh},lp=0,pb=0`],
        { input: bytes, maxBuffer: 1 << 26 });
    if (run.status !== 0) fail(`xz could not compress the program: ${run.error ? run.error.message : run.stderr}`);
    const properties = Buffer.alloc(5);
    properties.writeUInt8(kHigh, 0);
    properties.writeUInt32LE(kDictionary, 1);
    return Buffer.concat([properties, run.stdout]);
}
const payload = (name, bytes, sizes = '') =>
    `<script type="text/plain" id="tarebench-${name}"${sizes}>${bytes.toString('base64')}</script>`;
const module = options.quick ? wasm : ordered(wasm);
const programParts = [split(module), Buffer.from(parts.glue)];
// Bytes: the module, the same taken apart, the script.
const sizes = [module, ...programParts].map((one) => one.length);
const packed = squeezed(Buffer.concat(programParts));
const unpackerCode = readFileSync(unpacker);

// As boot.js does it, in one go.
function unpacked() {
    const { memory, room, begin, unpack, begin_join, join } = new WebAssembly.Instance(new WebAssembly.Module(unpackerCode)).exports;
    const [size, apart, script] = sizes;
    const from = room(packed.length), between = room(apart + script), to = room(size);
    Buffer.from(memory.buffer).set(packed, from);
    const whole = begin(between, apart + script, from, packed.length) && unpack(apart + script) === apart + script;
    return whole && begin_join(to, size, between, apart) && join(size) === 0 && Buffer.from(memory.buffer, to, size);
}
const again = unpacked();
if (!again || !again.equals(module)) fail('what was packed does not unpack to the same program');

function policy(hosted) {
    const own = hosted ? "'self'" : "'none'";
    return [
        "default-src 'none'",
        `script-src ${scripts.map((text) => `'sha256-${sha256(text, 'base64')}'`).join(' ')} 'wasm-unsafe-eval'`,
        `style-src 'sha256-${sha256(parts.style, 'base64')}'`,
        `img-src data: blob:${hosted ? " 'self'" : ''}`,
        `connect-src ${own}`,
        `manifest-src ${own}`,
        `worker-src ${own}`,
        "base-uri 'none'",
        "form-action 'none'",
    ].join('; ');
}

const installable = [
    '<link rel="manifest" href="manifest.webmanifest">',
    '<link rel="icon" href="icons/icon-192.png">',
    '<link rel="apple-touch-icon" href="icons/icon-180.png">',
].join('\n');

function page(hosted) {
    const filled = {
        CSP: `<meta http-equiv="Content-Security-Policy" content="${policy(hosted)}">`,
        HOSTED: hosted ? installable : '',
        STYLE: `<style>${parts.style}</style>`,
        UNPACKER: payload('unpacker', gzipSync(unpackerCode, { level: 9 })),
        BOOT: `<script>${parts.boot}</script>`,
        PROGRAM: payload('program', packed, ` data-sizes="${sizes.join(' ')}"`),
    };
    let text = parts.page;
    for (const [name, value] of Object.entries(filled)) {
        const pieces = text.split(`<!--${name}-->`);
        if (pieces.length !== 2) fail(`index.html must hold <!--${name}--> once, it is there ${pieces.length - 1} times`);
        text = pieces.join(value);
    }
    return text;
}

// A page of nothing but ASCII is read by the browsers three to five times quicker: a byte a letter, not two. Of 800 kB that shows.
const single = page(false);
if (/[^\0-\x7f]/.test(single)) fail('index.html, style.css and boot.js must be ASCII: outside of it write &#8220; or \\u201c');
const hostedFolder = join(out, 'hosted');
rmSync(hostedFolder, { recursive: true, force: true });
mkdirSync(hostedFolder, { recursive: true });
writeFileSync(join(hostedFolder, 'index.html'), page(true));
writeFileSync(join(hostedFolder, 'tarebench.html'), single);
writeFileSync(join(hostedFolder, 'service_worker.js'), parts.worker);
writeFileSync(join(hostedFolder, 'manifest.webmanifest'), parts.manifest);
if (existsSync(join(shell, 'icons'))) cpSync(join(shell, 'icons'), join(hostedFolder, 'icons'), { recursive: true });
writeFileSync(join(out, 'tarebench.html'), single);

const kb = (count) => `${Math.round(count / 1000)} kB`;
console.log(`tarebench.html ${kb(Buffer.byteLength(single))} (gzip ${kb(gzipSync(single).length)}), build ${build}`);
