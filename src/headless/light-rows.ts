/**
 * Rows of light from a file, strictly: the heading `time_s,lux_a,lux_b`, then three numbers a line. Nothing is
 * guessed and no row is left out, because a take must be what its files say. Two rows at the same time are a jump.
 */
import type { LightProgram } from '../light/program.ts';
import type { Lux } from '../quantity/units.ts';
import { STRICT_HEADER } from '../words/light-log.ts';
import { takeWords } from '../words/take.ts';

/** Ten times the brightest sunlight. */
const MOST_LUX: Lux = 1e6;

export type RowsRead =
  | { readonly ok: true; readonly program: LightProgram }
  | { readonly ok: false; readonly sentence: string };

/** Reads a file's text. The sentence names the line, counted from 1. */
export function readRows(text: string): RowsRead {
  const [heading = '', ...lines] = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  if (heading.replaceAll(/[\s"]/g, '').toLowerCase() !== STRICT_HEADER)
    return wrong(takeWords.header(heading));
  const rows: (readonly [number, number, number])[] = [];
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const number = i + 2;
    const cells = line.split(',').map(numberIn);
    const [time, a, b] = cells;
    if (cells.length !== 3 || time == null || a == null || b == null)
      return wrong(takeWords.row(number, line));
    if (!inRange(a) || !inRange(b)) return wrong(takeWords.darkerThanDark(number, MOST_LUX));
    if (time < (rows.at(-1)?.[0] ?? time)) return wrong(takeWords.backwards(number));
    rows.push([time, a, b]);
  }
  if (rows.length === 0) return wrong(takeWords.noRows);
  return {
    ok: true,
    program: {
      kind: 'points',
      times: Float64Array.from(rows, ([time]) => time),
      lux: { A: Float64Array.from(rows, ([, a]) => a), B: Float64Array.from(rows, ([, , b]) => b) },
    },
  };
}

function wrong(sentence: string): RowsRead {
  return { ok: false, sentence };
}

function inRange(lux: Lux): boolean {
  return lux >= 0 && lux <= MOST_LUX;
}

function numberIn(cell: string): number | null {
  const read = cell.trim();
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(read) ? Number(read) : Number.NaN;
  return Number.isFinite(value) ? value : null;
}
