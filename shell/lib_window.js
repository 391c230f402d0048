// The window: size in real pixels, safe areas, the phone's keyboard, what the person prefers. The canvas is drawn anew
// inside the observer's own call, so that it is never seen stretched.
mergeInto(LibraryManager.library, {
    $View__deps: ['$Arrivals', '$Frames', '$Twin'],
    $View: {
        canvas: null,
        wide: 0,
        high: 0,
        told: '',
        wishes: null,
        observer: null,
        letters: null, // the element whose width and height tell how large letters are, see textScale
        sign: '', // see askSign

        // The exact size of the canvas in device pixels where the browser knows it.
        size: function (entry) {
            const exact = entry && entry.devicePixelContentBoxSize && entry.devicePixelContentBoxSize[0];
            const box = View.canvas.getBoundingClientRect();
            // An emulated device ratio may be missing from the exact size: then it is worth nothing.
            const pick = function (length, precise) {
                const rounded = Math.round(length * devicePixelRatio);
                return Math.max(1, Math.abs(precise - rounded) <= 1 ? precise : rounded);
            };
            View.wide = pick(box.width, exact ? exact.inlineSize : NaN);
            View.high = pick(box.height, exact ? exact.blockSize : NaN);
        },

        // Height the keyboard covers. Only while something is edited: bars that come and go are no keyboard.
        keyboard: function () {
            const seen = globalThis.visualViewport;
            if (!seen || seen.scale > 1.01 || !Twin.edited(document.activeElement)) return 0;
            const covered = innerHeight - seen.height - seen.offsetTop;
            return covered > 60 ? covered : 0;
        },

        // How figures are written here, as the browser's own formats say: "de-DE 1" with a comma, "en-GB 0" with a point.
        askSign: function () {
            let figure = '';
            try {
                figure = (1.5).toLocaleString(navigator.language);
            } catch (unknown) {
                // Some systems name their language "c" or nothing at all.
                figure = (1.5).toLocaleString();
            }
            return navigator.language + (figure.includes(',') ? ' 1' : ' 0');
        },

        // To open its formats takes the browser a twentieth of a second, a phone's longer, before anything is seen. What
        // they said the last time in this language holds until the page stands; then they are asked (checkSign).
        comma: function () {
            if (!View.sign.startsWith(navigator.language + ' ')) {
                try {
                    View.sign = localStorage.getItem('tarebench-sign') || '';
                } catch (refused) {
                    // Nothing is kept here: they are asked at once.
                }
                if (!View.sign.startsWith(navigator.language + ' ')) View.learnSign();
            }
            return View.sign.endsWith(' 1');
        },
        learnSign: function () {
            View.sign = View.askSign();
            try {
                if (localStorage.getItem('tarebench-sign') !== View.sign) localStorage.setItem('tarebench-sign', View.sign);
            } catch (refused) {
                // Refused or full: asked again at the next start.
            }
        },
        checkSign: function () {
            View.learnSign();
            View.changed('preferences');
        },

        // Size of letters to the usual one, 1 to 2: the browser's own setting says it by the root's size (the element's
        // width), the system's by that of its body text where the browser knows it (the height; 17 is usual on iOS).
        textScale: function () {
            const box = View.letters.getBoundingClientRect();
            const body = CSS.supports('font', '-apple-system-body') ? 17 : 16;
            const scale = Math.max(box.width / 16, box.height / body);
            return Math.round(Math.min(2, Math.max(1, scale)) * 64) / 64;
        },

        // The system's own colours where it forces them on every page, in the order of platform_system_colour().
        systemColours: function () {
            if (!View.wishes[4].matches) return [];
            const names = ['Canvas', 'CanvasText', 'LinkText', 'ButtonFace', 'ButtonText', 'ButtonBorder', 'Field', 'FieldText',
                'Highlight', 'HighlightText', 'GrayText'];
            return names.map(function (name) {
                View.letters.style.color = name;
                const parts = getComputedStyle(View.letters).color.match(/[0-9.]+/g).map(Number);
                return Math.round(parts[0]) << 16 | Math.round(parts[1]) << 8 | Math.round(parts[2]);
            });
        },

        tell: function () {
            const safe = getComputedStyle(document.getElementById('safe-area'));
            const inset = function (side) { return parseFloat(safe['padding' + side]) || 0; };
            let flags = 0;
            View.wishes.forEach(function (wish, i) { if (wish.matches) flags |= 1 << i; });
            if (View.comma()) flags |= 32;
            if (navigator.standalone || matchMedia('(display-mode: standalone)').matches) flags |= 128;
            if (location.protocol !== 'http:' && location.protocol !== 'https:') flags |= 64;
            const numbers = [View.wide, View.high, devicePixelRatio, inset('Top'), inset('Right'), inset('Bottom'),
                inset('Left'), View.keyboard(), View.textScale(), flags];
            const colours = View.systemColours();
            const said = numbers.concat(colours).join(' ') + navigator.language;
            if (said === View.told) return false;
            View.told = said;
            colours.forEach(function (rgb, i) { _platform_system_colour(i, rgb); });
            _platform_window(...numbers, Arrivals.text(location.href.split('#')[0]), Arrivals.text(navigator.language));
            return true;
        },

        // On a change: tell, and draw at once if the canvas itself changed, for its picture is gone.
        changed: function (kind) {
            if (globalThis.tarebench.crashed || !View.tell()) return;
            Arrivals.push(kind);
            if (View.canvas.width === View.wide && View.canvas.height === View.high) return;
            View.canvas.width = View.wide;
            View.canvas.height = View.high;
            Frames.step(1);
        },

        viewport: function () {
            const seen = globalThis.visualViewport;
            // Zoomed in by two fingers, one finger moves the section that is seen.
            document.documentElement.classList.toggle('zoomed', seen.scale > 1.01);
            // iOS pushes the page up for its keyboard; what is edited is moved into view by the program instead.
            if (seen.scale <= 1.01 && (scrollX || scrollY)) scrollTo(0, 0);
            View.changed('resized');
        },

        resolution: function () {
            matchMedia('(resolution: ' + devicePixelRatio + 'dppx)').addEventListener('change', function () {
                View.size();
                View.changed('resized');
                View.resolution();
            }, { once: true });
        },

        observe: function () {
            View.observer.disconnect();
            try {
                View.observer.observe(View.canvas, { box: 'device-pixel-content-box' });
            } catch (unknown) {
                View.observer.observe(View.canvas);
            }
        },

        start: function () {
            View.canvas = document.getElementById('canvas');
            View.letters = document.getElementById('text-size');
            // In the order of the flags of platform_window().
            View.wishes = ['(pointer: coarse)', '(prefers-color-scheme: dark)', '(prefers-reduced-motion: reduce)',
                '(prefers-contrast: more)', '(forced-colors: active)'].map(function (query) { return matchMedia(query); });
            for (const wish of View.wishes) wish.addEventListener('change', function () { View.changed('preferences'); });
            View.size();
            View.canvas.width = View.wide;
            View.canvas.height = View.high;
            View.tell();

            View.observer = new ResizeObserver(function (entries) {
                View.size(entries[entries.length - 1]);
                View.changed('resized');
            });
            View.observe();
            new ResizeObserver(function () { View.changed('preferences'); }).observe(View.letters);
            View.resolution();
            if (globalThis.visualViewport) {
                visualViewport.addEventListener('resize', View.viewport);
                visualViewport.addEventListener('scroll', View.viewport);
                // Some versions give the new height only a moment after the keyboard came or went.
                for (const kind of ['focusin', 'focusout'])
                    addEventListener(kind, function () { setTimeout(View.viewport, 300); });
            }
            // Back from settings that lay beside the page: another contrast theme is told of by no event of its own.
            addEventListener('focus', function () { View.changed('preferences'); });
            addEventListener('languagechange', function () { View.changed('preferences'); });
            document.addEventListener('visibilitychange', function () {
                if (document.visibilityState === 'hidden') {
                    Arrivals.act('hidden');
                    return;
                }
                View.changed('preferences'); // back from the system's settings
                Frames.request();
            });
            addEventListener('pagehide', function () { Arrivals.act('hidden'); });
            setTimeout(View.checkSign, 2000);
        },
    },

    shell_watch_window__deps: ['$View'],
    shell_watch_window: function () {
        Twin.start();
        View.start();
    },

    // The old canvas's drawing context is gone for good; a new one takes its place on the page.
    shell_new_canvas__deps: ['$View'],
    shell_new_canvas: function () {
        const made = View.canvas.cloneNode(false);
        View.canvas.replaceWith(made);
        View.canvas = Twin.canvas = made;
        View.observe();
    },

    shell_page_colours: function (dark, background, ink, field, accent) {
        const css = function (rgb) { return '#' + (rgb >>> 0).toString(16).padStart(6, '0'); };
        const style = document.documentElement.style;
        style.setProperty('--ground', css(background));
        style.setProperty('--ink', css(ink));
        style.setProperty('--field', css(field));
        style.setProperty('--accent', css(accent));
        style.setProperty('color-scheme', dark ? 'dark' : 'light');
        for (const meta of document.querySelectorAll('meta[name=theme-color]')) meta.content = css(background);
    },

    // The native field's letters, as large as the drawn ones.
    shell_page_letters: function (body, figure) {
        Twin.letters = body;
        const style = document.documentElement.style;
        style.setProperty('--body-size', body + 'px');
        style.setProperty('--figure-size', figure + 'px');
    },

    shell_page_language: function (language, title) {
        document.documentElement.lang = UTF8ToString(language);
        document.title = UTF8ToString(title);
    },
});
