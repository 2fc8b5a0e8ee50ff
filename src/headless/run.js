/**
 * Starts a program of this folder in Node: `node src/headless/run.js take …`. The sources are TypeScript, which the
 * oldest Node this project allows does not read, so Vite's bundler first makes one script of them.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const PROGRAMS = {
  take: new URL('./take.ts', import.meta.url),
  bench: new URL('./bench.ts', import.meta.url),
  truth: new URL('./truth.ts', import.meta.url),
  pictures: new URL('./pictures.ts', import.meta.url),
};

const root = fileURLToPath(new URL('../..', import.meta.url));
const [name, ...args] = process.argv.slice(2);
const entry = PROGRAMS[name];
if (entry === undefined) throw new Error(`run.js starts one of: ${Object.keys(PROGRAMS).join(', ')}`);

// Within node_modules, so that the script finds the packages it imports.
const cache = path.join(root, 'node_modules/.cache');
mkdirSync(cache, { recursive: true });
const folder = mkdtempSync(path.join(cache, `lampnote-${name}-`));
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));

await build({
  root,
  configFile: false,
  publicDir: false,
  logLevel: 'error',
  build: { ssr: fileURLToPath(entry), outDir: folder, target: 'node20', minify: false },
});
const { main } = await import(pathToFileURL(path.join(folder, `${name}.js`)).href);

// npm starts a script in the project's folder and keeps the person's own in INIT_CWD.
const asked = process.env.npm_lifecycle_event === name ? process.env.INIT_CWD : undefined;
process.exitCode = await main(args, {
  folder: asked ?? process.cwd(),
  say: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
});
