// The functions of a wasm module in another order, so that it compresses better: what compresses the page looks back 32 kB
// and no further, and functions that were made alike (of one template, for one kind of screen) lie farther apart than that.
// Each is followed by the one that is most like what stands in that reach. The module does the same as before: what has a
// function's number in it (calls, exports, the table) is written anew. Instructions are those of WebAssembly 2.0 without
// vectors; a module that holds any other stays as it is, and so does one whose functions have names, as it is there to be
// looked into.
const kSections = { import: 2, function: 3, export: 7, start: 8, element: 9, code: 10 };
const kGram = 6; // bytes; as many alike make functions alike
const kSight = 28000; // bytes; from farther away hardly anything is taken
const kHead = 200; // bytes that a function counts for beside its own, or the shortest would all come first
const kCommon = 40; // what more functions than this have tells nothing
const kStay = 64; // called from everywhere, these have the shortest numbers

class Unknown extends Error {}

class Reader {
    constructor(bytes, at = 0, end = bytes.length) {
        Object.assign(this, { bytes, at, end });
    }
    byte() { return this.bytes[this.at++]; }
    skip(count) { this.at += count; }
    number() {
        let value = 0, shift = 1, byte;
        do {
            byte = this.byte();
            value += (byte & 127) * shift;
            shift *= 128;
        } while (byte & 128);
        return value;
    }
    each(deed) { for (let left = this.number(); left > 0; --left) deed(); }
    name() { this.skip(this.number()); }
    limits() { if (this.byte() & 1) this.number(); this.number(); }
}

function number(value) {
    const bytes = [];
    for (; value > 127; value = Math.floor(value / 128)) bytes.push((value % 128) | 128);
    return [...bytes, value];
}

// Calls `of` with the place of each function's number in a body's instructions.
function walk(code, of) {
    const numbers = (count) => { for (; count > 0; --count) code.number(); };
    while (code.at < code.end) {
        const what = code.byte();
        if (what === 0x10 || what === 0xd2) of(code);
        else if (what >= 0x02 && what <= 0x04) numbers(1); // blocks: their type
        else if (what === 0x0c || what === 0x0d || (what >= 0x20 && what <= 0x26) || what === 0x41 || what === 0x42) numbers(1);
        else if (what === 0x0e) numbers(code.number() + 1);
        else if (what === 0x11 || (what >= 0x28 && what <= 0x3e)) numbers(2);
        else if (what === 0x1c) numbers(code.number());
        else if (what === 0x3f || what === 0x40 || what === 0xd0) code.skip(1);
        else if (what === 0x43) code.skip(4);
        else if (what === 0x44) code.skip(8);
        else if (what === 0xfc) {
            const more = code.number();
            if (more > 17) throw new Unknown();
            numbers([8, 10, 12, 14].includes(more) ? 2 : more > 7 ? 1 : 0);
        } else if (!(what <= 0x01 || what === 0x05 || what === 0x0b || what === 0x0f || what === 0x1a || what === 0x1b
            || (what >= 0x45 && what <= 0xc4) || what === 0xd1)) throw new Unknown();
    }
}

// A body's instructions begin after its local variables.
function instructions(body) {
    const code = new Reader(body);
    code.each(() => { code.number(); code.skip(1); });
    return code;
}

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
    const sections = [];
    for (const all = new Reader(wasm, 8); all.at < wasm.length;) {
        const id = all.byte(), size = all.number();
        sections.push({ id, bytes: wasm.subarray(all.at, all.at + size) });
        all.skip(size);
    }
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
        const body = rewritten(bodies[old], (of) => walk(instructions(bodies[old]), of));
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
