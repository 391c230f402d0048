// One WebKitWebDriver with the one small browser it may drive, by plain calls of the WebDriver protocol: a session is a
// profile of its own, with nothing of an earlier one. Calls wait for one another, and each says in which window it is meant.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { display } from './display.mjs';

const kBrowsers = ['4.1', '4.0', '6.0'].flatMap((version) =>
    ['/usr/lib/x86_64-linux-gnu', '/usr/lib/aarch64-linux-gnu', '/usr/libexec'].map((folder) =>
        `${folder}/webkit2gtk-${version}/MiniBrowser`));

const freePort = () => new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
        const { port } = server.address();
        server.close(() => done(port));
    });
});

export class Session {
    static async start() {
        const binary = kBrowsers.find(existsSync);
        if (!binary) throw new Error('MiniBrowser is missing; it is in the package webkit2gtk-driver');
        const session = new Session();
        session.folder = mkdtempSync(join(tmpdir(), 'tarebench-webkit-'));
        session.downloads = join(session.folder, 'downloads');
        mkdirSync(session.downloads);
        writeFileSync(join(session.folder, 'user-dirs.dirs'), `XDG_DOWNLOAD_DIR="${session.downloads}"\n`);
        const port = await freePort();
        session.driver = spawn('WebKitWebDriver', [`--port=${port}`], {
            stdio: 'ignore',
            env: { ...process.env, DISPLAY: await display(), XDG_CONFIG_HOME: session.folder, NO_AT_BRIDGE: '1' },
        });
        session.ended = false;
        session.driver.on('exit', () => { session.ended = true; });
        session.base = `http://127.0.0.1:${port}`;
        const wish = { browserName: 'MiniBrowser', 'webkitgtk:browserOptions': { binary, args: ['--automation'] } };
        for (let i = 0; ; ++i) {
            try {
                const made = await session.send('POST', '/session', { capabilities: { alwaysMatch: wish } });
                session.base += `/session/${made.sessionId}`;
                break;
            } catch (error) {
                if (i === 100 || session.ended) throw error;
                await new Promise((done) => setTimeout(done, 50));  // it does not listen yet
            }
        }
        session.waiting = Promise.resolve();
        session.window = await session.send('GET', '/window');
        return session;
    }

    async send(method, path, body) {
        const answer = await fetch(this.base + path, { method, body: body === undefined ? undefined : JSON.stringify(body) });
        const { value } = await answer.json();
        if (value && value.error) throw new Error(`${value.error}: ${value.message}`);
        return value;
    }

    call(window, method, path, body) {
        const turn = this.waiting.then(async () => {
            if (window !== this.window) {
                await this.send('POST', '/window', { handle: window });
                this.window = window;
            }
            return this.send(method, path, body);
        });
        this.waiting = turn.catch(() => {});
        return turn;
    }

    async end() {
        await this.send('DELETE', '').catch(() => {});
        if (!this.ended) {
            const gone = new Promise((done) => this.driver.once('exit', done));
            this.driver.kill();
            await gone;
        }
        rmSync(this.folder, { recursive: true, force: true });
    }
}
