/** A folder of built files over http on this computer, packed with gzip as a host would send them. */
import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { gzipSync } from 'node:zlib';

export interface Served {
  /** Ends in a slash. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

export async function serveFolder(folder: string): Promise<Served> {
  const packed = new Map<string, Buffer>();
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const file = path.join(folder, pathname === '/' ? 'index.html' : pathname);
    const type = TYPES[path.extname(file)];
    if (type === undefined || !file.startsWith(folder) || !existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    // Fonts are packed already.
    const isPacked = file.endsWith('.woff2');
    const bytes = packed.get(file) ?? (isPacked ? readFileSync(file) : gzipSync(readFileSync(file)));
    packed.set(file, bytes);
    response.writeHead(200, { 'Content-Type': type, ...(isPacked ? {} : { 'Content-Encoding': 'gzip' }) });
    response.end(bytes);
  });
  await new Promise<void>((listening) => server.listen(0, 'localhost', listening));
  return {
    address: `http://localhost:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
}
