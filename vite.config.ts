/**
 * How Lampnote is built, served and tested.
 *
 * Two builds of one page: the normal one (`dist`, files beside each other) and, in mode `single`, one HTML file
 * (`dist-single/index.html`) that also plays when opened from a disk. Both carry a content policy that lets no
 * request leave the page. `vite preview` sends the same policy as a header.
 */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin, type Rolldown } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { defineConfig } from 'vitest/config';
import { thirdPartyNotices } from './src/headless/build-notices.ts';
import { figureSources } from './src/headless/build-sources.ts';

const fileOf = (name: string): string => fileURLToPath(new URL(name, import.meta.url)).replaceAll('\\', '/');
const start = fileOf('./src/main.ts');
const voiceWorklet = fileOf('./src/sound/voice.worklet.ts');
const target = 'es2022';

export default defineConfig(({ mode }) => {
  const single = mode === 'single';
  const notices = thirdPartyNotices(single);
  return {
    appType: 'mpa',
    base: './',
    plugins: [
      voiceWorkletUrl(single, notices.aside),
      notices.page,
      figureSources(fileOf('./tests/truth')),
      single && viteSingleFile(),
      !single && lateFilesInPage(),
      !single && oneFileBeside(),
      contentPolicyInPage(single),
      plainAddress(),
      assetsForEver(),
    ],
    worker: { plugins: () => [notices.aside()] },
    build: {
      target,
      outDir: single ? 'dist-single' : 'dist',
      emptyOutDir: true,
      reportCompressedSize: false,
      // The policy allows fonts and scripts as files of this origin only, so nothing small may become a data: URL.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rolldownOptions: {
        // How long a build takes says how busy the machine is, not that anything is wrong.
        checks: { bundlerTimings: false },
        ...(single ? {} : { output: { codeSplitting: { groups: [firstView()] } } }),
      },
    },
    // Look through every source file for packages at the start, so that no page reloads because one turns up late.
    optimizeDeps: { entries: ['index.html', 'src/**/*.ts'] },
    server: { host: 'localhost', headers: headersWith(developmentPolicy()) },
    preview: {
      host: 'localhost',
      port: 4173,
      strictPort: false,
      cors: false,
      headers: headersWith(`${builtPolicy(siteSources)}; frame-ancestors 'none'`),
    },
    test: {
      env: mode === 'soak' ? { SOAK: '1' } : {},
      projects: [
        {
          extends: true,
          test: {
            name: 'node',
            environment: 'node',
            // Quicker to start than processes of their own.
            pool: 'threads',
            maxWorkers: 2,
            include: ['tests/**/*.test.ts'],
            exclude: ['tests/browser/**'],
            // Patience for busy machines; nothing here asserts a time.
            testTimeout: 30_000,
            sequence: { groupOrder: 0 },
          },
        },
        {
          extends: true,
          test: {
            name: 'browser',
            environment: 'node',
            include: ['tests/browser/**/*.test.ts'],
            globalSetup: ['tests/browser/support/global-setup.ts'],
            // Most of the time these wait for sound and light in real time: two at once fit two cores.
            maxWorkers: 2,
            testTimeout: 60_000,
            hookTimeout: 120_000,
            sequence: { groupOrder: 1 },
          },
        },
      ],
    },
  };
});

/**
 * One file for all that the page needs before its first text: many small ones would cost a slow line a round trip for
 * every few of them. The start itself stays apart: it waits for a language, whose words import from that file.
 */
function firstView(): Rolldown.CodeSplittingGroup {
  let needed: Set<string> | null = null;
  return {
    debugName: 'first view',
    name: (id, modules) => {
      needed ??= importedBy(start, (one) => modules.getModuleInfo(one)?.importedIds ?? []);
      return needed.has(id) ? 'first' : null;
    },
  };
}

