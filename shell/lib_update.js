// The hosted copy's new versions: fetched in the background by service_worker.js, used when the person says so.
mergeInto(LibraryManager.library, {
    $Update__deps: ['$Arrivals'],
    $Update: {
        registration: null,
        taking: false,

        start: function () {
            if (!globalThis.tarebench.hosted) return;
            if (navigator.storage && navigator.storage.persisted) {
                navigator.storage.persisted().then(function (agreed) {
                    Arrivals.push('storage_stands', { text: agreed ? 'yes' : 'no' });
                }, function () { /* refused to answer */ });
            }
            if (!navigator.serviceWorker) return;
            navigator.serviceWorker.addEventListener('controllerchange', function () {
                if (Update.taking) location.reload();
            });
            navigator.serviceWorker.register('service_worker.js').then(function (registration) {
                Update.registration = registration;
                const look = function (worker) {
                    if (worker && worker.state === 'installed' && navigator.serviceWorker.controller) Arrivals.push('page_update');
                };
                look(registration.waiting);
                // Browsers look for a new version in their own time, an app that stays open for days hardly ever.
                const ask = function () { registration.update().catch(function () { /* no network */ }); };
                ask();
                document.addEventListener('visibilitychange', function () {
                    if (document.visibilityState === 'visible') ask();
                });
                registration.addEventListener('updatefound', function () {
                    const worker = registration.installing;
                    if (worker) worker.addEventListener('statechange', function () { look(worker); });
                });
            }, function () { /* refused, as in a private window: the page works without */ });
        },
        take: function () {
            Update.taking = true;
            const waiting = Update.registration && Update.registration.waiting;
            if (waiting) waiting.postMessage('take');
            else location.reload();
        },
    },

    // Some browsers decide by themselves, some ask the person; some know nothing of it and then nothing is said.
    shell_ask_to_keep__deps: ['$Arrivals'],
    shell_ask_to_keep: function () {
        if (!navigator.storage || !navigator.storage.persist) return;
        navigator.storage.persist().then(function (agreed) {
            Arrivals.push('storage_stands', { text: agreed ? 'yes' : 'no' });
        }, function () { /* refused to answer */ });
    },

    shell_watch_update__deps: ['$Update'],
    shell_watch_update: function () {
        Update.start();
    },

    shell_take_update__deps: ['$Update'],
    shell_take_update: function () {
        Update.take();
    },
});
