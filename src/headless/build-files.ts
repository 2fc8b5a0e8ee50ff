/** Which files the build makes, in what order a page fetches them, and how long a browser may keep them. */
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { build, type Plugin, type Rolldown } from 'vite';

/**
 * One file for all that the page needs before its first text: many small ones would cost a slow line a round trip for
 * every few of them. The start itself stays apart: it waits for a language, whose words import from that file.
 */
export function firstView(start: string): Rolldown.CodeSplittingGroup {
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

/** Puts the one-file build beside the page, so that a page which may not sound where it is served can offer it. */
export function oneFileBeside(): Plugin {
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
export function lateFilesInPage(): Plugin {
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

/**
 * What bears a hash in its name never changes: a browser that has it need not ask again, so that the threads of a loaded
 * page start although the network is away.
 */
export function assetsForEver(): Plugin {
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
