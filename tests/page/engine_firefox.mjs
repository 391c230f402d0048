// Firefox as it is packaged, driven over WebDriver BiDi by the same driver as Chromium. Touches are real ones, made by the
// protocol's own actions; the driver has no door to them, so they go past it, to the session that it holds.
import { execFileSync } from 'node:child_process';
import { existsSync, renameSync } from 'node:fs';
import { firefox } from 'playwright-core';
import { display } from './display.mjs';
import { TooOld } from './too_old.mjs';

export const name = 'firefox';
// Without network.addDataCollector the driver of this version does not begin: 140 was seen to lack it, 153 to have it; that
// 143 is the first with it is from memory.
const kOldest = 143;

export const density = 1;  // at 2, a frame may take as long as a press has to last to be a held one

const kPreferences = {
    'webgl.force-enabled': true,  // needs a display besides, though no window is opened there
    'javascript.options.wasm_optimizingjit': false,
    'browser.download.alwaysOpenPanel': false,  // it would take the focus from the page
};

export async function launch() {
    const wanted = process.env.FIREFOX ?? ['/usr/bin/firefox-esr', '/usr/bin/firefox'].find(existsSync);
    if (!wanted) throw new Error('firefox is missing; it is in the package firefox-esr (or say FIREFOX=path)');
    const [, version] = /(\d+)\./.exec(execFileSync(wanted, ['--version'], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }));
    if (Number(version) < kOldest) throw new TooOld(`Firefox is ${version}, and the driver speaks with ${kOldest} and newer`);
    return firefox.launch({
        channel: 'moz-firefox', executablePath: wanted, headless: true, firefoxUserPrefs: kPreferences,
        env: { ...process.env, DISPLAY: await display() },
        handleSIGINT: false, handleSIGTERM: false, handleSIGHUP: false,
    });
}

// There is no phone to be emulated: a small window with fingers is one. Nor can a site be given the clipboard's text.
export function understood({ isMobile, permissions, ...options }) {
    return options;
}

// The driver's own session of the protocol with this page.
const within = (page) => page._connection.toImpl(page).delegate._session;

// The driver's own way would put a style into the page, which its policy forbids.
export async function picture(page) {
    const session = within(page);
    const { data } = await session.send('browsingContext.captureScreenshot', { context: session.sessionId });
    return Buffer.from(data, 'base64');
}

let files = 0;

// The next file that the page gives. The driver counts only those that a navigation ends in, the protocol tells of all.
export const given = (page) => new Promise((done, fail) => {
    const session = within(page);
    let name;
    const late = setTimeout(() => fail(new Error('no file was given')), 15000);
    session.once('browsingContext.downloadWillBegin', (event) => { name = event.suggestedFilename; });
    session.once('browsingContext.downloadEnd', (event) => {
        clearTimeout(late);
        const path = `${event.filepath}.${++files}`;  // a second one of that name would get another
        renameSync(event.filepath, path);
        done({ name, path });
    });
});

export async function touch(page, deeds) {
    const session = within(page);
    const most = Math.max(...deeds.map(([, what]) => (Array.isArray(what) ? what.length : 0)));
    const fingers = Array.from({ length: most }, (_, id) => {
        return { type: 'pointer', id: `finger${id}`, parameters: { pointerType: 'touch' }, actions: [] };
    });
    const down = fingers.map(() => false);
    const tick = (deed, ms, does) => fingers.forEach((finger, id) => {
        finger.actions.push(does(id) ?? { type: 'pause', duration: ms });
    });
    for (const [deed, what] of deeds) {
        if (deed === 'pass' || deed === 'hold') {
            tick(deed, what, () => null);
            continue;
        }
        tick(deed, 0, (id) => what[id] && { type: 'pointerMove', x: what[id][0], y: what[id][1], duration: 0 });
        tick(deed, 0, (id) => {
            if (Boolean(what[id]) === down[id]) return null;
            down[id] = Boolean(what[id]);
            return { type: down[id] ? 'pointerDown' : 'pointerUp', button: 0 };
        });
    }
    await session.send('input.performActions', { context: session.sessionId, actions: fingers });
}