/** All that a module imports at once, and what that imports, itself apart. */
function importedBy(module: string, importsOf: (id: string) => readonly string[]): Set<string> {
  const found = new Set<string>();
  const visit = (id: string): void => {
    for (const one of importsOf(id)) {
      if (found.has(one)) continue;
      found.add(one);
      visit(one);
    }
  };
  visit(module);
  return found;
}

/**
 * Gives `virtual:voice-worklet`, the address from which the audio thread loads its module.
 *
 * Normally that is a file of the build. The one-file build carries the bundled text as a `data:` URL, since a page
 * opened from a disk may load an audio worklet from nowhere else.
 */
function voiceWorkletUrl(single: boolean, aside: () => Plugin): Plugin {
  const name = 'virtual:voice-worklet';
  return {
    name: 'voice-worklet-url',
    resolveId: (id) => (id === name ? `\0${name}` : null),
    async load(id) {
      if (id !== `\0${name}`) return null;
      if (!single) {
        return `import url from ${JSON.stringify(`${voiceWorklet}?worker&url`)};\nexport const workletUrl = url;`;
      }
      const code = JSON.stringify(await bundledText(voiceWorklet, aside()));
      return `export const workletUrl = 'data:text/javascript;charset=utf-8,' + encodeURIComponent(${code});`;
    },
  };
}

/** One script holding `entry` and all it imports. Throws what the bundler throws. */
async function bundledText(entry: string, plugin: Plugin): Promise<string> {
  const result = await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    plugins: [plugin],
    build: {
      target,
      write: false,
      modulePreload: false,
      rolldownOptions: { input: entry, output: { format: 'iife', codeSplitting: false } },
    },
  });
  const outputs = Array.isArray(result) ? result : [result];
  const [chunk] = outputs.flatMap((each) => ('output' in each ? each.output : []));
  if (chunk?.type !== 'chunk') throw new Error(`${entry} was not bundled into one script`);
  return chunk.code;
}

interface Sources {
  readonly script: string;
  readonly style: string;
  readonly font: string;
  readonly image: string;
  readonly worker: string;
  /** Names of the policies through which addresses and markup may pass. */
  readonly trusted: string;
}

const siteSources: Sources = {
  script: "'self'",
  style: "'self'",
  font: "'self'",
  image: "'self' data: blob:",
  // Long searches run in a worker; the one-file page has none and does them itself.
  worker: "'self'",
  trusted: 'lit-html lampnote-worker',
};

/**
 * The policy of a built page: it may show and play what it came with, and connect to nothing. The camera picture
 * reaches its `<video>` as an object, not an address, so no `media-src` is needed.
 * Lit's templates are the one trusted way from text to markup, and one policy lets the worker's address pass.
 */
function builtPolicy({ script, style, font, image, worker, trusted }: Sources): string {
  return [
    "default-src 'none'",
    `script-src ${script}`,
    `style-src ${style}`,
    `font-src ${font}`,
    `img-src ${image}`,
    "connect-src 'none'",
    `worker-src ${worker}`,
    "base-uri 'none'",
    "form-action 'none'",
    "require-trusted-types-for 'script'",
    `trusted-types ${trusted}`,
  ].join('; ');
}

/** While developing, Vite inserts `<style>` elements and keeps a connection of its own; the rest stays shut. */
function developmentPolicy(): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self' 'unsafe-inline'",
    "font-src 'self'",
    "img-src 'self' data: blob:",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

function headersWith(policy: string): Record<string, string> {
  return {
    'Content-Security-Policy': policy,
    'Permissions-Policy': 'camera=(self), microphone=(self), geolocation=()',
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
  };
}

/** Puts the one-file build beside the page, so that a page which may not sound where it is served can offer it. */
function oneFileBeside(): Plugin {
  let folder = '';
  return {
    name: 'one-file-beside',
    apply: 'build',
    configResolved: ({ root, build: { outDir } }) => {
      folder = path.resolve(root, outDir);
    },
    async closeBundle() {
      const result = await build({ mode: 'single', logLevel: 'error', build: { write: false } });
      const page = [result].flat().flatMap((each) => ('output' in each ? each.output : []))[0];
      if (page?.type !== 'asset') throw new Error('The one-file build made more than one file');
      await writeFile(path.join(folder, 'lampnote.html'), page.source);
    },
  };
}

