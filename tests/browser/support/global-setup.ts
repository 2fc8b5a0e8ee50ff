/**
 * Before the browser tests: finds a browser, makes both builds as `npm run build` would, and serves the normal one
 * and the sources. The tests read the addresses with `inject('house')`.
 */
import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { createServer, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { type Chromium, findChromium } from '../../../src/headless/chromium.ts';

export interface House {
  readonly chromium: Chromium;
  /** Address of the normal build as `npm start` serves it, ending in a slash. */
  readonly site: string;
  /** Address of the sources as `npm run dev` serves them, ending in a slash. */
  readonly sources: string;
  /** The one-file build, as opened from a disk. */
  readonly singleFile: string;
  readonly siteFolder: string;
  readonly singleFolder: string;
}

declare module 'vitest' {
  export interface ProvidedContext {
    house: House;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const chromium = await findChromium();
  const cache = path.resolve('node_modules/.cache');
  await mkdir(cache, { recursive: true });
  // A folder of its own, so that two runs at once do not build over each other.
  const folder = await mkdtemp(path.join(cache, 'lampnote-built-'));
  const siteFolder = path.join(folder, 'site');
  const singleFolder = path.join(folder, 'single');
  await viteBuild('--outDir', siteFolder);
  await viteBuild('--outDir', singleFolder, '--mode', 'single');

  const site = await preview({ logLevel: 'warn', build: { outDir: siteFolder }, preview: { port: 0 } });
  const sources = await createServer({
    logLevel: 'warn',
    // Its prepared packages, too, are its own: another server would declare them outdated.
    cacheDir: path.join(folder, 'packages'),
    server: { port: 0, hmr: false, watch: null },
  });
  await sources.listen();

  project.provide('house', {
    chromium,
    site: addressOf(site),
    sources: addressOf(sources),
    singleFile: pathToFileURL(path.join(singleFolder, 'index.html')).href,
    siteFolder,
    singleFolder,
  });
  return async () => {
    await Promise.all([site.close(), sources.close()]);
    await rm(folder, { recursive: true, force: true });
  };
}

/** Builds in a process without the test runner's variables, which would make it a development build. */
async function viteBuild(...settings: readonly string[]): Promise<void> {
  const vite = path.join(
    path.dirname(createRequire(import.meta.url).resolve('vite/package.json')),
    'bin/vite.js',
  );
  const { NODE_ENV: _, VITEST: __, ...env } = process.env;
  const { stderr } = await promisify(execFile)(
    process.execPath,
    [vite, 'build', '--logLevel', 'warn', ...settings],
    {
      env,
    },
  );
  if (stderr !== '') throw new Error(`The build warns:\n${stderr}`);
}

function addressOf(server: { resolvedUrls: { local: readonly string[] } | null }): string {
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The server has no local address');
  return address;
}
