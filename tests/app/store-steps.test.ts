/** Everything of a long evening can be taken back, and what that costs. */
import { expect, test } from 'vitest';
import { DocumentStore } from '../../src/app/store.ts';
import { type Command, rename, setLoadOhms, setVoiceValue, turnPitch } from '../../src/design/commands.ts';
import { encodeText } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';
import { heapInUse } from '../heap.ts';

const STEPS = 20_000;
/**
 * A step keeps the entries it changed and shares all others: about 370 bytes in Node 20, 7 MB for all of them. The text
 * of one whole design has ten times as many.
 */
const BYTES_OF_STEP = 600;

/** The n-th of many changes, no two alike. */
function change(n: number): Command {
  switch (n % 4) {
    case 0:
      return turnPitch('A', n / STEPS);
    case 1:
      return setVoiceValue('B', 'raOhms', 1000 + n);
    case 2:
      return rename(`Take ${n}`);
    default:
      return setLoadOhms(1000 + n);
  }
}

test('twenty thousand different changes are taken back to the first design, done again to the last, and share what they can', () => {
  const store = new DocumentStore<Design>(BENCH_DESIGN);
  const before = heapInUse();
  for (let n = 0; n < STEPS; n += 1) store.change('a step', change(n));
  const grown = heapInUse() - before;
  expect(grown / STEPS).toBeLessThan(BYTES_OF_STEP);

  const last = store.current;
  const lastText = encodeText(last);
  let steps = 0;
  const seen = new Set<Design>();
  for (; store.history.undo !== null; steps += 1) {
    seen.add(store.current);
    store.undo();
  }
  expect(steps).toBe(STEPS);
  expect(seen.size, 'no two alike').toBe(STEPS);
  expect(store.current).toBe(BENCH_DESIGN);
  expect(heapInUse() - before, 'all of it taken back').toBeLessThan(STEPS * BYTES_OF_STEP);

  for (; store.history.redo !== null; steps -= 1) store.redo();
  expect(steps).toBe(0);
  expect(store.current).toBe(last);
  expect(encodeText(store.current)).toBe(lastText);
});

test('beyond that the oldest changes are let go, and no others', () => {
  const store = new DocumentStore<Design>(BENCH_DESIGN);
  const more = 2000;
  for (let n = 0; n < more; n += 1) store.change('a step', change(n));
  const oldest = store.current;
  for (let n = more; n < STEPS; n += 1) store.change('a step', change(n));
  const full = heapInUse();
  for (let n = STEPS; n < STEPS + more; n += 1) store.change('a step', change(n));
  expect(heapInUse() - full, 'bytes more').toBeLessThan((more * BYTES_OF_STEP) / 4);
  while (store.history.undo !== null) store.undo();
  expect(store.current).toBe(oldest);
});
