// The world outside the page: clipboard, share sheet, files, this page as a file, the address and the way back.
// Nothing here talks to a server; the hosted copy alone reads its own single file, to save it.
mergeInto(LibraryManager.library, {
    $Outside__deps: ['$Arrivals', '$Twin'],
    $Outside: {
        mostBytes: 5 * 1024 * 1024,
        guard: 'off', // off, on, leaving (the entry is being taken back)
        guardWished: false,
        hash: '',
        paper: null, // the frame of what was printed last
        reading: null, // the paper that is being read: its frame, and what is still to be written into it

        // ---- clipboard -----------------------------------------------------------------------------------------
        copy: function (text) {
            const oldWay = function () {
                const area = document.createElement('textarea');
                area.className = 'aside';
                area.setAttribute('aria-hidden', 'true');
                area.value = text;
                document.body.append(area);
                const focused = document.activeElement;
                Twin.patching = true; // this going to and fro is no focus of the program's
                area.select();
                let done = false;
                try {
                    done = document.execCommand('copy');
                } catch (refused) {
                    done = false;
                }
                area.remove();
                if (focused && focused !== document.body) focused.focus({ preventScroll: true });
                Twin.patching = false;
                Arrivals.push(done ? 'copied' : 'copy_failed');
            };
            if (!navigator.clipboard || !navigator.clipboard.writeText) return oldWay();
            navigator.clipboard.writeText(text).then(function () { Arrivals.push('copied'); }, oldWay);
        },

        // ---- files ---------------------------------------------------------------------------------------------
        read: function (file) {
            if (file.size > Outside.mostBytes) {
                Arrivals.push('file_refused', { key: file.name, text: 'too_large' });
                return;
            }
            file.text().then(
                function (text) { Arrivals.push('file_opened', { key: file.name, text }); },
                function () { Arrivals.push('file_refused', { key: file.name, text: 'unreadable' }); });
        },
        open: function () {
            const input = document.createElement('input');
            input.type = 'file';
            input.accept = '.json,.txt,.html,application/json,text/plain,text/html';
            input.className = 'aside';
            input.setAttribute('aria-hidden', 'true');
            input.tabIndex = -1;
            document.body.append(input);
            input.addEventListener('change', function () {
                for (const file of input.files) Outside.read(file);
                input.remove();
            });
            input.addEventListener('cancel', function () { input.remove(); });
            input.click();
        },
        give: function (name, mime, text) {
            const file = new File([text], name, { type: mime });
            // In an app from the iOS home screen a download ends in a preview without a way back.
            if (navigator.standalone === true && navigator.canShare && navigator.canShare({ files: [file] })) {
                navigator.share({ files: [file] }).catch(function () { /* closed by the person */ });
                return;
            }
            const link = document.createElement('a');
            link.href = URL.createObjectURL(file);
            link.download = name;
            link.className = 'aside';
            document.body.append(link);
            link.click();
            link.remove();
            setTimeout(function () { URL.revokeObjectURL(link.href); }, 60000);
        },
        // The page's policy lets in no style that it does not know; what a script sets it does. In the text of a paper every
        // quotation mark and bracket of a person's is escaped, so that what is replaced here is never theirs.
        fill: function (inner, html) {
            const sheet = new inner.CSSStyleSheet();
            inner.document.open();
            inner.document.write(html.replace(/<style>([^<]*)<\/style>/, function (all, css) {
                sheet.replaceSync(css);
                return '';
            }).replace(/ style="/g, ' data-style="'));
            inner.document.close();
            for (const one of inner.document.querySelectorAll('[data-style]')) one.style.cssText = one.dataset.style;
            inner.document.adoptedStyleSheets = [sheet];
        },
        // In a frame, written anew each time.
        print: function (name, html) {
            try {
                if (Outside.paper) Outside.paper.remove();
                const frame = Outside.paper = document.createElement('iframe');
                frame.className = 'aside';
                frame.setAttribute('aria-hidden', 'true');
                frame.tabIndex = -1;
                document.body.append(frame);
                const inner = frame.contentWindow;
                Outside.fill(inner, html);
                inner.print();
            } catch (withoutPrinting) {
                Outside.give(name, 'text/html', html);
            }
        },
        // Within the dialog of the sheet that is drawn around it, or assistive technology would not find it there.
        place: function (left, top, width, height) {
            const reading = Outside.reading;
            if (!reading) return;
            const style = reading.frame.style;
            style.left = left + 'px';
            style.top = top + 'px';
            style.width = width + 'px';
            style.height = height + 'px';
            if (!reading.html) return;
            const dialog = document.querySelector('#mirror [role=dialog]');
            if (!dialog) return;
            dialog.append(reading.frame);
            const inner = reading.frame.contentWindow;
            Outside.fill(inner, reading.html);
            reading.html = '';
            inner.addEventListener('keydown', function (event) {
                if (event.key === 'Escape') Arrivals.act('node_escape', { node: 0 });
            });
        },
        hide: function () {
            if (Outside.reading) Outside.reading.frame.remove();
            Outside.reading = null;
        },
        givePage: function () {
            const give = function (text) { Outside.give('tarebench.html', 'text/html', text); };
            const own = function () { give(globalThis.tarebench.page()); };
            // The hosted page's policy and links are made for its server; beside it lies the page made for one file.
            if (!globalThis.tarebench.hosted) return own();
            fetch('tarebench.html').then(function (answer) { return answer.ok ? answer.text() : Promise.reject(); }).then(give, own);
        },

        // ---- address -------------------------------------------------------------------------------------------
        arrived: function () {
            Outside.hash = location.hash;
            if (location.hash.length > 1) Arrivals.push('fragment', { text: location.hash.slice(1) });
        },
        setGuard: function (on) {
            Outside.guardWished = on;
            if (on && Outside.guard === 'off') {
                history.pushState({ tarebench: 'guard' }, '');
                Outside.guard = 'on';
            } else if (!on && Outside.guard === 'on') {
                Outside.guard = 'leaving';
                history.back();
            }
        },
        onBack: function () {
            if (Outside.guard === 'leaving') {
                Outside.guard = 'off';
                if (Outside.guardWished) Outside.setGuard(true);
                return;
            }
            // A link typed or followed within the page: it arrives as a fragment, and is no wish to go back.
            if (location.hash !== Outside.hash && location.hash.length > 1) {
                Outside.guard = 'off';
                return;
            }
            if (Outside.guard !== 'on') return;
            Outside.guard = 'off';
            Outside.guardWished = false;
            Arrivals.act('node_escape', { node: 0 });
        },

        start: function () {
            addEventListener('hashchange', Outside.arrived);
            addEventListener('popstate', Outside.onBack);
            document.addEventListener('paste', function (event) {
                if (Twin.edited(event.target)) return;
                const text = event.clipboardData ? event.clipboardData.getData('text/plain') : '';
                if (text && text.length <= Outside.mostBytes) {
                    event.preventDefault();
                    Arrivals.act('pasted', { text });
                }
            });
            addEventListener('dragover', function (event) {
                if (event.dataTransfer && [...event.dataTransfer.types].includes('Files')) event.preventDefault();
            });
            addEventListener('drop', function (event) {
                if (!event.dataTransfer || !event.dataTransfer.files.length) return;
                event.preventDefault();
                for (const file of event.dataTransfer.files) Outside.read(file);
            });
            // A guard left over from before a reload.
            if (history.state && history.state.tarebench === 'guard') Outside.guard = 'on';
            Outside.arrived();
        },
    },

    shell_watch_outside__deps: ['$Outside'],
    shell_watch_outside: function () {
        Outside.start();
    },

    shell_copy__deps: ['$Outside'],
    shell_copy: function (text) {
        Outside.copy(UTF8ToString(text));
    },

    shell_can_share: function () {
        return navigator.share ? 1 : 0;
    },

    shell_share__deps: ['$Outside'],
    shell_share: function (title, address) {
        const what = { title: UTF8ToString(title), url: UTF8ToString(address) };
        if (!navigator.share) return Outside.copy(what.url);
        navigator.share(what).catch(function (error) {
            if (error.name !== 'AbortError') Outside.copy(what.url);
        });
    },

    shell_open_file__deps: ['$Outside'],
    shell_open_file: function () {
        Outside.open();
    },

    shell_save_file__deps: ['$Outside'],
    shell_save_file: function (name, mime, text) {
        Outside.give(UTF8ToString(name), UTF8ToString(mime), UTF8ToString(text));
    },

    shell_print__deps: ['$Outside'],
    shell_print: function (name, html) {
        Outside.print(UTF8ToString(name), UTF8ToString(html));
    },

    shell_show_paper__deps: ['$Outside'],
    shell_show_paper: function (title, html) {
        Outside.hide();
        const frame = document.createElement('iframe');
        frame.className = 'paper';
        frame.title = UTF8ToString(title);
        Outside.reading = { frame, html: UTF8ToString(html) };
    },

    shell_place_paper__deps: ['$Outside'],
    shell_place_paper: function (left, top, width, height) {
        Outside.place(left, top, width, height);
    },

    shell_hide_paper__deps: ['$Outside'],
    shell_hide_paper: function () {
        Outside.hide();
    },

    shell_save_page__deps: ['$Outside'],
    shell_save_page: function () {
        Outside.givePage();
    },

    shell_clear_fragment__deps: ['$Outside'],
    shell_clear_fragment: function () {
        history.replaceState(history.state, '', location.pathname + location.search);
        Outside.hash = '';
    },

    shell_back_guard__deps: ['$Outside'],
    shell_back_guard: function (on) {
        Outside.setGuard(Boolean(on));
    },
});
