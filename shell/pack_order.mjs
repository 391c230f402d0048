// The functions of a wasm module in another order, so that it compresses better (by a fortieth): each is followed by the one
// that is most like those right before it. The module does the same as before: what has a function's number in it (calls,
// exports, the table) is written anew. A module with instructions that wasm_code.mjs does not know stays as it is, and so does
// one whose functions have names, as it is there to be looked into.
import { Reader, Unknown, instructions, kSections, number, sectionsOf, walk } from './wasm_code.mjs';

const kGram = 6; // bytes; as many alike make functions alike
const kSight = 28000; // bytes; farther away functions count as not there
const kHead = 200; // bytes that a function counts for beside its own, or the shortest would all come first
const kCommon = 40; // what more functions than this have tells nothing
const kStay = 64; // called from everywhere, these have the shortest numbers

function marked(body, from) {
    let mark = 0;
    for (let i = from; i < from + kGram; ++i) mark = (Math.imul(mark ^ body[i], 0x9E3779B1) + (mark >>> 15)) | 0;
    return mark;
}

function byLikeness(bodies) {
    const grams = bodies.map((body) => {
        const all = new Set();
        for (let i = 0; i + kGram <= body.length; ++i) all.add(marked(body, i));
        return all;
    });
    const having = new Map();
    grams.forEach((all, i) => {
        for (const gram of all) {
            if (!having.has(gram)) having.set(gram, []);
            having.get(gram).push(i);
        }
    });
    // How many grams of each function still to be placed stand in the last kSight bytes.
    const order = [], placed = new Uint8Array(bodies.length), shared = new Int32Array(bodies.length), seen = new Map();
    const look = (i, step) => {
        for (const gram of grams[i]) {
            const times = (seen.get(gram) || 0) + step;
            seen.set(gram, times);
            const others = having.get(gram);
            if (times !== (step > 0 ? 1 : 0) || others.length > kCommon) continue;
            for (const other of others) shared[other] += step;
        }
    };
    let sight = 0, last = 0;
    while (order.length < bodies.length) {
        let best = -1, likeness = -1;
        for (let i = 0; i < bodies.length && likeness < Infinity; ++i) {
            if (placed[i]) continue;
            const of = order.length < kStay ? Infinity : shared[i] / (kHead + bodies[i].length);
            if (of > likeness) [best, likeness] = [i, of];
        }
        placed[best] = 1;
        order.push(best);
        look(best, 1);
        for (sight += bodies[best].length; sight > kSight; sight -= bodies[order[last++]].length) look(order[last], -1);
    }
    return order;
}

function reordered(wasm) {
    const sections = sectionsOf(wasm);
    const section = (id) => sections.find((one) => one.id === id);
    for (const name of ['import', 'function', 'code']) if (!section(kSections[name])) throw new Unknown();
    for (const { id, bytes } of sections) {
        const custom = new Reader(bytes);
        if (id === 0 && bytes.subarray(1, 1 + custom.number()).toString() === 'name') throw new Unknown();
    }
    let imported = 0;
    const imports = new Reader(section(kSections.import).bytes);
    imports.each(() => {
        imports.name();
        imports.name();
        const kind = imports.byte();
        if (kind === 0) { ++imported; imports.number(); }
        else if (kind === 1) { imports.skip(1); imports.limits(); }
        else if (kind === 2) imports.limits();
        else imports.skip(2);
    });
    const types = [], bodies = [];
    const listed = new Reader(section(kSections.function).bytes);
    listed.each(() => types.push(listed.number()));
    const codes = new Reader(section(kSections.code).bytes);
    codes.each(() => {
        const size = codes.number();
        bodies.push(codes.bytes.subarray(codes.at, codes.at + size));
        codes.skip(size);
    });

    const order = byLikeness(bodies);
    const numbers = new Map(order.map((old, place) => [imported + old, imported + place]));
    const renumbered = (old) => numbers.get(old) ?? old;
    // The bytes with each function's number, of which `visit` tells the place, as the new one.
    const rewritten = (bytes, visit) => {
        const out = [];
        let kept = 0;
        visit((reader) => {
            out.push(bytes.subarray(kept, reader.at), Buffer.from(number(renumbered(reader.number()))));
            kept = reader.at;
        });
        return Buffer.concat([...out, bytes.subarray(kept)]);
    };
    const replace = (id, visit) => {
        const found = section(id);
        if (found) found.bytes = rewritten(found.bytes, (of) => visit(new Reader(found.bytes), of));
    };
    replace(kSections.export, (exports, of) => exports.each(() => {
        exports.name();
        if (exports.byte() === 0) of(exports);
        else exports.number();
    }));
    replace(kSections.start, (start, of) => of(start));
    replace(kSections.element, (elements, of) => elements.each(() => {
        if (elements.number() !== 0) throw new Unknown();
        if (elements.byte() !== 0x41) throw new Unknown(); // from this place in the table on
        elements.number();
        elements.skip(1);
        elements.each(() => of(elements));
    }));
    const code = order.map((old) => {
        const body = rewritten(bodies[old], (of) => walk(instructions(bodies[old]), { function: of }));
        return Buffer.concat([Buffer.from(number(body.length)), body]);
    });
    section(kSections.code).bytes = Buffer.concat([Buffer.from(number(order.length)), ...code]);
    section(kSections.function).bytes = Buffer.from([...number(order.length), ...order.flatMap((old) => number(types[old]))]);
    return Buffer.concat([wasm.subarray(0, 8),
        ...sections.map(({ id, bytes }) => Buffer.concat([Buffer.from([id, ...number(bytes.length)]), bytes]))]);
}

export function ordered(wasm) {
    try {
        return reordered(wasm);
    } catch (error) {
        if (error instanceof Unknown) return wasm;
        throw error;
    }
}
