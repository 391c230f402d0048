// Frames are asked for, never looped: what happens asks for one, then nothing runs. One timer wakes the program for what
// is due later. globalThis.tarebench tells tests how many were drawn and when all is quiet.
mergeInto(LibraryManager.library, {
    $Frames: {
        armed: false,
        inside: false, // the program is running: whatever happens now waits in the queue
        drawn: 0,
        timer: 0,
        wakeAt: 0, // 0: no timer

        request: function () {
            if (Frames.armed || globalThis.tarebench.crashed) return;
            Frames.armed = true;
            requestAnimationFrame(Frames.tick);
        },
        tick: function () {
            Frames.armed = false;
            Frames.step(1);
        },
        step: function (how) { // 0, 1, 2: see platform_step()
            if (Frames.inside || globalThis.tarebench.crashed) return;
            Frames.inside = true;
            clearTimeout(Frames.timer); // a wish holds until the next step, which renews what it still wants
            Frames.wakeAt = 0;
            try {
                _platform_step(how);
                if (how === 1) Frames.drawn += 1;
            } catch (error) {
                // Here, not at the window: from disk, WebKit tells the page there that something failed, and hides what.
                globalThis.tarebench.look(error);
            } finally {
                Frames.inside = false;
            }
        },
        wake: function (inMs) {
            const at = performance.now() + Math.max(0, inMs);
            if (Frames.wakeAt && at >= Frames.wakeAt) return;
            clearTimeout(Frames.timer);
            Frames.wakeAt = at;
            // A timer counts in 32 bits; a wish further away than that is renewed by the frame in between.
            Frames.timer = setTimeout(Frames.awake, Math.min(inMs, 0x7fffffff));
        },
        awake: function () {
            Frames.wakeAt = 0;
            Frames.request();
        },
        quiet: function () {
            const wakesSoon = Frames.wakeAt !== 0 && Frames.wakeAt - performance.now() < 30;
            return !Frames.armed && !Frames.inside && !wakesSoon;
        },
        settled: function () {
            return new Promise(function (resolve) {
                const look = function () {
                    if (!Frames.quiet()) return setTimeout(look, 8);
                    return setTimeout(function () { Frames.quiet() ? resolve() : look(); }, 0);
                };
                look();
            });
        },
    },

    shell_request_frame__deps: ['$Frames'],
    shell_request_frame: function () {
        Frames.request();
    },

    shell_step__deps: ['$Frames'],
    shell_step: function () {
        Frames.step(1);
    },

    shell_request_wake__deps: ['$Frames'],
    shell_request_wake: function (inMs) {
        Frames.wake(inMs);
    },

    shell_running__deps: ['$Frames'],
    shell_running: function () {
        Object.assign(globalThis.tarebench, {
            frames: function () { return Frames.drawn; },
            quiet: Frames.quiet,
            memory: function () { return HEAPU8.length; },
            settled: Frames.settled,
            work: function () { // what a drawn step takes without the drawing, in ms: for benchmarks
                const before = performance.now();
                Frames.step(2);
                return performance.now() - before;
            },
        });
        globalThis.tarebench.started();
    },

    shell_cannot_draw: function () {
        globalThis.tarebench.fail('drawing');
    },

    shell_local_date: function () {
        const now = new Date();
        return now.getFullYear() * 10000 + (now.getMonth() + 1) * 100 + now.getDate();
    },

    // 2026-11-25T12:00:00Z, and the zero that ends it.
    shell_now_utc: function (text) {
        HEAPU8.set(new TextEncoder().encode(new Date().toISOString().slice(0, 19) + 'Z\0'), text);
    },

    shell_chance: function () {
        return crypto.getRandomValues(new Int32Array(1))[0];
    },
});
