// Records in localStorage, one key each. Other pages from disk may share the same store: only keys with the program's
// prefix are read, nothing is ever cleared. What is saved is read back; before it is saved, it is looked at whether
// another tab has written this record meanwhile (not every browser tells): then nothing is saved, and what that tab wrote
// is handed over, so that both can be kept.
mergeInto(LibraryManager.library, {
    $Records__deps: ['$Arrivals'],
    $Records: {
        prefix: '',
        seen: null, // key -> text as this tab last read or wrote it

        isFull: function (error) {
            return Boolean(error) && (error.name === 'QuotaExceededError' || error.name === 'NS_ERROR_DOM_QUOTA_REACHED' || error.code === 22);
        },
        usable: function () {
            const key = Records.prefix + 'probe';
            try {
                localStorage.setItem(key, '1');
                const kept = localStorage.getItem(key) === '1';
                localStorage.removeItem(key);
                return kept;
            } catch (error) {
                return Records.isFull(error); // full still reads
            }
        },
        keys: function () {
            const keys = [];
            for (let i = 0; i < localStorage.length; ++i) {
                const key = localStorage.key(i);
                if (key.startsWith(Records.prefix)) keys.push(key);
            }
            return keys.sort();
        },
        // Null where the browser keeps nothing. Where something is kept already it is not tried out: that takes a while.
        kept: function () {
            try {
                const keys = Records.keys();
                return keys.length > 0 || Records.usable() ? keys : null;
            } catch (refused) {
                return null;
            }
        },
        load: function (prefix) {
            Records.prefix = prefix;
            const first = !Records.seen;
            Records.seen = new Map();
            const keys = Records.kept();
            if (!keys) {
                Arrivals.push('storage_refused');
            } else {
                for (const key of keys) {
                    const text = localStorage.getItem(key);
                    Records.seen.set(key, text);
                    Arrivals.push('stored', { key, text });
                }
                if (first) Records.watch();
            }
            Arrivals.push('stored_all');
        },
        watch: function () {
            addEventListener('storage', function (event) {
                if (event.storageArea !== localStorage) return;
                if (event.key === null) Records.compareAll();
                else if (event.key.startsWith(Records.prefix)) Records.compare(event.key);
            });
            document.addEventListener('visibilitychange', function () {
                if (document.visibilityState === 'visible') Records.compareAll();
            });
        },
        compare: function (key) {
            const now = localStorage.getItem(key);
            const known = Records.seen.has(key) ? Records.seen.get(key) : null;
            if (now === known) return;
            if (now === null) Records.seen.delete(key);
            else Records.seen.set(key, now);
            Arrivals.push('other_tab', { key, text: now || '' });
        },
        compareAll: function () {
            try {
                for (const key of new Set([...Records.keys(), ...Records.seen.keys()])) Records.compare(key);
            } catch (refused) {
                Arrivals.push('storage_refused');
            }
        },
        // The keys of a record's two turns where another tab has put something since.
        foreign: function (key) {
            if (!Records.seen || !/\.[ab]$/.test(key)) return [];
            const base = key.slice(0, -1);
            return [base + 'a', base + 'b'].filter(function (one) {
                const now = localStorage.getItem(one);
                return now !== null && now !== (Records.seen.has(one) ? Records.seen.get(one) : null);
            });
        },
        save: function (key, text) {
            try {
                const foreign = Records.foreign(key);
                if (foreign.length > 0) {
                    Arrivals.push('save_failed', { key, text: 'changed' });
                    foreign.forEach(Records.compare);
                    return;
                }
                localStorage.setItem(key, text);
                if (localStorage.getItem(key) !== text) throw new Error('not kept');
                if (Records.seen) Records.seen.set(key, text);
                Arrivals.push('saved', { key });
            } catch (error) {
                Arrivals.push('save_failed', { key, text: Records.isFull(error) ? 'full' : 'refused' });
            }
        },
        remove: function (key) {
            try {
                localStorage.removeItem(key);
                if (Records.seen) Records.seen.delete(key);
            } catch (refused) {
                Arrivals.push('save_failed', { key, text: 'refused' });
            }
        },
    },

    shell_load_stored__deps: ['$Records'],
    shell_load_stored: function (prefix) {
        Records.load(UTF8ToString(prefix));
    },

    shell_save__deps: ['$Records'],
    shell_save: function (key, text) {
        Records.save(UTF8ToString(key), UTF8ToString(text));
    },

    shell_remove__deps: ['$Records'],
    shell_remove: function (key) {
        Records.remove(UTF8ToString(key));
    },
});
