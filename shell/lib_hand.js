// Pointer and wheel. Everything on the stage counts, canvas and mirrored elements alike, so a press on a mirrored button
// takes the same way as one on its picture. Two fingers are the browser's (touch-action in style.css); a native field
// that is being edited keeps its own presses, but a finger that goes up or down on a single line of text scrolls. What a
// press means is decided in web/gesture.cpp.
mergeInto(LibraryManager.library, {
    $Hand__deps: ['$Arrivals', '$Twin'],
    $Hand: {
        down: null, // ids of pointers that are down
        lent: null, // a finger that is down on the field being edited: the field's, until it goes up or down
        lastUp: -1e9, // a click may still come of it: of a mouse or pen always, of a finger when its element is gone by then

        send: function (kind, event, now) {
            const place = Twin.canvas.getBoundingClientRect();
            (now ? Arrivals.act : Arrivals.push)(kind, {
                x: event.clientX - place.left,
                y: event.clientY - place.top,
                time: event.timeStamp,
                pointer: event.pointerType,
                id: event.pointerId,
                shift: event.shiftKey,
                control: event.ctrlKey || event.metaKey,
            });
        },

        start: function (stage) {
            Hand.down = new Set();
            const own = function (event) { return !Twin.edited(event.target); };
            const capture = function (event) {
                try {
                    Twin.canvas.setPointerCapture(event.pointerId);
                } catch (gone) {
                    // Made by a script, or up again already: it works uncaptured too.
                }
            };

            stage.addEventListener('pointerdown', function (event) {
                Hand.lent = null;
                if (!own(event) && event.pointerType === 'touch' && event.target.localName === 'input') Hand.lent = event;
                if (!own(event) || event.button !== 0) return;
                // The browser may forget to tell that a finger left; the first finger of a new touch says so.
                if (event.pointerType === 'touch' && event.isPrimary) {
                    for (const id of Hand.down) Arrivals.push('pointer_cancel', { pointer: 'touch', id });
                    Hand.down.clear();
                }
                Hand.down.add(event.pointerId);
                Twin.handTakesOver(event.pointerType);
                capture(event);
                Hand.send('pointer_down', event);
            });
            stage.addEventListener('pointermove', function (event) {
                if (Hand.lent && Hand.lent.pointerId === event.pointerId) {
                    const across = Math.abs(event.clientX - Hand.lent.clientX);
                    const along = Math.abs(event.clientY - Hand.lent.clientY);
                    if (along < 10 || along < across) return;
                    Hand.down.add(event.pointerId);
                    capture(event);
                    Hand.send('pointer_down', Hand.lent);
                    Hand.lent = null;
                }
                if (Hand.down.has(event.pointerId) || (event.pointerType === 'mouse' && own(event)))
                    Hand.send('pointer_move', event);
            });
            stage.addEventListener('pointerup', function (event) {
                if (!Hand.down.delete(event.pointerId)) return;
                Hand.lastUp = event.timeStamp;
                Hand.send('pointer_up', event, true);
            });
            stage.addEventListener('pointercancel', function (event) {
                if (Hand.down.delete(event.pointerId)) Hand.send('pointer_cancel', event);
            });
            stage.addEventListener('pointerleave', function (event) {
                // A mouse that left hovers over nothing.
                if (event.pointerType === 'mouse' && !Hand.down.has(event.pointerId)) Hand.send('pointer_cancel', event);
            });

            // Presses move no focus by themselves and make no second, imitated press.
            stage.addEventListener('mousedown', function (event) {
                if (own(event)) event.preventDefault();
            });
            stage.addEventListener('touchend', function (event) {
                if (own(event) && event.cancelable) event.preventDefault();
            }, { passive: false });
            // The click that follows a press we had already; those of keys and assistive technology have no press.
            stage.addEventListener('click', function (event) {
                if (!own(event) || !event.isTrusted || event.detail === 0) return;
                if (event.timeStamp - Hand.lastUp > 500) return;
                Hand.lastUp = -1e9;
                event.preventDefault();
                event.stopPropagation();
            }, true);
            stage.addEventListener('contextmenu', function (event) {
                if (!own(event)) return;
                event.preventDefault();
                // A finger that is held has its own meaning already.
                if (Hand.down.size > 0 || event.pointerType === 'touch') return;
                const node = Twin.nodeAt(event);
                if (node) Arrivals.act('node_menu', { node });
            });

            stage.addEventListener('wheel', function (event) {
                if (event.ctrlKey || (!own(event) && event.target.scrollHeight > event.target.clientHeight)) return;
                const unit = event.deltaMode === 1 ? 20 : event.deltaMode === 2 ? innerHeight * 0.9 : 1;
                const place = Twin.canvas.getBoundingClientRect();
                const sideways = event.shiftKey && event.deltaX === 0;
                // The wheel carries no place of its own in the queue: the pointer goes there first.
                if (!Hand.down.size)
                    Arrivals.push('pointer_move', {
                        x: event.clientX - place.left, y: event.clientY - place.top, time: event.timeStamp,
                        pointer: 'mouse', id: 1,
                    });
                Arrivals.push('wheel', {
                    x: (sideways ? event.deltaY : event.deltaX) * unit,
                    y: (sideways ? 0 : event.deltaY) * unit,
                    time: event.timeStamp,
                });
            }, { passive: true });
        },
    },

    shell_watch_hand__deps: ['$Hand'],
    shell_watch_hand: function () {
        Hand.start(document.getElementById('stage'));
    },
});
