// The accessibility mirror: real elements in step with the register that web/mirror.cpp packs (the format stands at its
// head). Elements are kept by node id and patched; one that has the focus is never moved, its neighbours are. They lie
// transparent over their pictures; a field that is being edited becomes visible and is the field.
// Leans on: whatever was typed has reached the program before it hands over a register, because both share one thread.
mergeInto(LibraryManager.library, {
    $Twin__deps: ['$Arrivals'],
    $Twin: {
        canvas: null,
        root: null,
        abouts: null, // holds the descriptions, hidden; they are referred to
        entries: null, // id -> { id, role, raw, parts, el, box, about, sent }
        letters: 15, // the em of what is drawn, CSS pixels
        patching: false,
        wanted: null, // a focus asked for before its element was there
        returns: null, // dialogs: where the focus was before each

        fields: ['field_text', 'field_decimal', 'field_search', 'field_address', 'field_note'],
        presses: ['button', 'tab', 'checkbox'],
        // Their name is a label, their content other nodes.
        holders: ['navigation', 'main', 'region', 'list', 'item', 'table', 'row', 'dialog'],

        start: function () {
            Twin.canvas = document.getElementById('canvas');
            Twin.root = document.getElementById('mirror');
            Twin.abouts = document.getElementById('abouts');
            Twin.entries = new Map();
            Twin.returns = new Map();
            const root = Twin.root;
            root.addEventListener('focusin', Twin.onFocus);
            root.addEventListener('focusout', Twin.onBlur);
            root.addEventListener('input', Twin.onInput);
            root.addEventListener('keydown', Twin.onKey);
            root.addEventListener('click', Twin.onClick);
        },

        // ---- asking ------------------------------------------------------------------------------------------
        nodeOf: function (element) {
            const found = element && element.closest ? element.closest('[data-node]') : null;
            return found ? Number(found.dataset.node) : 0;
        },
        entryOf: function (element) {
            return Twin.entries.get(Twin.nodeOf(element));
        },
        isField: function (entry) {
            return Boolean(entry) && Twin.fields.includes(entry.role);
        },
        // Is this element the native field that the person is typing in?
        edited: function (element) {
            return Boolean(element) && element === document.activeElement && Twin.isField(Twin.entryOf(element));
        },
        pressable: function (element) {
            const entry = Twin.entryOf(element);
            return Boolean(entry) && entry.el === element && Twin.presses.includes(entry.role);
        },
        // The innermost node with a menu's meaning under a mouse, or the one the menu key was pressed on.
        nodeAt: function (event) {
            if (event.target !== Twin.canvas) return Twin.nodeOf(event.target);
            let found = 0;
            for (const entry of Twin.entries.values()) {
                if (!['item', 'row', 'button', 'tab'].includes(entry.role) || entry.flags.includes('n')) continue;
                const x = entry.rect[0], y = entry.rect[1], width = entry.rect[2], height = entry.rect[3];
                if (event.clientX >= x && event.clientX < x + width && event.clientY >= y && event.clientY < y + height)
                    found = entry.id;
            }
            return found;
        },

        // ---- what people and their tools do ------------------------------------------------------------------
        onFocus: function (event) {
            const entry = Twin.entryOf(event.target);
            if (!entry || Twin.patching) return;
            Twin.show(entry);
            Arrivals.push('node_focus', { node: entry.id });
        },
        onBlur: function (event) {
            const entry = Twin.entryOf(event.target);
            if (!entry || Twin.patching) return;
            Twin.hide(entry);
            Arrivals.push('node_blur', { node: entry.id });
        },
        onInput: function (event) {
            const entry = Twin.entryOf(event.target);
            if (Twin.isField(entry)) Arrivals.push('node_input', { node: entry.id, text: entry.el.value });
        },
        onKey: function (event) {
            const entry = Twin.entryOf(event.target);
            if (!Twin.isField(entry) || event.isComposing || event.keyCode === 229) return;
            if (event.key === 'Escape') {
                event.preventDefault();
                Arrivals.act('node_escape', { node: entry.id });
            } else if (event.key === 'Enter') {
                if (entry.role === 'field_note' && !event.ctrlKey && !event.metaKey) return;
                event.preventDefault();
                Arrivals.act('node_enter', { node: entry.id, shift: event.shiftKey });
            }
        },
        onClick: function (event) {
            const entry = Twin.entryOf(event.target);
            if (!entry || !Twin.presses.includes(entry.role)) return;
            // Whether a box is ticked is for the program to say.
            if (entry.role === 'checkbox') event.preventDefault();
            if (!entry.flags.includes('d')) Arrivals.act('node_click', { node: entry.id });
            if (entry.role === 'checkbox') setTimeout(function () { Twin.tick(entry); }, 0);
        },
        // A press on the canvas: the ring of the keyboard goes; a mouse leaves a field, as it would on any page. For a
        // finger the program decides on release whether it was a tap.
        handTakesOver: function (pointer) {
            const entry = Twin.entryOf(document.activeElement);
            if (entry && (pointer !== 'touch' || !Twin.isField(entry)) && entry.role !== 'dialog')
                document.activeElement.blur();
        },

        // ---- one element -------------------------------------------------------------------------------------
        make: function (role, level) {
            const element = function (tag, kind) {
                const made = document.createElement(tag);
                if (kind) made.setAttribute('role', kind);
                return made;
            };
            switch (role) {
                case 'navigation': return element('nav');
                case 'main': return element('main');
                case 'region': return element('section');
                case 'list': return element('ul', 'list'); // some browsers drop a list's meaning with its bullets
                case 'item': return element('li');
                case 'table': return element('div', 'table');
                case 'row': return element('div', 'row');
                case 'cell': return element('div', 'cell');
                case 'column_header': return element('div', 'columnheader');
                case 'row_header': return element('div', 'rowheader');
                case 'heading': return element('h' + Math.min(6, Math.max(1, level)));
                case 'text': return element('p');
                case 'status': return element('div', 'status');
                case 'alert': return element('div', 'alert');
                case 'dialog': {
                    const dialog = element('div', 'dialog');
                    dialog.setAttribute('aria-modal', 'true');
                    return dialog;
                }
                case 'button':
                case 'tab': {
                    const button = element('button');
                    button.type = 'button';
                    return button;
                }
                case 'checkbox': {
                    const box = element('input');
                    box.type = 'checkbox';
                    return box;
                }
                case 'field_note': {
                    const note = element('textarea');
                    note.spellcheck = true;
                    note.autocomplete = 'off';
                    return note;
                }
                default: {
                    const field = element('input');
                    field.type = role === 'field_search' ? 'search' : 'text';
                    field.inputMode = { field_decimal: 'decimal', field_search: 'search', field_address: 'url' }[role] || 'text';
                    field.autocomplete = 'off';
                    field.autocapitalize = role === 'field_text' ? 'sentences' : 'none';
                    field.setAttribute('autocorrect', role === 'field_text' ? 'on' : 'off');
                    field.spellcheck = false;
                    return field;
                }
            }
        },

        // What must stand between a node and its parent for the two to make sense together.
        wraps: function (parentRole, role) {
            const cells = ['cell', 'column_header', 'row_header'];
            if (parentRole === 'row' && !cells.includes(role)) return [['div', 'cell']];
            if (parentRole === 'table' && role !== 'row')
                return cells.includes(role) ? [['div', 'row']] : [['div', 'row'], ['div', 'cell']];
            if (parentRole === 'list' && role !== 'item') return [['li', '']];
            return [];
        },

        attribute: function (element, name, value) {
            if (value === '' || value === false || value === undefined) {
                if (element.hasAttribute(name)) element.removeAttribute(name);
            } else if (element.getAttribute(name) !== String(value)) {
                element.setAttribute(name, value);
            }
        },

        create: function (id, role, level, parentRole) {
            const el = Twin.make(role, level);
            el.dataset.node = id;
            if (!Twin.holders.includes(role)) el.dir = 'auto'; // a person's text may run from right to left
            el.classList.add('twin', role);
            let box = el;
            for (const wrapping of Twin.wraps(parentRole, role).reverse()) {
                const wrap = document.createElement(wrapping[0]), kind = wrapping[1];
                if (kind) wrap.setAttribute('role', kind);
                wrap.append(box);
                box = wrap;
            }
            return { id, role, level, parentRole, el, box, raw: '', flags: '', rect: [0, 0, 0, 0], about: null, sent: null };
        },

        // Brings an element to what the register says.
        dress: function (entry, raw, parts) {
            entry.raw = raw;
            entry.flags = parts[3];
            entry.rect = parts.slice(4, 8).map(function (quarters) { return Number(quarters) / 4; });
            const has = function (letter) { return entry.flags.includes(letter); };
            const name = parts[10], value = parts[11], description = parts[12];
            const el = entry.el;
            const attribute = function (key, to) { Twin.attribute(el, key, to); };
            const field = Twin.isField(entry);

            if (field || entry.role === 'checkbox' || Twin.holders.includes(entry.role)) {
                attribute('aria-label', name);
            } else {
                const said = value && value !== name ? name + (name ? ' ' : '') + value : name;
                if (el.textContent !== said) el.textContent = said;
            }
            if (description) {
                if (!entry.about) {
                    entry.about = document.createElement('span');
                    entry.about.id = 'about-' + entry.id;
                    Twin.abouts.append(entry.about);
                    attribute('aria-describedby', entry.about.id);
                }
                if (entry.about.textContent !== description) entry.about.textContent = description;
            } else if (entry.about) {
                entry.about.remove();
                entry.about = null;
                attribute('aria-describedby', '');
            }
            entry.unit = entry.role === 'field_decimal' && !has('i') && description.length <= 8 ? description : '';

            if (field) {
                Twin.attribute(el, 'maxlength', Number(parts[9]) > 0 ? parts[9] : '');
                if (entry.role !== 'field_note') attribute('enterkeyhint', entry.role === 'field_search' ? 'search' : has('f') ? 'done' : 'next');
                attribute('aria-invalid', has('i') && 'true');
                el.disabled = has('d');
                // What the program says anew is written; what it has said before gives way to what is being typed.
                const editing = el === document.activeElement;
                if (el.value !== value && (value !== entry.sent || !editing)) el.value = value;
                entry.sent = value;
            } else {
                attribute('aria-disabled', has('d') && 'true');
            }
            if (entry.role === 'checkbox') Twin.tick(entry);
            if (entry.role === 'button') attribute('aria-pressed', has('t') ? String(has('c')) : '');
            attribute('aria-current', has('u') && (entry.role === 'tab' ? 'page' : 'true'));
            if (has('p') || has('e')) {
                attribute('aria-haspopup', has('p') && 'dialog');
                attribute('aria-expanded', has('e') ? 'true' : 'false');
            } else {
                attribute('aria-haspopup', '');
                attribute('aria-expanded', '');
            }
            el.classList.toggle('clipped', !has('v'));
            el.classList.toggle('large', has('l'));
            el.classList.toggle('unit', entry.unit !== '');
            entry.box.inert = has('n');
            if (el === document.activeElement) Twin.show(entry);
            else Twin.place(entry);
        },

        tick: function (entry) {
            const ticked = entry.flags.includes('c');
            if (entry.el.checked !== ticked) entry.el.checked = ticked;
        },

        place: function (entry) {
            const style = entry.el.style;
            let x = entry.rect[0], y = entry.rect[1], width = entry.rect[2], height = entry.rect[3];
            if (entry.el.classList.contains('editing')) {
                // Inside the drawn frame; the drawn unit stays to be seen beside it (web/widget_field.cpp places it).
                const unit = entry.unit ? Twin.measure(entry.unit) + 11 : 3;
                x += 3;
                y += 3;
                width = Math.max(24, width - 3 - unit);
                height -= 6;
            }
            const px = [x, y, width, height].map(function (n) { return n + 'px'; });
            if (style.left !== px[0]) style.left = px[0];
            if (style.top !== px[1]) {
                style.top = px[1];
                // Firefox may leave the element where it was until something else of it is laid out anew: this is, unseen.
                style.marginBottom = style.marginBottom === '1px' ? '0px' : '1px';
            }
            if (style.width !== px[2]) style.width = px[2];
            if (style.height !== px[3]) style.height = px[3];
        },

        measure: function (text) {
            Twin.ruler = Twin.ruler || document.createElement('canvas').getContext('2d');
            Twin.ruler.font = Twin.letters + 'px Tarebench, system-ui, sans-serif';
            return Twin.ruler.measureText(text).width;
        },

        show: function (entry) {
            if (Twin.isField(entry)) entry.el.classList.toggle('editing', entry.flags.includes('v'));
            Twin.place(entry);
        },
        hide: function (entry) {
            if (!Twin.isField(entry)) return;
            entry.el.classList.remove('editing');
            if (entry.sent !== null && entry.el.value !== entry.sent) {
                // Rewritten by the next register at the latest; until then the person's own words stand there.
                entry.raw = '';
            }
            Twin.place(entry);
        },

        // ---- all of them -------------------------------------------------------------------------------------
        patch: function (packed) {
            const records = packed === '' ? [] : packed.split('\x1e').map(function (raw) { return { raw, parts: raw.split('\x1f') }; });
            const roles = new Map([[0, '']]);
            const kept = new Set();
            for (const record of records) {
                const parts = record.parts;
                record.id = Number(parts[0]);
                record.parent = Number(parts[1]);
                roles.set(record.id, parts[2]);
                const old = Twin.entries.get(record.id);
                if (old && old.role === parts[2] && old.level === Number(parts[8]) && old.parentRole === roles.get(record.parent))
                    kept.add(record.id);
            }

            const before = document.activeElement;
            const focused = Twin.entryOf(before);
            let lost = focused && !kept.has(focused.id) ? focused : null;
            const opened = [];
            const closed = [];
            Twin.patching = true;
            for (const entry of Twin.entries.values()) {
                const id = entry.id;
                if (kept.has(id)) continue;
                if (entry.role === 'dialog') closed.push(id);
                // Children that stay are carried over to their new parents below.
                entry.box.remove();
                if (entry.about) entry.about.remove();
                Twin.entries.delete(id);
            }

            const cursors = new Map(); // parent element -> the child placed last
            for (const record of records) {
                const id = record.id, parent = record.parent, raw = record.raw, parts = record.parts;
                let entry = Twin.entries.get(id);
                if (!entry) {
                    entry = Twin.create(id, parts[2], Number(parts[8]), roles.get(parent));
                    Twin.entries.set(id, entry);
                    if (entry.role === 'dialog') opened.push(id);
                }
                const home = parent && Twin.entries.has(parent) ? Twin.entries.get(parent).el : Twin.root;
                const previous = cursors.get(home);
                const next = previous ? previous.nextSibling : home.firstChild;
                if (next !== entry.box) {
                    if (entry.box.parentNode === home && entry.box.contains(document.activeElement)) {
                        for (let other = next; other !== entry.box;) {
                            const after = other.nextSibling;
                            home.append(other);
                            other = after;
                        }
                    } else {
                        home.insertBefore(entry.box, next);
                    }
                }
                cursors.set(home, entry.box);
                if (entry.raw !== raw) Twin.dress(entry, raw, parts);
            }
            // Carried along to another parent, or made anew under the same id: the focus goes along too.
            if (focused && document.activeElement !== before) {
                const now = Twin.entries.get(focused.id);
                if (now && now.role === focused.role) {
                    now.el.focus({ preventScroll: true });
                    if (document.activeElement === now.el) lost = null;
                    Twin.show(now);
                } else {
                    lost = focused;
                }
            }
            Twin.patching = false;

            if (lost) Arrivals.push('node_blur', { node: lost.id });
            Twin.followDialogs(opened, closed, focused);
            if (lost && !Twin.isField(lost) && document.activeElement === document.body) Twin.focusAround();
            if (Twin.wanted) {
                const wanted = Twin.wanted;
                Twin.wanted = null;
                Twin.focus(wanted.node, wanted.all);
            }
        },

        // A dialog takes the focus when it opens and gives it back when it closes; never to a field, which would raise
        // a keyboard nobody asked for.
        followDialogs: function (opened, closed, focused) {
            for (const id of closed) {
                const back = Twin.entries.get(Twin.returns.get(id));
                Twin.returns.delete(id);
                if (back && !Twin.isField(back) && !document.activeElement.closest('[data-node]'))
                    back.el.focus({ preventScroll: true });
            }
            for (const id of opened) {
                const dialog = Twin.entries.get(id).el;
                if (focused) Twin.returns.set(id, focused.id);
                if (dialog.contains(document.activeElement)) continue;
                dialog.tabIndex = -1;
                dialog.focus({ preventScroll: true });
            }
        },

        // What had the focus is gone: the reader goes on from the open dialog or the main part, not from the top.
        focusAround: function () {
            let around = null;
            for (const entry of Twin.entries.values()) {
                if (entry.role === 'dialog' || (entry.role === 'main' && !around)) around = entry;
            }
            if (!around) return;
            around.el.tabIndex = -1;
            around.el.focus({ preventScroll: true });
        },

        focus: function (node, all) {
            const entry = Twin.entries.get(node);
            if (!entry) {
                Twin.wanted = { node, all };
                return;
            }
            Twin.wanted = null;
            const natural = Twin.isField(entry) || Twin.presses.includes(entry.role);
            if (!natural) entry.el.tabIndex = -1;
            entry.el.focus({ preventScroll: true });
            if (all && Twin.isField(entry)) entry.el.select();
        },
    },

    shell_set_mirror__deps: ['$Twin'],
    shell_set_mirror: function (packed) {
        Twin.patch(UTF8ToString(packed));
    },

    shell_focus_node__deps: ['$Twin'],
    shell_focus_node: function (node, all) {
        if (node) Twin.focus(node >>> 0, Boolean(all));
    },

    shell_blur_node__deps: ['$Twin'],
    shell_blur_node: function () {
        Twin.wanted = null;
        if (Twin.entryOf(document.activeElement)) document.activeElement.blur();
    },
});
