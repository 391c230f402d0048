// Letters of the browser's own: the native field is set in the canvas's font, and a line that has letters beyond that font
// is drawn here, whole, on a canvas of its own, from which it becomes a texture. Nothing is made before the first such line.
mergeInto(LibraryManager.library, {
    $Letters__deps: ['$Arrivals'],
    $Letters: {
        most: 4096, // pixels; a larger texture fails on some phones
        pen: null,
        words: null,
        line: null, // the one laid last: { text, font, direction, colour, left, top }

        font: function (text, size, weight) {
            // A word in letters of two fonts looks torn: where Latin ones are missing, all are the system's.
            const torn = /[\u0180-\u024f\u0300-\u036f\u1e00-\u1eff]/.test(text);
            return weight + ' ' + size + 'px ' + (torn ? '' : 'Tarebench, ') + 'system-ui, sans-serif';
        },
        // A canvas forgets all of this when its size is set.
        set: function (font, direction) {
            Letters.pen = Letters.pen || document.createElement('canvas').getContext('2d');
            Letters.pen.font = font;
            Letters.pen.direction = direction;
            Letters.pen.textAlign = 'left';
            Letters.pen.textBaseline = 'alphabetic';
            return Letters.pen;
        },
    },

    shell_page_font__deps: ['$Letters'],
    shell_page_font: function (at, size, weight) {
        const changed = function () { if (Letters.pen) Arrivals.push('letters_changed'); };
        const add = function () {
            const face = new FontFace('Tarebench', HEAPU8.slice(at, at + size).buffer, { weight: String(weight) });
            document.fonts.add(face);
            if (face.status === 'loaded') return true; // most browsers have it ready at once
            face.load().then(changed, function () { document.fonts.delete(face); /* the system's letters do too */ });
            return false;
        };
        if (Letters.pen) add();
        else setTimeout(function () { if (add()) changed(); }); // the first picture does not wait for it
    },

    // Thai, Lao, Khmer and Burmese write no spaces between words; the browser has their dictionaries.
    shell_word_ends__deps: ['$Letters'],
    shell_word_ends: function (text, ends, most) {
        if (!Intl.Segmenter) return 0;
        Letters.words = Letters.words || new Intl.Segmenter('th', { granularity: 'word' });
        let bytes = 0, found = 0;
        for (const word of Letters.words.segment(UTF8ToString(text))) {
            if (found === most) break;
            bytes += new TextEncoder().encode(word.segment).length;
            HEAP32[(ends >> 2) + found] = bytes;
            found += 1;
        }
        return found;
    },

    shell_measure_line__deps: ['$Letters'],
    shell_measure_line: function (text, size, weight, rightToLeft) {
        const words = UTF8ToString(text);
        return Letters.set(Letters.font(words, size, weight), rightToLeft ? 'rtl' : 'ltr').measureText(words).width;
    },

    // Works out the place a line takes around its beginning; false when there is nothing to be seen.
    shell_lay_line__deps: ['$Letters'],
    shell_lay_line: function (text, size, weight, rightToLeft, rgb, box) {
        const words = UTF8ToString(text);
        const direction = rightToLeft ? 'rtl' : 'ltr';
        const font = Letters.font(words, size, weight);
        const m = Letters.set(font, direction).measureText(words);
        const left = Math.floor(-m.actualBoundingBoxLeft) - 1, top = Math.floor(-m.actualBoundingBoxAscent) - 1;
        const wide = Math.ceil(m.actualBoundingBoxRight) + 1 - left, high = Math.ceil(m.actualBoundingBoxDescent) + 1 - top;
        if (!(wide > 2 && high > 2)) return 0;
        const colour = '#' + (rgb >>> 0).toString(16).padStart(6, '0');
        const place = [left, top, Math.min(wide, Letters.most), Math.min(high, Letters.most)];
        for (let i = 0; i < 4; ++i) HEAP32[(box >> 2) + i] = place[i];
        Letters.line = { words, font, direction, colour, left, top, wide: place[2], high: place[3] };
        return 1;
    },

    // Into the texture that is bound.
    shell_paint_line__deps: ['$Letters'],
    shell_paint_line: function () {
        const line = Letters.line;
        const canvas = Letters.pen.canvas;
        canvas.width = line.wide;
        canvas.height = line.high;
        const pen = Letters.set(line.font, line.direction);
        pen.fillStyle = line.colour;
        pen.fillText(line.words, -line.left, -line.top);
        GLctx.texImage2D(0x0DE1, 0, 0x1908, 0x1908, 0x1401, canvas); // TEXTURE_2D, RGBA, UNSIGNED_BYTE
    },
});
