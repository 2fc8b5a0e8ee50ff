/**
 * `npm run test:truth`: every published row against the product's own functions, each figure with its error and what
 * it is allowed. Exit code 1 when a figure is further off than that.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { publishedIds, type Row, readRow, valuesFor } from '../../tests/truth/evaluators.ts';
import type { Surroundings } from './take.ts';

interface Held {
  readonly line: string;
  readonly holds: boolean;
}

export function main(_args: readonly string[], { say }: Surroundings): number {
  const rows = readdirSync('tests/truth')
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => {
      const file = JSON.parse(readFileSync(path.join('tests/truth', name), 'utf8')) as unknown[];
      return file.map((value, i) => readRow(value, `${name}, row ${i + 1}`));
    });
  const held = rows.flatMap(heldIn);
  for (const { line } of held) say(`${line}\n`);
  const missed = held.filter(({ holds }) => !holds).length;
  const { el, ls } = publishedIds(rows);
  say(`Published ids: ${el} about electronics, ${ls} about light and sound.\n`);
  say(`${rows.length} rows, ${held.length} figures, ${missed} further off than allowed.\n`);
  return missed === 0 ? 0 : 1;
}

/** One line for each figure of a row. */
function heldIn(row: Row): readonly Held[] {
  const values = valuesFor(row);
  return Object.entries(row.expected).map(([name, expected]) => {
    const value = values[name] ?? Number.NaN;
    const isRelative = 'relative' in row.allowed;
    const error = Math.abs(value - expected) / (isRelative ? Math.abs(expected) : 1);
    const allowed = 'relative' in row.allowed ? row.allowed.relative : row.allowed.absolute;
    const holds = error <= allowed;
    const unit = isRelative ? '' : ` ${row.unit}`;
    return {
      holds,
      line: [
        holds ? 'holds ' : 'MISSES',
        row.id.padEnd(14),
        `error ${error.toExponential(1)}${unit} of ${allowed.toExponential(1)}${unit}`.padEnd(38),
        `${name} ${value.toPrecision(6)} against ${expected} (${row.unit}) · ${row.what} · ${row.source}`,
      ].join('  '),
    };
  });
}
