/**
 * Published figures against the product's own functions. Every row of `truth/*.json` names its source, its inputs,
 * the figures expected there and how far the product may be from them. A row of an unknown kind, or one whose
 * figures the evaluator does not give, fails.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { publishedIds, type Row, readRow, valuesFor } from './truth/evaluators.ts';

const folder = new URL('./truth/', import.meta.url);
const rows: readonly Row[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .flatMap((name) =>
    (JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as unknown[]).map((value, i) =>
      readRow(value, `${name}, row ${i + 1}`),
    ),
  );

const ran = new Set<Row>();

for (const row of rows) {
  test(`${row.id}: ${row.what} (${row.source})`, () => {
    const values = valuesFor(row);
    for (const [name, expected] of Object.entries(row.expected)) {
      const value = values[name];
      expect(value, `${name} is given by the evaluator of "${row.kind}"`).toBeTypeOf('number');
      const off = Math.abs(value! - expected);
      const allowed =
        'relative' in row.allowed ? row.allowed.relative * Math.abs(expected) : row.allowed.absolute;
      expect(off, `${name}: ${value} against ${expected} (${row.unit})`).toBeLessThanOrEqual(allowed);
    }
    ran.add(row);
  });
}

test('no row was skipped, and none stands twice', () => {
  expect([...ran]).toEqual(rows);
  expect(new Set(rows.map(({ id, what }) => `${id} ${what}`)).size).toBe(rows.length);
});

test('at least sixty published rows about electronics ran, and thirty about light and sound', () => {
  const { el, ls } = publishedIds(ran);
  expect(el).toBeGreaterThanOrEqual(60);
  expect(ls).toBeGreaterThanOrEqual(30);
});

test('a row that is wrong by more than its allowance would be noticed', () => {
  const row = rows.find(({ id }) => id === 'el:A1')!;
  const { frequency } = valuesFor(row) as { frequency: number };
  expect(Math.abs(frequency / 872.727 - 1)).toBeGreaterThan(1e-4);
});
