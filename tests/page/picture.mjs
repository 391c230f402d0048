// Pictures of the page as pixels: just enough of PNG (8 bits, not interlaced) for what the browser writes.
import { inflateSync } from 'node:zlib';

export function decode(png) {
    let width, height, channels;
    const parts = [];
    for (let at = 8; at < png.length;) {
        const size = png.readUInt32BE(at);
        const kind = png.toString('latin1', at + 4, at + 8);
        const data = png.subarray(at + 8, at + 8 + size);
        if (kind === 'IHDR') {
            width = data.readUInt32BE(0);
            height = data.readUInt32BE(4);
            channels = { 2: 3, 6: 4 }[data[9]];
            if (data[8] !== 8 || !channels || data[12]) throw new Error('a kind of PNG that is not expected here');
        } else if (kind === 'IDAT') {
            parts.push(data);
        }
        at += size + 12;
    }
    const raw = inflateSync(Buffer.concat(parts));
    const row = width * channels;
    const out = Buffer.alloc(row * height);
    for (let y = 0; y < height; ++y) {
        const filter = raw[y * (row + 1)];
        for (let x = 0; x < row; ++x) {
            const left = x >= channels ? out[y * row + x - channels] : 0;
            const up = y > 0 ? out[(y - 1) * row + x] : 0;
            const corner = x >= channels && y > 0 ? out[(y - 1) * row + x - channels] : 0;
            const near = left + up - corner;
            const [a, b, c] = [Math.abs(near - left), Math.abs(near - up), Math.abs(near - corner)];
            const guess = [0, left, up, (left + up) >> 1, a <= b && a <= c ? left : b <= c ? up : corner][filter];
            out[y * row + x] = (raw[y * (row + 1) + 1 + x] + guess) & 255;
        }
    }
    const at = (x, y) => [...out.subarray(y * row + x * channels, y * row + x * channels + 3)];
    return { width, height, at };
}

// clip: {x, y, width, height} of the page
export async function picture(page, clip) {
    const whole = decode(await page.context().engine.picture(page));
    if (!clip) return whole;
    const scale = whole.width / (await page.evaluate(() => innerWidth));
    const [left, top, width, height] = [clip.x, clip.y, clip.width, clip.height].map((one) => Math.round(one * scale));
    return {
        width: Math.min(width, whole.width - left), height: Math.min(height, whole.height - top),
        at: (x, y) => whole.at(left + x, top + y),
    };
}

// Share of pixels that differ by more than a breath.
export function differing(a, b) {
    if (a.width !== b.width || a.height !== b.height) return 1;
    let count = 0;
    for (let y = 0; y < a.height; ++y)
        for (let x = 0; x < a.width; ++x)
            if (a.at(x, y).some((value, i) => Math.abs(value - b.at(x, y)[i]) > 24)) ++count;
    return count / (a.width * a.height);
}

// How many pixels have another colour than the commonest: an empty picture has next to none.
export function drawnShare(a) {
    const counts = new Map();
    for (let y = 0; y < a.height; ++y)
        for (let x = 0; x < a.width; ++x) counts.set(a.at(x, y).join(), (counts.get(a.at(x, y).join()) ?? 0) + 1);
    return 1 - Math.max(...counts.values()) / (a.width * a.height);
}

export const brightness = ([r, g, b]) => 0.2126 * r + 0.7152 * g + 0.0722 * b;
