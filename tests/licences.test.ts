/** Every package of the lock file may be used here: those that reach a visitor under permissive licences alone. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

interface Entry {
  readonly license?: string;
  readonly dev?: boolean;
}

const PERMISSIVE = new Set(
  'MIT ISC 0BSD BSD-2-Clause BSD-3-Clause Apache-2.0 BlueOak-1.0.0 CC0-1.0 Unlicense OFL-1.1'.split(' '),
);
/** Copyleft for the files of the tool itself: no hindrance to a tool that no visitor is given. */
const TOOLS_ONLY = new Set(['MPL-2.0']);
/** Named by nothing but the text of the package's licence file. */
const READ_IN_TEXT = new Map([['suncalc', 'BSD-2-Clause']]);

/** Whether a licence expression (SPDX: `OR`, `AND`, brackets) can be met with licences that are allowed. */
function isAllowed(expression: string, allowed: (licence: string) => boolean): boolean {
  const tokens = expression.match(/\(|\)|[^\s()]+/g) ?? [];
  let at = 0;
  const term = (): boolean => {
    const token = tokens[at++];
    if (token !== '(') return token !== undefined && allowed(token);
    const inner = any();
    return tokens[at++] === ')' && inner;
  };
  const every = (): boolean => {
    let met = term();
    while (tokens[at] === 'AND') {
      at += 1;
      met = term() && met;
    }
    return met;
  };
  const any = (): boolean => {
    let met = every();
    while (tokens[at] === 'OR') {
      at += 1;
      met = every() || met;
    }
    return met;
  };
  return any() && at === tokens.length;
}

/** One line for each entry whose licence is not allowed. Keys are folders, as in a lock file. */
function refused(packages: Readonly<Record<string, Entry>>): readonly string[] {
  return Object.entries(packages).flatMap(([folder, { license, dev }]) => {
    const name = folder.replace(/^.*node_modules\//, '');
    const licence = license ?? READ_IN_TEXT.get(name) ?? 'none';
    const allowed = (one: string) => PERMISSIVE.has(one) || (dev === true && TOOLS_ONLY.has(one));
    return isAllowed(licence, allowed) ? [] : [`${name}: ${licence}`];
  });
}

const { '': _, ...locked } = (
  JSON.parse(readFileSync('package-lock.json', 'utf8')) as { packages: Record<string, Entry> }
).packages;

test('the lock file holds permitted licences only', () => {
  expect(Object.keys(locked).length).toBeGreaterThan(100);
  expect(refused(locked)).toEqual([]);
});

test('what is installed says the same as the lock file', () => {
  const installed = Object.entries(locked).filter(([folder]) =>
    existsSync(path.join(folder, 'package.json')),
  );
  expect(installed.length).toBeGreaterThan(100);
  const told = installed.map(([folder]) => {
    const { license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as Entry;
    return [folder, license];
  });
  expect(told).toEqual(installed.map(([folder, { license }]) => [folder, license]));
});

test('a licence read in its text is the one of that name', () => {
  const text = readFileSync('node_modules/suncalc/LICENSE', 'utf8').replaceAll(/\s+/g, ' ');
  // The two conditions of BSD-2-Clause, and not the third of its longer sister.
  expect(text).toContain('Redistributions of source code must retain the above copyright notice');
  expect(text).toContain('Redistributions in binary form must reproduce the above copyright notice');
  expect(text).not.toMatch(/endorse or promote/);
  expect([...READ_IN_TEXT.keys()]).toEqual(['suncalc']);
});

test.each<[string, Entry, boolean]>([
  ['a permissive one', { license: 'MIT' }, true],
  ['a choice with a permissive one', { license: '(GPL-3.0-only OR MIT)' }, true],
  ['two permissive ones together', { license: 'MIT AND (CC0-1.0 OR GPL-2.0-only)' }, true],
  ['one that has to be kept beside a permissive one', { license: 'MIT AND GPL-3.0-only' }, false],
  ['one for a tool', { license: 'MPL-2.0', dev: true }, true],
  ['the same for what a visitor gets', { license: 'MPL-2.0' }, false],
  ['none', {}, false],
  ['a file of its own', { license: 'SEE LICENSE IN LICENSE.md' }, false],
  ['half an expression', { license: '(MIT' }, false],
])('%s is judged rightly', (_title, entry, right) => {
  expect(refused({ 'node_modules/some/node_modules/@a/b': entry })).toHaveLength(right ? 0 : 1);
});
