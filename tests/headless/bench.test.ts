/** The bench's own tools, and that its figures are told where they should be: at its head, in the baseline, in the README. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { type Baseline, comparison, readmeWith } from '../../src/headless/bench-against.ts';
import { medianOf, quantileOf } from '../../src/headless/bench-clock.ts';
import { serveFolder } from '../../src/headless/serve-folder.ts';

const head = /\/\*\*[\s\S]*?\*\//.exec(readFileSync('src/headless/bench.ts', 'utf8'))![0];
const { machine, results } = JSON.parse(readFileSync('tests/bench-baseline.json', 'utf8')) as Baseline;

test('every figure of the baseline is told at the head of the bench, and every one told there is measured', () => {
  for (const key of Object.keys(results)) expect(head, key).toContain(`\`${key}\``);
  const told = [...head.matchAll(/`([a-z]+[A-Z]\w*)`/g)].map(([, name]) => name!);
  expect(told.length).toBeGreaterThan(30);
  const sources = ['tonePulse', 'nativeSeries'];
  expect(told.filter((name) => !(name in results) && !sources.includes(name))).toEqual([]);
});

test('the README’s table shows the baseline, and names its machine', () => {
  const readme = readFileSync('README.md', 'utf8');
  expect(readme).toContain(`Measured on ${machine}.`);
  const keys = [...readme.matchAll(/^\| `(\w+)` \| [\d.]+ \|/gm)].map(([, key]) => key!);
  expect(keys.length).toBeGreaterThan(15);
  expect(keys.filter((key) => typeof results[key] !== 'number')).toEqual([]);
  expect(readmeWith(readme, { machine, results })).toBe(readme);
});

test('a saved run writes its figures and its machine into the table, and nothing else', () => {
  const before =
    'Measured on a slow one.\n\n| key | measured |\n| `a` | 1 | x | 5 |\n| `b` | 2 | y | |\nText | `a` | 3 |';
  expect(readmeWith(before, { machine: 'a quick one', results: { a: 1234.56, other: 9 } })).toBe(
    'Measured on a quick one.\n\n| key | measured |\n| `a` | 1235 | x | 5 |\n| `b` | 2 | y | |\nText | `a` | 3 |',
  );
});

test('a comparison sets each number beside the one before, by its path, and shows what is new or gone', () => {
  expect(
    comparison({ a: 2, gone: 1, deep: { x: -90 } }, { a: 3, deep: { x: -95 }, fresh: 7, word: 'no number' }),
  ).toEqual([
    '        then  now',
    'a          2    3  × 1.50',
    'gone       1    –',
    'deep.x   -90  -95  × 1.06',
    'fresh      –    7',
  ]);
});

test('medians and quantiles are values that were measured', () => {
  expect(medianOf([5, 1, 3])).toBe(3);
  expect(quantileOf([4, 1, 3, 2], 0.99)).toBe(4);
  expect(() => medianOf([])).toThrow('Nothing was measured');
});

test('a folder is served packed, and nothing outside it', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'lampnote-served-'));
  mkdirSync(path.join(folder, 'site'));
  writeFileSync(path.join(folder, 'site/index.html'), '<p>in</p>');
  writeFileSync(path.join(folder, 'secret.txt'), 'out');
  const { address, close } = await serveFolder(path.join(folder, 'site'));
  try {
    const page = await fetch(address);
    expect(page.headers.get('content-encoding')).toBe('gzip');
    expect(await page.text()).toBe('<p>in</p>');
    for (const outside of ['..%2Fsecret.txt', '../secret.txt', 'none.js'])
      expect((await fetch(`${address}${outside}`)).status, outside).toBe(404);
  } finally {
    await close();
    rmSync(folder, { recursive: true, force: true });
  }
});