/**
 * Lists in the page, in a template that fetches nothing, every script that the first view does without: those of the
 * page itself as modules, those of its threads to be put by. The page fetches them when it has nothing else to do.
 */
function lateFilesInPage(): Plugin {
  return {
    name: 'late-files-in-page',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const page = bundle['index.html'];
        if (page?.type !== 'asset') throw new Error('The build made no index.html to list the late files in');
        const html = String(page.source);
        const links = Object.values(bundle)
          .filter(({ fileName }) => fileName.endsWith('.js') && !html.includes(fileName))
          .toSorted((one, other) => one.type.localeCompare(other.type))
          .map(({ type, fileName }) => {
            const rel = type === 'chunk' ? 'modulepreload' : 'prefetch';
            return `<link rel="${rel}" href="./${fileName}" />`;
          });
        page.source = html.replace(
          '</body>',
          () => `<template id="late">${links.join('')}</template></body>`,
        );
      },
    },
  };
}

/** Writes the policy into the built page, after every other plugin has finished with its inline text. */
function contentPolicyInPage(single: boolean): Plugin {
  return {
    name: 'content-policy-in-page',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type !== 'asset' || !file.fileName.endsWith('.html')) continue;
          file.source = withPolicy(String(file.source), single);
        }
      },
    },
  };
}

/** The page with its policy as the first thing after its character set, ahead of all it governs. */
function withPolicy(page: string, single: boolean): string {
  // A browser hashes inline text after turning every line end into a line feed.
  const html = page.replaceAll(/\r\n?/g, '\n');
  const sources: Sources = single
    ? {
        script: `${hashesOf(html, 'script')} data:`,
        // Script text may hold `<style>` as a string, so it is set aside first.
        style: hashesOf(html.replaceAll(/<script\b[\s\S]*?<\/script>/g, ''), 'style') || "'none'",
        font: 'data:',
        image: 'data: blob:',
        worker: "'none'",
        trusted: 'lit-html',
      }
    : siteSources;
  const charset = '<meta charset="utf-8" />';
  if (!html.includes(charset))
    throw new Error(`index.html has no ${charset} to put the content policy behind`);
  const meta = `<meta http-equiv="Content-Security-Policy" content="${builtPolicy(sources)}" />`;
  return html.replace(charset, () => `${charset}\n    ${meta}`);
}

/** Hash sources of all inline elements of one kind, blank separated; the empty string when there is none. */
function hashesOf(html: string, element: 'script' | 'style'): string {
  const inline = new RegExp(`<${element}\\b[^>]*>([\\s\\S]*?)</${element}>`, 'g');
  return [...html.matchAll(inline)]
    .map((match) => match[1] ?? '')
    .filter((text) => text !== '')
    .map((text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`)
    .join(' ');
}

/**
 * What bears a hash in its name never changes: a browser that has it need not ask again, so that the threads of a loaded
 * page start although the network is away.
 */
function assetsForEver(): Plugin {
  return {
    name: 'assets-for-ever',
    configurePreviewServer(server) {
      const { root, build } = server.config;
      server.middlewares.use(({ url = '' }, response, next) => {
        if (url.startsWith('/assets/') && existsSync(path.resolve(root, build.outDir, `.${url}`)))
          response.setHeader('Cache-Control', 'public, max-age=31536000, immutable');
        next();
      });
    },
  };
}

/** Prints where the page is, and nothing else. */
function plainAddress(): Plugin {
  return {
    name: 'plain-address',
    configurePreviewServer(server) {
      server.printUrls = () => {
        const address = server.resolvedUrls?.local[0];
        process.stdout.write(`\n  Lampnote is ready at ${address}\n  Ctrl+C stops it.\n\n`);
      };
    },
  };
}
