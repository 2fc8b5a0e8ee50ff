/**
 * Whose work a build holds, and under which licences: the page's own, then every package of which at least one line or
 * font was really bundled, with the licence text it came with. A package without one stops the build.
 */

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Plugin, Rolldown } from 'vite';
import about from '../../package.json' with { type: 'json' };

/** The text as a file beside the page; the one-file build holds it inside alone. */
const NOTICES_FILE = 'third-party-notices.txt';

const MODULE = 'virtual:this-build';
/**
 * Stands for the text until all that is bundled is known. It names the state of all packages, so that the file that
 * holds it takes another name, too, when their licences may have changed.
 */
const LATER = `notices of ${digestOf('package-lock.json')}`;
const RULE = `\n${'-'.repeat(78)}\n`;

const OWN = `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the "Software"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;

export interface NoticePlugins {
  /** For the page's own bundle: gathers, and puts the text in. */
  readonly page: Plugin;
  /** For each bundle made on the side (workers, the audio thread's module): gathers. A new one each time. */
  readonly aside: () => Plugin;
}

type Bundle = Rolldown.OutputBundle;

export function thirdPartyNotices(single: boolean): NoticePlugins {
  const folders = new Set<string>();
  const gather = (bundle: Bundle): void => {
    for (const id of bundledModules(bundle)) {
      const folder = packageFolder(id);
      if (folder !== null) folders.add(folder);
    }
  };
  let isBuild = false;
  return {
    aside: () => ({
      name: 'packages-bundled-aside',
      generateBundle: (_options, bundle) => gather(bundle),
    }),
    page: {
      name: 'third-party-notices',
      enforce: 'pre',
      configResolved: ({ command }) => {
        isBuild = command === 'build';
      },
      resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
      load: (id) => (id === `\0${MODULE}` ? moduleText(isBuild, single) : null),
      // Fonts are named by style sheets, not by modules.
      transform: (code, id) => {
        if (/\.css(\?|$)/.test(id)) for (const folder of fontFolders(code)) folders.add(folder);
      },
      generateBundle: {
        order: 'pre',
        handler(_options, bundle) {
          gather(bundle);
          const text = noticesFor(folders);
          putIn(bundle, text);
          if (!single) this.emitFile({ type: 'asset', fileName: NOTICES_FILE, source: text });
        },
      },
    },
  };
}

function moduleText(isBuild: boolean, single: boolean): string {
  // While developing nothing is bundled; what the page depends on by name comes nearest.
  const notices = isBuild ? LATER : noticesFor(Object.keys(about.dependencies).map(folderOfPackage));
  const told = { version: about.version, notices, noticesFile: isBuild && !single ? NOTICES_FILE : null };
  return Object.entries(told)
    .map(([name, value]) => `export const ${name} = ${JSON.stringify(value)};`)
    .join('\n');
}

/** The text in place of what stood for it. */
function putIn(bundle: Bundle, text: string): void {
  let places = 0;
  for (const part of Object.values(bundle)) {
    if (part.type !== 'chunk') continue;
    part.code = part.code.replaceAll(new RegExp(`(["'\`])${LATER}\\1`, 'g'), () => {
      places += 1;
      return JSON.stringify(text);
    });
  }
  if (places === 0) throw new Error('No part of the page asks for the third-party notices');
}

/** Modules of which at least one character came into the bundle. */
const bundledModules = (bundle: Bundle): readonly string[] =>
  Object.values(bundle).flatMap((part) =>
    part.type === 'chunk'
      ? Object.entries(part.modules).flatMap(([id, { renderedLength }]) => (renderedLength > 0 ? [id] : []))
      : [],
  );

/** The text for packages by their folders, in order of their names; those with the same text stand together. */
export function noticesFor(folders: Iterable<string>): string {
  const byText = new Map<string, string[]>();
  for (const folder of [...folders].sort()) {
    const { name, version, licence } = packageIn(folder);
    const text = licenceText(folder);
    byText.set(text, [
      ...(byText.get(text) ?? []),
      `${name} ${version}${licence === null ? '' : `, ${licence}`}`,
    ]);
  }
  const own = `Lampnote ${about.version}, ${about.license}\n\nCopyright (c) the authors of Lampnote\n\n${OWN}\n`;
  const others = [...byText].map(([text, names]) => `${names.join('\n')}\n\n${text}\n`);
  return [own, ...others].join(RULE);
}

/** The innermost package that a module belongs to; null for the page's own. What the bundler adds is the bundler's. */
function packageFolder(id: string): string | null {
  const added = /^\0(vite|rolldown)\//.exec(id)?.[1];
  if (added !== undefined) return folderOfPackage(added);
  const plain = id.replaceAll('\\', '/').replace(/^\0/, '');
  return /^.*\/node_modules\/(?:@[^/]+\/)?[^/?]+/.exec(plain)?.[0] ?? null;
}

const fontFolders = (css: string): readonly string[] =>
  [...css.matchAll(/url\(\s*["']?((?:@[\w.-]+\/)?\w[\w.-]*)\/[^)]*\.woff2?["']?\s*\)/g)].map((match) =>
    folderOfPackage(match[1]!),
  );

/** Where the package manager put a package this one depends on. */
function folderOfPackage(name: string): string {
  const places = createRequire(import.meta.url).resolve.paths(name) ?? [];
  const folder = places.map((place) => path.join(place, name)).find((each) => existsSync(each));
  if (folder === undefined) throw new Error(`The package ${name} is not installed`);
  return folder.replaceAll('\\', '/');
}

interface Named {
  readonly name: string;
  readonly version: string;
  readonly licence: string | null;
}

function packageIn(folder: string): Named {
  const told: Record<string, unknown> = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const { name, version, license } = told;
  if (typeof name !== 'string' || typeof version !== 'string')
    throw new Error(`${folder}/package.json tells no name or version`);
  return { name, version, licence: typeof license === 'string' ? license : null };
}

/** The text of a package's licence file, else what its README says of the licence. */
function licenceText(folder: string): string {
  const files = readdirSync(folder).sort();
  const file = files.find((each) => /^licen[cs]e(\.|$)/i.test(each));
  // A bundler's file goes on with the licences of what it is itself made of.
  if (file !== undefined)
    return read(folder, file)
      .split(/^# Licenses of bundled dependencies/m)[0]!
      .trim();
  const readme = files.find((each) => /^readme(\.|$)/i.test(each));
  const section =
    readme === undefined ? undefined : /^#+ *licen[cs]e\s*$([\s\S]*)/im.exec(read(folder, readme))?.[1];
  if (section === undefined) throw new Error(`${folder} comes without a licence text`);
  return section.split(/^#+ /m)[0]!.trim();
}

const read = (folder: string, file: string): string =>
  readFileSync(path.join(folder, file), 'utf8').replaceAll(/\r\n?/g, '\n');

function digestOf(file: string): string {
  const bytes = readFileSync(new URL(`../../${file}`, import.meta.url));
  return createHash('sha256').update(bytes).digest('hex');
}
