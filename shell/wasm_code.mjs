// A wasm module's bytes, read: its sections, and of a function's body the numbers that instructions have with them.
// Instructions are those of WebAssembly 2.0 without vectors; any other is Unknown.
export const kSections = { import: 2, function: 3, export: 7, start: 8, element: 9, code: 10 };

export class Unknown extends Error {}

export class Reader {
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

// As LEB128, in as few bytes as it takes.
export function number(value) {
    const bytes = [];
    for (; value > 127; value = Math.floor(value / 128)) bytes.push((value % 128) | 128);
    return [...bytes, value];
}

// Each { id, bytes } in the order of the module.
export function sectionsOf(wasm) {
    const sections = [];
    for (const all = new Reader(wasm, 8); all.at < wasm.length;) {
        const id = all.byte(), size = all.number();
        sections.push({ id, bytes: wasm.subarray(all.at, all.at + size) });
        all.skip(size);
    }
    return sections;
}

// Goes through a body's instructions. `at` may have a function for each kind of number (`function`, `local`, `constant`,
// `offset`), called with the reader where such a number stands; it reads the number.
export function walk(code, at) {
    const numbers = (count) => { for (; count > 0; --count) code.number(); };
    const one = (kind) => { if (at[kind]) at[kind](code); else code.number(); };
    while (code.at < code.end) {
        const what = code.byte();
        if (what === 0x10 || what === 0xd2) one('function');
        else if (what >= 0x20 && what <= 0x22) one('local');
        else if (what === 0x41) one('constant');
        else if (what >= 0x28 && what <= 0x3e) { code.number(); one('offset'); }
        else if ((what >= 0x02 && what <= 0x04) || what === 0x0c || what === 0x0d) numbers(1);
        else if ((what >= 0x23 && what <= 0x26) || what === 0x42) numbers(1);
        else if (what === 0x0e) numbers(code.number() + 1);
        else if (what === 0x11) numbers(2);
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
export function instructions(body) {
    const code = new Reader(body);
    code.each(() => { code.number(); code.skip(1); });
    return code;
}
