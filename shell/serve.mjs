// node serve.mjs FOLDER [PORT]: serves the hosted copy to this machine only; takes the next free port if the
// wanted one is in use. For trying the page out: no caching, no compression, no other host.
import { createServer } from 'node:http';
import { readFileSync } from 'node:fs';
import { extname, join, normalize, resolve, sep } from 'node:path';

const folder = resolve(process.argv[2] ?? '.');
const wanted = Number(process.argv[3] ?? 8321);
const kinds = {
    '.html': 'text/html; charset=utf-8',
    '.js': 'text/javascript; charset=utf-8',
    '.webmanifest': 'application/manifest+json',
    '.png': 'image/png',
    '.svg': 'image/svg+xml',
};

const server = createServer((request, response) => {
    let path;
    try {
        path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
    } catch {
        response.writeHead(400).end();
        return;
    }
    const file = normalize(join(folder, path.endsWith('/') ? `${path}index.html` : path));
    if (!file.startsWith(folder + sep) || !['GET', 'HEAD'].includes(request.method)) {
        response.writeHead(403).end();
        return;
    }
    let bytes;
    try {
        bytes = readFileSync(file);
    } catch {
        response.writeHead(404, { 'Content-Type': 'text/plain' }).end('Not here.\n');
        return;
    }
    response.writeHead(200, {
        'Content-Type': kinds[extname(file)] ?? 'application/octet-stream',
        'Cache-Control': 'no-store',
    });
    response.end(request.method === 'HEAD' ? undefined : bytes);
});

let port = wanted;
server.on('error', (error) => {
    if (error.code === 'EADDRINUSE' && port < wanted + 100) {
        port += 1;
        server.listen(port, '127.0.0.1');
    } else {
        console.error(`serve: ${error.message}`);
        process.exit(1);
    }
});
server.on('listening', () => console.log(`Tarebench is at http://localhost:${port}/ (Ctrl-C ends it)`));
server.listen(port, '127.0.0.1');
