// What a PDF draws and where, in mm from the upper left corner of its page: enough of the format for the files that
// Chromium writes (each page's drawing in one stream, packed or not). Outlines only: words and pictures are not looked at.
import { inflateSync } from 'node:zlib';

const kMmAPoint = 25.4 / 72;

function objects(bytes) {
    const text = bytes.toString('latin1');
    const found = new Map();
    for (const { 1: number, index } of text.matchAll(/^(\d+) 0 obj\b/gm)) {
        const end = text.indexOf('endobj', index);
        const whole = text.slice(index, end);
        const start = whole.search(/stream\r?\n/);
        const head = start < 0 ? whole : whole.slice(0, start);
        let stream = '';
        if (start >= 0) {
            const from = index + start + /stream\r?\n/.exec(whole)[0].length;
            const length = Number(/\/Length (\d+)/.exec(head)[1]);
            const packed = bytes.subarray(from, from + length);
            stream = (head.includes('/FlateDecode') ? inflateSync(packed) : packed).toString('latin1');
        }
        found.set(Number(number), { head, stream });
    }
    return found;
}

const times = ([a, b, c, d, e, f], [A, B, C, D, E, F]) => [
    a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];

// The boxes around all paths that are painted: {x, y, width, height} in mm.
function painted(stream, height) {
    const boxes = [];
    const kept = [];
    let now = [1, 0, 0, 1, 0, 0];
    let pen = 1;
    let points = [];
    let numbers = [];
    const add = (x, y) => points.push([now[0] * x + now[2] * y + now[4], now[1] * x + now[3] * y + now[5]]);
    const paint = (drawn) => {
        if (points.length > 1) {
            const xs = points.map(([x]) => x * kMmAPoint), ys = points.map(([, y]) => (height - y) * kMmAPoint);
            const half = drawn ? pen * Math.hypot(now[0], now[1]) * kMmAPoint / 2 : 0; // of a line lies outside its path
            const [x, y] = [Math.min(...xs) - half, Math.min(...ys) - half];
            boxes.push({ x, y, width: Math.max(...xs) + half - x, height: Math.max(...ys) + half - y });
        }
        points = [];
    };
    // Texts in brackets hold anything; nothing of them is wanted.
    for (const word of stream.replace(/\((?:\\.|[^\\)])*\)|<[0-9a-fA-F\s]*>/g, ' ').split(/\s+/)) {
        if (/^[-+.\d]+$/.test(word)) {
            numbers.push(Number(word));
            continue;
        }
        const n = numbers;
        numbers = [];
        if (word === 'q') kept.push([now, pen]);
        else if (word === 'Q') [now, pen] = kept.pop() || [now, pen];
        else if (word === 'w') pen = n[0];
        else if (word === 'cm') now = times(n, now);
        else if (word === 'm' || word === 'l') add(n[0], n[1]);
        else if (word === 'c') add(n[4], n[5]);
        else if (word === 're') {
            add(n[0], n[1]);
            add(n[0] + n[2], n[1] + n[3]);
        } else if (['f', 'f*', 'F', 'S', 's', 'B', 'B*', 'b', 'b*'].includes(word)) paint(!/^f/i.test(word));
        else if (word === 'n') points = [];
    }
    return boxes;
}

// [{width, height, boxes}], a page after the other.
export function pages(bytes) {
    const all = objects(bytes);
    return [...all.values()].filter(({ head }) => /\/Type\s*\/Page\b(?!s)/.test(head)).map(({ head }) => {
        const [, , width, height] = /\/MediaBox\s*\[([^\]]*)\]/.exec(head)[1].trim().split(/\s+/).map(Number);
        const { stream } = all.get(Number(/\/Contents (\d+) 0 R/.exec(head)[1]));
        return { width: width * kMmAPoint, height: height * kMmAPoint, boxes: painted(stream, height) };
    });
}
