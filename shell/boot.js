// Runs before the compiled program: keeps the page's own source for "Save this page", unpacks the program, and says
// in plain words what is wrong when it cannot start or has stopped. Leans on index.html and style.css for all texts: the
// class of <html> chooses which are seen. Offers globalThis.tarebench, to which lib_frames.js adds what tests ask.
'use strict';
(() => {
    const root = document.documentElement;
    const prefix = 'tarebench:';

    const tarebench = {
        build: '@BUILD@',
        hosted: false,
        page: '', // the source of this page
        crashed: false,
        errors: [], // of the shell itself; tests want none
        started() {
            if (!tarebench.crashed) root.className = 'running';
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
    // end into the body; index.html is written so that this is all it changes.
    function source() {
        root.removeAttribute('class');
        const text = `<!doctype html>\n${root.outerHTML}`.replace(/\n\n<\/body><\/html>$/, '\n</body></html>\n');
        root.className = 'starting';
        return text;
    }

    // Without the program: titles as plain text, and everything as one file, which the program reads again.
    function rescue(place) {
        const records = {};
        for (let i = 0; i < localStorage.length; ++i) {
            const key = localStorage.key(i);
            if (key.startsWith(prefix)) records[key] = localStorage.getItem(key);
        }
        place.replaceChildren();
        const button = (words, press) => {
            const made = document.createElement('button');
            made.type = 'button';
            made.textContent = words;
            made.addEventListener('click', press);
            place.append(made);
        };
        button('Load again', () => location.reload());
        if (Object.keys(records).length === 0) return;
        button('Keep everything as a file', () => {
            const text = JSON.stringify({ tarebench_records: 1, records }, null, 1);
            const link = document.createElement('a');
            link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
            link.download = 'tarebench-records.json';
            link.click();
        });
        const titles = new Set();
        for (const text of Object.values(records)) {
            for (const [, quoted] of text.matchAll(/"title"\s*:\s*("(?:[^"\\]|\\.)*")/g)) {
                try {
                    if (JSON.parse(quoted)) titles.add(JSON.parse(quoted));
                } catch {
                    // A damaged record may hold half a title.
                }
            }
        }
        if (titles.size === 0) return;
        const heading = document.createElement('h2');
        heading.textContent = 'Kept on this device';
        const list = document.createElement('ul');
        for (const title of [...titles].sort()) {
            const item = document.createElement('li');
            item.textContent = title;
            list.append(item);
        }
        place.append(heading, list);
    }

    function unpacked() {
        const text = document.getElementById('tarebench-wasm').textContent.trim();
        const bytes = Uint8Array.fromBase64 ? Uint8Array.fromBase64(text)
            : Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
        const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
        return new Response(stream, { headers: { 'Content-Type': 'application/wasm' } });
    }

    async function instantiate(imports) {
        if (WebAssembly.instantiateStreaming) return WebAssembly.instantiateStreaming(unpacked(), imports);
        return WebAssembly.instantiate(await unpacked().arrayBuffer(), imports);
    }

    function start() {
        clean();
        tarebench.page = source();
        tarebench.hosted = /^https?:$/.test(location.protocol) && document.querySelector('link[rel=manifest]') !== null;
        if (typeof WebAssembly !== 'object' || typeof DecompressionStream !== 'function' || typeof ResizeObserver !== 'function') {
            tarebench.fail('wasm');
            return;
        }
        createTarebench({
            instantiateWasm(imports, done) {
                instantiate(imports).then(({ instance, module }) => done(instance, module), (error) => tarebench.fail('wasm', error));
                return {};
            },
            onAbort: (why) => tarebench.fail('crash', why),
            print: (text) => console.log(text),
            printErr: (text) => console.warn(text),
        }).catch((error) => tarebench.fail('crash', error));
    }

    // A fault inside the program cannot be gone on from; one in the shell around it usually can.
    const look = (error) => {
        if (error instanceof WebAssembly.RuntimeError || error instanceof RangeError) tarebench.fail('crash', error);
        else tarebench.errors.push(String((error && error.stack) || error));
    };
    addEventListener('error', (event) => look(event.error ?? event.message));
    addEventListener('unhandledrejection', (event) => look(event.reason));
    addEventListener('securitypolicyviolation', (event) => {
        tarebench.errors.push(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });

    if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', start);
    else start();
})();
