/**
 * The one arrow between the rooms, and what each file-name suffix may import. The checker reads a map from file
 * to text, so that it can itself be tested on houses that break the rules.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const rooms = 'quantity words parts design circuit light sound plan kit lesson app views main.ts'.split(' ');
/** Rooms whose files without a suffix may not meet the browser. */
const pureRooms = [...rooms.slice(0, rooms.indexOf('app')), 'headless'];
const virtualModules = new Map([['virtual:voice-worklet', 'sound/voice.worklet.ts']]);

type House = ReadonlyMap<string, string>;
type Suffix = '' | 'worklet' | 'worker' | 'device';

const withoutComments = (code: string): string => code.replaceAll(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, '');
const roomOf = (file: string): string => file.split('/')[0] ?? '';
/** `headless` stands beside `app`: one step left of the views. */
const placeOf = (room: string): number => rooms.indexOf(room === 'headless' ? 'app' : room);
const suffixOf = (file: string): Suffix =>
  (/\.(worklet|worker|device)\.ts$/.exec(file)?.[1] as Suffix | undefined) ?? '';

/** What a file imports, in whatever form: names as written. */
function importsOf(code: string): readonly string[] {
  const forms = /(?:\bfrom|\bimport|\bimport\s*\(|\bnew URL\s*\()\s*(['"`])([^'"`]+)\1/g;
  return [...withoutComments(code).matchAll(forms)].map((match) => match[2] ?? '');
}

/** The file within src that an import means; null for a package or a file outside src. */
function fileOf(name: string, importer: string): string | null {
  const virtual = virtualModules.get(name);
  if (virtual !== undefined) return virtual;
  const [plain = ''] = name.split('?');
  if (!/^\.{0,2}\//.test(plain)) return null;
  const file = plain.startsWith('/src/')
    ? plain.slice('/src/'.length)
    : path.posix.join(path.posix.dirname(importer), plain);
  return file.startsWith('..') ? null : file;
}

/** One sentence for every broken rule. Paths are relative to src. */
function faultsOf(house: House): readonly string[] {
  return [...house].flatMap(([file, code]) => {
    const place = placeOf(roomOf(file));
    if (place < 0) return [`${file} is in no known room`];
    const faults = importsOf(code).flatMap((name) => [
      ...packageFaults(file, name),
      ...fileFaults(file, name, fileOf(name, file)),
    ]);
    const text = withoutComments(code);
    if (suffixOf(file) === 'worklet' && /^\s*export\b/m.test(text)) faults.push(`${file} exports something`);
    if (file === 'main.ts' && code.trimEnd().split('\n').length >= 40)
      faults.push('main.ts has 40 lines or more');
    return faults;
  });
}

function packageFaults(file: string, name: string): readonly string[] {
  const faults: string[] = [];
  const isSoundPackage = /^(tone|standardized-audio-context)(\/|$)/.test(name);
  if (isSoundPackage && roomOf(file) === 'views') faults.push(`${file} is a view and imports ${name}`);
  // The index makes an audio context and a blob worker as soon as it is imported.
  if (name === 'tone') faults.push(`${file} imports the index of tone`);
  return faults;
}

function fileFaults(file: string, name: string, imported: string | null): readonly string[] {
  if (imported === null) return [];
  const faults: string[] = [];
  const [from, to] = [roomOf(file), roomOf(imported)];
  const isLeft = placeOf(to) < placeOf(from) && (to !== 'headless' || from === 'headless');
  const isBeside = from === 'headless' && to === 'app';
  if (to !== from && !isLeft && !isBeside)
    faults.push(`${file} imports ${imported}, which is not to its left`);

  const [own, other] = [suffixOf(file), suffixOf(imported)];
  const isPure = own === '' && pureRooms.includes(from);
  if (isPure && other !== '') faults.push(`${file} is pure and imports ${imported}`);
  if (!isPure && other === 'device' && ['worklet', 'worker'].includes(own)) {
    faults.push(`${file} has no browser hardware and imports ${imported}`);
  }
  // Only the virtual module has the right address in the one-file build too.
  if (other === 'worklet' && !virtualModules.has(name))
    faults.push(`${file} imports ${imported} by its path`);
  return faults;
}

function sourceHouse(): House {
  const root = path.resolve('src');
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).map((file) =>
    file.replaceAll('\\', '/'),
  );
  const sources = files.filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'));
  return new Map(sources.map((file) => [file, readFileSync(path.join(root, file), 'utf8')]));
}

test('every source file keeps to the rooms and the suffix rules', () => {
  const house = sourceHouse();
  expect(house.size).toBeGreaterThan(20);
  expect(faultsOf(house)).toEqual([]);
});

test('main.ts and the voice worklet stand where the build looks for them', () => {
  expect([...sourceHouse().keys()]).toEqual(expect.arrayContaining(['main.ts', ...virtualModules.values()]));
});

test('a house that keeps the rules is not accused', () => {
  const house = new Map([
    ['quantity/units.ts', 'export type Ohms = number;'],
    ['circuit/astable.ts', "import type { Ohms } from '../quantity/units.ts';"],
    [
      'sound/voice.worklet.ts',
      "import '../circuit/astable.ts';\n// export nothing: import '../views/page.ts'",
    ],
    [
      'sound/player.device.ts',
      "import { workletUrl } from 'virtual:voice-worklet';\nimport 'tone/build/esm/classes.js';",
    ],
    ['app/live.ts', "const player = await import('../sound/player.device.ts');"],
    ['headless/take.ts', "import { derived } from '../app/live.ts';"],
    [
      'views/page.ts',
      "import '../app/live.ts';\nimport './controls/dial.ts';\nimport text from './page.css?inline';",
    ],
    ['main.ts', "import './views/page.ts';"],
  ]);
  expect(faultsOf(house)).toEqual([]);
});

test.each([
  ['an import to the right', 'circuit/a.ts', "import { b } from '../sound/b.ts';", 'not to its left'],
  ['a type import to the right', 'parts/a.ts', "import type { B } from '../design/b.ts';", 'not to its left'],
  ['a type named in passing', 'parts/a.ts', "let b: import('../design/b.ts').B;", 'not to its left'],
  [
    'an import over several lines',
    'parts/a.ts',
    "import {\n  b,\n} from '../design/b.ts';",
    'not to its left',
  ],
  ['a bare import', 'words/a.ts', "import '../views/b.ts';", 'not to its left'],
  ['a passed-on name', 'light/a.ts', "export * from '../app/b.ts';", 'not to its left'],
  ['a late import', 'light/a.ts', "await import('../app/b.ts');", 'not to its left'],
  ['a worker started by address', 'kit/a.ts', "new URL('../app/b.ts', import.meta.url)", 'not to its left'],
  ['an import from the root', 'light/a.ts', "import '/src/app/b.ts';", 'not to its left'],
  ['anything that imports main.ts', 'views/a.ts', "import '../main.ts';", 'not to its left'],
  ['a command line that imports a view', 'headless/a.ts', "import '../views/b.ts';", 'not to its left'],
  ['an app that imports the command line', 'app/a.ts', "import '../headless/b.ts';", 'not to its left'],
  ['a view that imports the command line', 'views/a.ts', "import '../headless/b.ts';", 'not to its left'],
  ['a pure file that meets the hardware', 'sound/a.ts', "import './b.device.ts';", 'is pure'],
  ['a pure file that names a worker', 'plan/a.ts', "import url from './b.worker.ts?worker&url';", 'is pure'],
  ['a pure file that names the worklet', 'sound/a.ts', "import 'virtual:voice-worklet';", 'is pure'],
  ['a command line that meets the hardware', 'headless/a.ts', "import '../light/b.device.ts';", 'is pure'],
  [
    'an audio thread that meets the hardware',
    'sound/a.worklet.ts',
    "import './b.device.ts';",
    'no browser hardware',
  ],
  [
    'a worker that meets the hardware',
    'plan/a.worker.ts',
    "import '../light/b.device.ts';",
    'no browser hardware',
  ],
  [
    'a worklet named by its path',
    'sound/a.device.ts',
    "import u from './b.worklet.ts?worker&url';",
    'by its path',
  ],
  ['a worklet that exports', 'sound/a.worklet.ts', 'export const b = 1;', 'exports something'],
  ['a view that imports tone', 'views/a.ts', "import 'tone/build/esm/classes.js';", 'is a view'],
  ['a view that imports the audio types', 'views/a.ts', "import 'standardized-audio-context';", 'is a view'],
  ['the index of tone', 'sound/a.device.ts', "import { Gain } from 'tone';", 'the index of tone'],
  ['a long main.ts', 'main.ts', 'start();\n'.repeat(40), '40 lines'],
  ['a file in no room', 'helpers/a.ts', '', 'no known room'],
])('%s is found', (_title, file, code, fault) => {
  expect(faultsOf(new Map([[file, code]]))).toEqual([expect.stringContaining(fault)]);
});
