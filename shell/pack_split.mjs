// A wasm module's code taken apart, so that it compresses better (by a sixteenth): the numbers of functions, of locals, the
// constants and the offsets each in a row of their own, and what remains of the instructions in another. Of a local stands
// there how many others of its function were used since it was. web/module_join.c
// puts them together again; the sizes of bodies are not kept, since it finds their ends. A module with instructions that
// wasm_code.mjs does not know stays in one piece, and so does one that no optimizer has written.
import { Reader, Unknown, kSections, number, walk } from './wasm_code.mjs';

const kMostLocals = 4096; // of a function: as many ranks as module_join.c has room for

const kRows = ['function', 'local', 'constant', 'offset'];

// How many functions there are, the size of each part (32 bits, little-endian), and the parts: what stands before the bodies,
// instructions, the four rows, what stands behind the bodies.
function joined(count, parts) {
    const head = Buffer.alloc(4 * (parts.length + 1));
    [count, ...parts.map((part) => part.length)].forEach((value, i) => head.writeUInt32LE(value, 4 * i));
    return Buffer.concat([head, ...parts]);
}

function takenApart(wasm) {
    const all = new Reader(wasm, 8);
    for (;;) {
        if (all.at >= wasm.length) throw new Unknown(); // there is no code
        const id = all.byte(), size = all.number();
        if (id === kSections.code) break;
        all.skip(size);
    }
    const count = all.number(), before = wasm.subarray(0, all.at);
    const rows = Object.fromEntries(['rest', ...kRows].map((kind) => [kind, []]));
    for (let left = count; left > 0; --left) {
        const told = all.at, size = all.number(), body = new Reader(wasm, all.at, all.at + size);
        if (all.at - told !== number(size).length) throw new Unknown(); // told in more bytes than it takes
        let kept = body.at;
        body.each(() => { body.number(); body.skip(1); });
        const lately = Array.from({ length: kMostLocals }, (_, i) => i);
        const rank = (local) => {
            const place = lately.indexOf(local);
            if (place < 0) throw new Unknown();
            lately.splice(place, 1);
            lately.unshift(local);
            return place;
        };
        walk(body, Object.fromEntries(kRows.map((kind) => [kind, () => {
            rows.rest.push(wasm.subarray(kept, body.at));
            kept = body.at;
            const value = body.number(); // constants have a sign, and stay as they are
            rows[kind].push(kind === 'local' ? Buffer.from(number(rank(value))) : wasm.subarray(kept, body.at));
            kept = body.at;
        }])));
        rows.rest.push(wasm.subarray(kept, body.end));
        all.skip(size);
    }
    return joined(count, [before, ...Object.values(rows).map((row) => Buffer.concat(row)), wasm.subarray(all.at)]);
}

export function split(wasm) {
    try {
        return takenApart(wasm);
    } catch (error) {
        if (error instanceof Unknown) return joined(0, [wasm, ...Array.from({ length: kRows.length + 2 }, () => Buffer.alloc(0))]);
        throw error;
    }
}
