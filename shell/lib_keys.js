// Keys that no native field takes. The browser keeps its own (reload, zoom, find, tab change); only those that would do
// something else with this page are held back.
mergeInto(LibraryManager.library, {
    $Keys__deps: ['$Arrivals', '$Twin'],
    $Keys: {
        silent: ['Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock', 'NumLock', 'Dead', 'Unidentified', 'Process', 'Tab'],
        held: ['/', "'", ' ', 'Backspace', 'ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'PageUp', 'PageDown', 'Home', 'End'],
        heldWithControl: ['s', 'z', 'y'],

        down: function (event) {
            if (event.isComposing || event.altKey || Keys.silent.includes(event.key)) return;
            if (Twin.edited(event.target)) return;
            const node = Twin.nodeOf(document.activeElement);
            if (event.key === 'Escape') {
                event.preventDefault();
                Arrivals.act('node_escape', { node });
                return;
            }
            const control = event.ctrlKey || event.metaKey;
            // On a focused button these are a click, which the browser makes.
            if (Twin.pressable(document.activeElement) && !control && (event.key === 'Enter' || event.key === ' ')) return;
            if (event.shiftKey && event.key === 'F10') return;
            if (control ? Keys.heldWithControl.includes(event.key.toLowerCase()) : Keys.held.includes(event.key))
                event.preventDefault();
            Arrivals.act('key_down', { text: event.key, shift: event.shiftKey, control, time: event.timeStamp });
        },
    },

    shell_watch_keys__deps: ['$Keys'],
    shell_watch_keys: function () {
        addEventListener('keydown', Keys.down);
    },
});
