// Three short tones and a buzz when a timer is over. Browsers let a page sound only after it was touched, so the bell is made
// ready while a timer runs, at once or at the next touch; where there is none, nothing is heard and the page says it in words.
mergeInto(LibraryManager.library, {
    $Bell: {
        wished: false,
        watching: false,
        sound: null,

        ready: function () {
            if (!Bell.wished || typeof AudioContext !== 'function') return;
            try {
                Bell.sound = Bell.sound || new AudioContext();
                if (Bell.sound.state !== 'running') Bell.sound.resume().catch(function () {});
            } catch (refused) {
                Bell.sound = null;
            }
        },
        ring: function () {
            if (navigator.vibrate) navigator.vibrate([200, 100, 200, 100, 200]);
            if (!Bell.sound) return;
            for (let i = 0; i < 3; ++i) {
                const tone = Bell.sound.createOscillator(), loudness = Bell.sound.createGain();
                const from = Bell.sound.currentTime + i * 0.4;
                tone.frequency.value = 880;
                loudness.gain.setValueAtTime(0.3, from);
                loudness.gain.linearRampToValueAtTime(0, from + 0.3);  // cut off, it would click
                tone.connect(loudness).connect(Bell.sound.destination);
                tone.start(from);
                tone.stop(from + 0.3);
            }
        },
    },

    shell_want_bell__deps: ['$Bell'],
    shell_want_bell: function (on) {
        Bell.wished = on !== 0;
        if (Bell.wished && !Bell.watching) {
            Bell.watching = true;
            for (const touched of ['pointerup', 'keydown']) addEventListener(touched, Bell.ready, true);
        }
        Bell.ready();
    },
    shell_ring__deps: ['$Bell'],
    shell_ring: function () {
        Bell.ring();
    },
});
