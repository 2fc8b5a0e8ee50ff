/** Changes of the batch: what they change, and that what changes nothing gives the same object. */
import { expect, test } from 'vitest';
import { DEFAULT_BATCH } from '../../src/design/batch.ts';
import {
  inBatch,
  keepFree,
  kitEntry,
  noteLine,
  prepareStep,
  setBatch,
  setLoss,
  setLosses,
  setMinutes,
  setWorkshop,
  takeLog,
  wishBoard,
  writeKit,
  writeReading,
} from '../../src/design/batch-commands.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

const batch = DEFAULT_BATCH;

test('a change that changes nothing leaves the very same batch and design', () => {
  for (const command of [
    setBatch({ kits: 30, region: 'eu' }),
    setLoss('chip', batch.losses.chip),
    setLosses({ ...batch.losses }),
    noteLine('resistor 4700', { stock: 0 }),
    wishBoard({ sockets: true, size: null }),
    keepFree({ strip: 1, hole: 1 }, false),
    writeKit(3, { minutes: null }),
    writeReading(3, 'TP1', null),
    takeLog([]),
    setWorkshop({ helpers: 3 }),
    setMinutes('perCut', 1),
    prepareStep('cuts', false),
  ]) {
    expect(command(batch)).toBe(batch);
    expect(inBatch(command)(BENCH_DESIGN)).toBe(BENCH_DESIGN);
  }
});

test('a line is kept while it says something, and goes when it says nothing again', () => {
  const noted = noteLine('resistor 4700', { stock: 12 })(batch);
  expect(noted.lines).toEqual([{ key: 'resistor 4700', stock: 12, packSize: 1, packPrice: null }]);
  const priced = noteLine('resistor 4700', { packPrice: 1.9, packSize: 100 })(noted);
  expect(priced.lines).toEqual([{ key: 'resistor 4700', stock: 12, packSize: 100, packPrice: 1.9 }]);
  const plain = noteLine('resistor 4700', { stock: 0, packPrice: null, packSize: 1 })(priced);
  expect(plain.lines).toEqual([]);
});

test('a hole is kept free once, and can be used again', () => {
  const hole = { strip: 3, hole: 7 };
  const kept = keepFree(hole, true)(batch);
  expect(kept.board.free).toEqual([hole]);
  expect(keepFree({ ...hole }, true)(kept)).toBe(kept);
  expect(keepFree(hole, false)(kept).board.free).toEqual([]);
});

test('a board’s size is set, and set again without a change it stays the same object', () => {
  const sized = wishBoard({ size: { strips: 24, holes: 37 } })(batch);
  expect(sized.board).toEqual({ ...batch.board, size: { strips: 24, holes: 37 } });
  expect(wishBoard({ size: { strips: 24, holes: 37 } })(sized)).toBe(sized);
  expect(wishBoard({ sockets: false })(sized).board.size).toEqual({ strips: 24, holes: 37 });
});

test('readings and faults of kits are kept in order of their numbers, a blank kit is not kept', () => {
  const one = writeReading(9, 'TP1', 8.9)(batch);
  const two = writeKit(2, { fault: 'no supply', minutes: 12 })(one);
  expect(two.log.map(({ kit }) => kit)).toEqual([2, 9]);
  const again = writeReading(9, 'TP1', 9.1)(two);
  expect(kitEntry(again, 9).readings).toEqual([{ point: 'TP1', value: 9.1 }]);
  expect(writeReading(9, 'TP1', null)(again).log.map(({ kit }) => kit)).toEqual([2]);
});

test('steps done beforehand are kept in the order of a build, minutes and helpers as they were typed', () => {
  const both = prepareStep('cuts', true)(prepareStep('sockets', true)(batch));
  expect(both.workshop.prepared).toEqual(['cuts', 'sockets']);
  expect(prepareStep('cuts', false)(both).workshop.prepared).toEqual(['sockets']);
  const slow = setMinutes('perLink', 2.5)(setWorkshop({ helpers: 1 })(batch));
  expect(slow.workshop).toEqual({
    ...batch.workshop,
    helpers: 1,
    minutes: { ...batch.workshop.minutes, perLink: 2.5 },
  });
});
