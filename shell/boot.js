// Runs before the compiled program: keeps the page's own source for "Save this page", unpacks the program, and says
// in plain words what is wrong when it cannot start or has stopped. Leans on index.html and style.css for all texts: the
// class of <html> chooses which are seen. Offers globalThis.tarebench, to which lib_frames.js adds what tests ask.
'use strict';
(() => {
    const root = document.documentElement;
    const prefix = 'tarebench:';
    const slice = 32768; // bytes that are unpacked in one call
    const few = 64; // functions that are joined in one call
    let unpacking; // what does it

    const tarebench = {
        build: '@BUILD@',
        hosted: false,
        page: () => '', // the source of this page
        crashed: false,
        errors: [], // of the shell itself; tests want none
        started() {
            if (!tarebench.crashed) root.className = 'running';
        },
        // A fault inside the program cannot be gone on from; one in the shell around it usually can.
        look(error) {
            const ofProgram = typeof WebAssembly === 'object' && error instanceof WebAssembly.RuntimeError;
            if (ofProgram || error instanceof RangeError) tarebench.fail('crash', error);
            else tarebench.errors.push(String((error && error.stack) || error));
        },
        // what: wasm, drawing or crash
        fail(what, error) {
            if (tarebench.crashed) return;
            tarebench.crashed = true;
            if (error) tarebench.errors.push(String(error.stack || error));
            root.className = what === 'crash' ? 'crashed' : `without-${what}`;
            root.removeAttribute('style');
            try {
                rescue(document.getElementById('rescue'));
            } catch (refused) {
                tarebench.errors.push(String(refused));
            }
        },
    };
    globalThis.tarebench = tarebench;
    root.className = 'starting';

    // What an earlier run left behind, if this file was saved by the browser with everything that was on the page.
    function clean() {
        root.removeAttribute('style');
        for (const id of ['mirror', 'abouts', 'rescue']) document.getElementById(id).replaceChildren();
        for (const left of document.querySelectorAll('.aside')) left.remove();
        const canvas = document.getElementById('canvas');
        for (const name of ['width', 'height', 'style']) canvas.removeAttribute(name);
    }

    // The page as it was sent, byte for byte: no class on <html>, nothing made by scripts. A parser moves the last line's
    // end into the body and reads what stands for letters outside ASCII; index.html is written so that this is all it
    // changes. Written down only when it is asked for: it is long.
    function source(sent) {
        sent.removeAttribute('class');
        const text = `<!doctype html>\n${sent.outerHTML}`.replace(/[^\0-\x7f]/g, (one) => `&#${one.charCodeAt(0)};`);
        const end = '\n\n</body></html>';
        return text.endsWith(end) ? `${text.slice(0, -end.length)}\n</body></html>\n` : text;
    }

    // What the store holds, or nothing where the browser refuses it.
    function stored() {
        const records = {};
        try {
            for (let i = 0; i < localStorage.length; ++i) {
                const key = localStorage.key(i);
                if (key.startsWith(prefix)) records[key] = localStorage.getItem(key);
            }
        } catch (refused) {
            return null;
        }
        return records;
    }

    // The newest readable one of each recipe's two turns. Whether a record is whole is left to the program, which reads
    // the file: here it is only shown.
    function recipesOf(records) {
        const newest = new Map();
        for (const [key, text] of Object.entries(records)) {
            const parts = /^(\d+) [0-9a-f]{8} ([^]*)$/.exec(text);
            if (!key.startsWith(`${prefix}recipe:`) || !parts) continue;
            const base = key.slice(0, -2);
            const saves = Number(parts[1]);
            if (newest.has(base) && newest.get(base).saves >= saves) continue;
            try {
                newest.set(base, { saves, kept: JSON.parse(parts[2]) });
            } catch (damaged) {
                // The other turn may be whole.
            }
        }
        return [...newest.values()].map((one) => one.kept).filter((kept) => kept && kept.recipe)
            .sort((one, other) => String(one.recipe.title).localeCompare(String(other.recipe.title)));
    }

    // A recipe as lines of text. The names of ingredients are inside the program: without it, their ids are shown.
    function lettered(recipe) {
        const list = (value) => (Array.isArray(value) ? value : []);
        const lines = list(recipe.lines).map((line) => {
            const name = line.name || String(line.ingredient || '?').replace(/_/g, ' ');
            return `${line.rest ? 'rest' : `${line.percent} %`}  ${name}${line.phase ? `  (phase ${line.phase})` : ''}`;
        });
        const steps = list(recipe.steps).map((step, i) => `${i + 1}. ${step.text}`);
        return [lines.join('\n'), steps.join('\n'), recipe.notes || ''].filter(Boolean).join('\n\n');
    }

    // Without the program: the recipes as plain text, and everything as one file, which the program reads again.
    function rescue(place) {
        place.replaceChildren();
        const add = (kind, words) => {
            const made = document.createElement(kind);
            made.textContent = words;
            made.dir = 'auto';
            place.append(made);
            return made;
        };
        const button = (words, press) => {
            const made = add('button', words);
            made.type = 'button';
            made.addEventListener('click', press);
        };
        button('Load again', () => location.reload());
        const records = stored();
        if (!records) {
            add('p', 'This browser keeps nothing for this page (private window or storage switched off), so there is nothing to save here.');
            return;
        }
        if (Object.keys(records).length === 0) {
            add('p', 'No recipes are kept in this browser for this page.');
            return;
        }
        button('Keep everything as a file', () => {
            const text = JSON.stringify({ tarebench_records: 1, records }, null, 1);
            const link = document.createElement('a');
            link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
            link.download = 'tarebench-records.json';
            link.click();
        });
        add('p', 'Open that file in a browser where Tarebench runs (New recipe, From a file) and everything comes back.');
        const recipes = recipesOf(records);
        if (recipes.length === 0) return;
        add('h2', 'Kept on this device');
        for (const { recipe, binned } of recipes) {
            add('h3', `${recipe.title || 'Untitled recipe'}${binned ? ' (in the bin)' : ''}`);
            add('pre', lettered(recipe));
        }
    }

    function packed(part) {
        const text = document.getElementById(`tarebench-${part}`).textContent;
        return Uint8Array.fromBase64 ? Uint8Array.fromBase64(text) : Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    }

    async function unpacker() {
        const bytes = new Blob([packed('unpacker')]).stream().pipeThrough(new DecompressionStream('gzip'));
        return (await WebAssembly.instantiate(await new Response(bytes).arrayBuffer())).instance.exports;
    }

    // The program's parts, wasm and script.
    async function unpacked() {
        const { memory, room, begin, unpack, begin_join, join } = await unpacking;
        const [size, apart, script] = document.getElementById('tarebench-program').dataset.sizes.split(' ').map(Number);
        const program = packed('program'), whole = apart + script;
        const from = room(program.length), between = room(whole), to = room(size);
        if (!from || !between || !to) throw new RangeError('no memory to unpack the program');
        new Uint8Array(memory.buffer, from).set(program);
        let good = begin(between, whole, from, program.length), left = 1;
        for (let at = 0; good && at < whole; good = unpack(at) === at) at = Math.min(at + slice, whole);
        good = good && begin_join(to, size, between, apart);
        while (good && left > 0) left = join(few);
        if (!good || left !== 0) throw new Error('the program is damaged');
        return [new Uint8Array(memory.buffer, to, size), new Uint8Array(memory.buffer, between + apart, script)];
    }

    // The page's policy knows the script by its hash, wherever it comes from.
    function runGlue(bytes) {
        const script = document.createElement('script');
        script.textContent = new TextDecoder().decode(bytes);
        document.head.append(script);
        script.remove();
    }

    async function run() {
        const [wasm, glue] = await unpacked();
        const compiling = WebAssembly.compile(wasm); // beside the script
        runGlue(glue);
        await createTarebench({
            instantiateWasm(imports, done) {
                compiling.then(async (module) => done(await WebAssembly.instantiate(module, imports), module))
                    .catch((error) => tarebench.fail('wasm', error));
                return {};
            },
            onAbort: (why) => tarebench.fail('crash', why),
            print: (text) => console.log(text),
            printErr: (text) => console.warn(text),
        });
    }

    function start() {
        clean();
        const sent = root.cloneNode(true);
        tarebench.page = () => source(sent);
        tarebench.hosted = /^https?:$/.test(location.protocol) && document.querySelector('link[rel=manifest]') !== null;
        if (!unpacking) {
            tarebench.fail('wasm');
            return;
        }
        run().catch((error) => tarebench.fail(error instanceof WebAssembly.CompileError ? 'wasm' : 'crash', error));
    }

    addEventListener('error', (event) => tarebench.look(event.error ?? event.message));
    addEventListener('unhandledrejection', (event) => tarebench.look(event.reason));
    addEventListener('securitypolicyviolation', (event) => {
        tarebench.errors.push(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });

    // At once: the program itself is still being read.
    if (typeof WebAssembly === 'object' && typeof DecompressionStream === 'function') {
        unpacking = unpacker();
        unpacking.catch(() => {}); // told by whoever waits for it
    }
    if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', start);
    else start();
})();
