// A screen without glass, for browsers that draw only where there is one: Xvfb, under the next number that is free, shared
// by all browsers of a run and ended with it.
import { spawn } from 'node:child_process';

let shown = null;

// The display's name, as DISPLAY wants it.
export function display() {
    shown ??= new Promise((done, fail) => {
        const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1600x1400x24', '-nolisten', 'tcp', '-noreset'],
            { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
        server.on('error', () => fail(new Error('Xvfb is missing; it is in the package xvfb')));
        server.on('exit', (code) => fail(new Error(`Xvfb ended (${code})`)));
        server.stdio[3].once('data', (number) => {
            server.unref();
            server.stdio[3].unref();
            done(`:${String(number).trim()}`);
        });
        process.on('exit', () => server.kill());
    });
    return shown;
}
