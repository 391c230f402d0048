// The one way in: everything that happens is pushed into the program's queue. push() lets it wait for the next frame;
// act() has the program look at it at once, within the handler, because raising a keyboard, copying and opening a file
// are only allowed there.
mergeInto(LibraryManager.library, {
    $Arrivals__deps: ['$Frames'],
    $Arrivals: {
        // platform::Kind in order; tests/test_platform.cpp compares the two lists.
        kinds: [
            'pointer_down', 'pointer_move', 'pointer_up', 'pointer_cancel', 'wheel', 'key_down',
            'node_click', 'node_focus', 'node_blur', 'node_input', 'node_enter', 'node_escape', 'node_menu',
            'resized', 'preferences', 'hidden', 'context_lost', 'context_restored', 'letters_changed',
            'stored', 'stored_all', 'saved', 'save_failed', 'storage_refused', 'other_tab',
            'fragment', 'pasted', 'file_opened', 'file_refused', 'copied', 'copy_failed', 'page_update',
            'storage_stands', 'awake',
        ],
        pointers: ['mouse', 'touch', 'pen'],

        // A copy of a text inside the program's memory; platform_push() frees it. Half a letter becomes U+FFFD.
        text: function (text) {
            if (!text) return 0;
            const bytes = new TextEncoder().encode(String(text).replaceAll('\0', '\uFFFD'));
            const at = _platform_room(bytes.length + 1);
            HEAPU8.set(bytes, at);
            HEAPU8[at + bytes.length] = 0;
            return at;
        },

        push: function (kind, what) {
            if (globalThis.tarebench.crashed) return;
            const e = what || {};
            const number = Arrivals.kinds.indexOf(kind);
            if (number < 0) throw new Error('no such arrival: ' + kind);
            _platform_push(number, e.x || 0, e.y || 0, e.time || performance.now(),
                Math.max(0, Arrivals.pointers.indexOf(e.pointer)), e.id || 0, e.node || 0,
                (e.shift ? 1 : 0) | (e.control ? 2 : 0), Arrivals.text(e.key), Arrivals.text(e.text));
            Frames.request();
        },

        act: function (kind, what) {
            Arrivals.push(kind, what);
            Frames.step(0);
        },
    },
});
