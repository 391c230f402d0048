// The project's own server on loopback, with the hosted copy.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const kServe = fileURLToPath(new URL('../../shell/serve.mjs', import.meta.url));

// Runs for as long as the deed takes, or until the deed stops it: then there is no network. deed(address, stop)
export async function served(folder, deed) {
    const port = 20000 + (process.pid % 20000);  // or the next that is free
    const child = spawn(process.execPath, [kServe, folder, String(port)], { stdio: ['ignore', 'pipe', 'inherit'] });
    const gone = new Promise((done) => child.on('exit', done));
    const stop = () => {
        child.kill();
        return gone;
    };
    try {
        const base = await new Promise((done, fail) => {
            let said = '';
            child.stdout.on('data', (text) => {
                said += text;
                const found = /http:\/\/\S+\//.exec(said);
                if (found) done(found[0]);
            });
            child.on('exit', () => fail(new Error(`the server ended: ${said}`)));
        });
        await deed(base, stop);
    } finally {
        await stop();
    }
}
