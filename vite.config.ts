/**
 * How Lampnote is built, served and tested.
 *
 * Two builds of one page: the normal one (`dist`, files beside each other) and, in mode `single`, one HTML file
 * (`dist-single/index.html`) that also plays when opened from a disk. Both carry a content policy that lets no
 * request leave the page. `vite preview` sends the same policy as a header.
 */
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { defineConfig } from 'vitest/config';
import { assetsForEver, firstView, lateFilesInPage, oneFileBeside } from './src/headless/build-files.ts';
import { thirdPartyNotices } from './src/headless/build-notices.ts';
import {
  contentPolicyInPage,
  developmentPolicy,
  headersWith,
  servedPolicy,
} from './src/headless/build-policy.ts';
import { figureSources } from './src/headless/build-sources.ts';
import { voiceWorkletUrl } from './src/headless/build-worklet.ts';

const fileOf = (name: string): string => fileURLToPath(new URL(name, import.meta.url)).replaceAll('\\', '/');
const start = fileOf('./src/main.ts');
const voiceWorklet = fileOf('./src/sound/voice.worklet.ts');
const target = 'es2022';

export default defineConfig(({ mode }) => {
  const single = mode === 'single';
  const soak = soakFrom(mode);
  const notices = thirdPartyNotices(single);
  return {
    appType: 'mpa',
    base: './',
    plugins: [
      voiceWorkletUrl(voiceWorklet, target, single, notices.aside),
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
        ...(single ? {} : { output: { codeSplitting: { groups: [firstView(start)] } } }),
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
      headers: headersWith(servedPolicy()),
    },
    test: {
      env: soak,
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
            testTimeout: 'SOAK' in soak ? 3_600_000 : 30_000,
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

/** `--mode soak`: the long tests in full. `--mode soak-123`: of those, seed 123 alone. */
function soakFrom(mode: string): Record<string, string> {
  const [kind, seed] = mode.split('-');
  if (kind !== 'soak') return {};
  if (seed !== undefined && !/^\d+$/.test(seed))
    throw new Error(`--mode ${mode}: after “soak-” stands a seed, a whole number such as 123`);
  return { SOAK: '1', ...(seed === undefined ? {} : { SOAK_SEED: seed }) };
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
