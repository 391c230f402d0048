// The screen stays lit while hands are at the scale. A browser lets go of it whenever the page is hidden, and some have
// no such thing: then that is told, once it has been asked for.
mergeInto(LibraryManager.library, {
    $Awake__deps: ['$Arrivals'],
    $Awake: {
        wished: false,
        asking: false,
        lock: null,
        watching: false,

        tell: function (answer) {
            Arrivals.push('awake', { text: answer });
        },
        ask: function () {
            if (!Awake.wished || Awake.lock || Awake.asking || document.visibilityState !== 'visible') return;
            if (!navigator.wakeLock) return Awake.tell('no');
            Awake.asking = true;
            navigator.wakeLock.request('screen').then(function (lock) {
                Awake.asking = false;
                if (!Awake.wished) return lock.release();
                Awake.lock = lock;
                lock.addEventListener('release', function () {
                    if (Awake.lock !== lock) return;
                    Awake.lock = null;
                    if (document.visibilityState === 'visible') Awake.tell('no');  // a battery that runs low
                });
                Awake.tell('yes');
            }, function () {
                Awake.asking = false;
                Awake.tell('no');
            });
        },
        wish: function (on) {
            Awake.wished = on;
            if (on && !Awake.watching) {
                Awake.watching = true;
                document.addEventListener('visibilitychange', Awake.ask);
            }
            if (on) return Awake.ask();
            const lock = Awake.lock;
            Awake.lock = null;
            if (lock) lock.release();
        },
    },

    shell_keep_awake__deps: ['$Awake'],
    shell_keep_awake: function (on) {
        Awake.wish(on !== 0);
    },
});
