/** The kit log, its CSV, what the next order learns from it, and what a document may hold of it. */
import * as v from 'valibot';
import { expect, test } from 'vitest';
import { BATCH_MOST, type Batch, batchSchema, DEFAULT_BATCH, type KitEntry } from '../../src/design/batch.ts';
import { csvRows } from '../../src/kit/csv.ts';
import {
  learnedLosses,
  logCsv,
  logRefusal,
  logSummary,
  readLogCsv,
  withEntry,
} from '../../src/kit/kit-log.ts';
import { orderOf } from '../../src/kit/order.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

const entry = (kit: number, change: Partial<KitEntry> = {}): KitEntry => ({
  kit,
  readings: [],
  fault: null,
  minutes: null,
  lost: [],
  ...change,
});

const LOG: readonly KitEntry[] = [
  entry(1, { minutes: 12.5, readings: [{ point: 'node A, lit', value: 0.76 }] }),
  entry(2, { fault: 'cell open A', minutes: 30, lost: [{ kind: 'cell', count: 2 }] }),
  entry(7, {
    fault: 'cell open A',
    readings: [
      { point: 'current, lit', value: 0.0161 },
      { point: 'mix, lit', value: -0.01 },
    ],
  }),
];

test('a log written as CSV is read back as it was', () => {
  expect(readLogCsv(logCsv(LOG))).toEqual({ ok: true, log: LOG });
  expect(readLogCsv(logCsv([]))).toEqual({ ok: true, log: [] });
});

test.each([
  ['name,fault\n', 1, null],
  ['kit,fault,minutes,readings,lost\nAnna,,,,', 2, 'kit'],
  ['kit,fault,minutes,readings,lost\n1,,,,\n2,,soon,,', 3, 'minutes'],
  ['kit,fault,minutes,readings,lost\n1,,,TP2: 3,', 2, 'readings'],
  ['kit,fault,minutes,readings,lost\n1,,,,spanner=1', 2, 'lost'],
])('a log that cannot be read is refused with its line: %j', (text, line, column) => {
  const read = readLogCsv(text);
  expect(read).toMatchObject({ ok: false, line, column });
  if (!read.ok) expect(logRefusal(read).length).toBeGreaterThan(20);
});

test('a log with more kits or readings than a document keeps is refused whole, and so is an amount out of range', () => {
  const head = 'kit,fault,minutes,readings,lost\n';
  const long = readLogCsv(head + '1,,,,\n'.repeat(BATCH_MOST.log + 1));
  expect(long).toEqual({ ok: false, most: BATCH_MOST.log });
  if (!long.ok) expect(logRefusal(long)).toContain('1000 kits');
  for (const cell of ['a=1; '.repeat(BATCH_MOST.readings).concat('b=2'), 'a=1e9', `${'n'.repeat(41)}=1`])
    expect(readLogCsv(`${head}1,,,${cell},`)).toMatchObject({ ok: false, line: 2, column: 'readings' });
  expect(readLogCsv(`${head}1,,,,cell=100001`)).toMatchObject({ ok: false, line: 2, column: 'lost' });
});

test('whatever a point or a fault is called, it is written as no formula and read back by the same name', () => {
  const named = (name: string) => [entry(3, { fault: name, readings: [{ point: name, value: 5 }] })];
  for (const name of [
    '=1+1',
    "'=1+1",
    "''@x",
    '+1',
    '-2',
    '\t=x',
    '\r=x',
    ' a',
    'a ',
    'a;b=c',
    '%003b',
    'a"b,c\n',
  ]) {
    const text = logCsv(named(name));
    expect(readLogCsv(text), text).toEqual({ ok: true, log: named(name) });
    for (const cell of csvRows(text.replaceAll("'", 'APOSTROPHE'))[1]!)
      expect(cell).not.toMatch(/^[=+\-@\t\r]/);
  }
});

test('an entry takes the place of the kit’s older one', () => {
  const log = withEntry(LOG, entry(2, { minutes: 5 }));
  expect(log.map(({ kit }) => kit)).toEqual([1, 2, 7]);
  expect(log[1]!.minutes).toBe(5);
});

test('the next order learns: lost cells raise their rate, unbroken resistors lower theirs', () => {
  const batch: Batch = { ...DEFAULT_BATCH, log: LOG };
  const learned = learnedLosses(BENCH_DESIGN, batch);
  // Three kits of two cells, two more lost on the way: (0.1·40 + 2)/(40 + 6 + 2).
  expect(learned.cell).toBeCloseTo(6 / 48, 12);
  expect(learned.resistor).toBeLessThan(DEFAULT_BATCH.losses.resistor);
  const cells = (losses: Batch['losses']) =>
    orderOf(BENCH_DESIGN, { ...batch, losses }).lines.find(({ spec }) => spec.kind === 'cell')!.withSpares!;
  expect(cells(learned)).toBeGreaterThan(cells(DEFAULT_BATCH.losses));
  expect(learnedLosses(BENCH_DESIGN, DEFAULT_BATCH)).toEqual(DEFAULT_BATCH.losses);
});

test('the summary counts what was right at once, the middle of the minutes, and the faults', () => {
  expect(logSummary(LOG)).toEqual({
    kits: 3,
    firstTimeRight: 1 / 3,
    medianMinutes: 21.25,
    faults: [{ fault: 'cell open A', count: 2 }],
  });
  expect(logSummary([])).toMatchObject({ firstTimeRight: null, medianMinutes: null });
});

test('a document’s batch is taken whole, or refused with what would be accepted', () => {
  const full: Batch = {
    ...DEFAULT_BATCH,
    log: LOG,
    lines: [{ key: 'jack', stock: 3, packSize: 10, packPrice: null }],
  };
  expect(v.parse(batchSchema, JSON.parse(JSON.stringify(full)))).toEqual(full);
  const refused = (change: object) => v.safeParse(batchSchema, { ...DEFAULT_BATCH, ...change });
  for (const change of [
    { kits: 0 },
    { kits: 2.5 },
    { region: 'mars' },
    { losses: { ...DEFAULT_BATCH.losses, cell: 0.9 } },
    { log: [{ ...LOG[0], name: 'no' }] },
    { lines: 'none' },
    { board: { ...DEFAULT_BATCH.board, strips: 1 } },
  ]) {
    const result = refused(change);
    expect(result.success, JSON.stringify(change)).toBe(false);
    if (!result.success) expect(JSON.parse(result.issues[0]!.message)).toHaveProperty('kind');
  }
  expect(refused({ lines: 'none' }).issues?.[0]?.message).toBe(JSON.stringify({ kind: 'list', most: 200 }));
});
