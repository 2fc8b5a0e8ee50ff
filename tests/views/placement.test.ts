/** Labels of the drawings: none covers another, and none leaves the drawing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakLines, spread } from '../../src/views/plots/column.ts';
import {
  keepApart,
  placeAbove,
  placeBelow,
  type Standing,
  type Stood,
} from '../../src/views/plots/placement.ts';

const standing = (key: string, x: number, width: number, prefer: 'low' | 'high' = 'low'): Standing => ({
  key,
  x,
  half: 8,
  width,
  lines: 1,
  prefer,
});

function textsOverlap(items: readonly Standing[], stood: readonly Stood[]): boolean {
  return stood.some((a, i) =>
    stood.some((b, j) => {
      const wa = items[i]!.width;
      const wb = items[j]!.width;
      return i < j && a.row === b.row && a.left < b.left + wb && b.left < a.left + wa;
    }),
  );
}

function stemsThroughTexts(items: readonly Standing[], stood: readonly Stood[]): number {
  let count = 0;
  stood.forEach((a, i) => {
    stood.forEach((b, j) => {
      const x = items[i]!.x;
      if (i !== j && a.stemRow >= b.row && x > b.left && x < b.left + items[j]!.width) count++;
    });
  });
  return count;
}

describe('labels above the light axis', () => {
  test('alone, a label stands at the right of its stem next to the line', () => {
    const [spot] = placeAbove([standing('A', 100, 80)], 400, 3);
    expect(spot).toMatchObject({ row: 0, side: 'right', stemRow: 0 });
    expect(spot!.left).toBeGreaterThan(108);
  });

  test('at the right edge it turns to the left', () => {
    expect(placeAbove([standing('A', 390, 80)], 400, 3)[0]).toMatchObject({ side: 'left', row: 0 });
  });

  test('with no room on either side it stands over its stem, inside the drawing', () => {
    const [spot] = placeAbove([standing('A', 100, 180)], 200, 3);
    expect(spot).toMatchObject({ side: 'over', row: 1, stemRow: 0 });
    expect(spot!.left).toBeGreaterThanOrEqual(0);
    expect(spot!.left + 180).toBeLessThanOrEqual(200);
  });

  test('two needles at the same light get two places', () => {
    const items = [standing('A', 200, 90), standing('B', 200, 90)];
    const stood = placeAbove(items, 600, 3);
    expect(textsOverlap(items, stood)).toBe(false);
    expect(stemsThroughTexts(items, stood)).toBe(0);
  });

  test('wherever two needles and a threshold stand on a wide axis, no text is covered or crossed', () => {
    const x = fc.integer({ min: 10, max: 1170 });
    fc.assert(
      fc.property(x, x, x, (a, b, t) => {
        const items = [standing('A', a, 75), standing('B', b, 75), standing('trip', t, 260, 'high')];
        const stood = placeAbove(items, 1180, 3, [
          { left: 0, right: 30, row: 2 },
          { left: 1140, right: 1180, row: 2 },
        ]);
        expect(textsOverlap(items, stood)).toBe(false);
        expect(stemsThroughTexts(items, stood)).toBe(0);
        stood.forEach((spot, index) => {
          expect(spot.left).toBeGreaterThanOrEqual(0);
          expect(spot.left + items[index]!.width).toBeLessThanOrEqual(1180);
        });
      }),
      { seed: 21, numRuns: 400 },
    );
  });

  test('on a narrow axis texts still never cover each other', () => {
    const x = fc.integer({ min: 10, max: 286 });
    fc.assert(
      fc.property(x, x, x, (a, b, t) => {
        const items = [standing('A', a, 75), standing('B', b, 75), standing('trip', t, 250, 'high')];
        expect(textsOverlap(items, placeAbove(items, 296, 4))).toBe(false);
      }),
      { seed: 22, numRuns: 400 },
    );
  });

  test('a label stays where it stood while that place is still free', () => {
    const items = [standing('A', 300, 80)];
    const before = new Map<string, Stood>([['A', { key: 'A', row: 1, side: 'left', left: 0, stemRow: 1 }]]);
    expect(placeAbove(items, 600, 3, [], before)[0]).toMatchObject({ row: 1, side: 'left' });
  });
});

describe('labels below the axis', () => {
  test('labels that would touch go to the next row, others share the first', () => {
    const spots = placeBelow(
      [
        { x: 50, width: 60 },
        { x: 90, width: 60 },
        { x: 200, width: 60 },
      ],
      300,
    );
    expect(spots.map((spot) => spot.row)).toEqual([0, 1, 0]);
  });

  test('a label at the edge is shifted inwards', () => {
    expect(placeBelow([{ x: 298, width: 60 }], 300)[0]).toEqual({ row: 0, left: 240 });
  });

  test('of crowded ticks both ends are kept and no two kept ones touch', () => {
    const ticks = Array.from({ length: 12 }, (_, n) => ({ x: 20 + n * 20, width: 30 }));
    const kept = keepApart(ticks);
    expect(kept[0]).toBe(true);
    expect(kept.at(-1)).toBe(true);
    const places = ticks.filter((_, n) => kept[n]).map((tick) => tick.x);
    for (let n = 1; n < places.length; n++) expect(places[n]! - places[n - 1]!).toBeGreaterThanOrEqual(36);
    expect(places.length).toBeGreaterThan(3);
  });
});

describe('labels in a column', () => {
  test('labels with room stay where they want to be', () => {
    expect(
      spread(
        [
          { wanted: 20, height: 10 },
          { wanted: 60, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([20, 60]);
  });

  test('two labels wanting one place share the way between them', () => {
    expect(
      spread(
        [
          { wanted: 50, height: 10 },
          { wanted: 50, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([45, 55]);
  });

  test('labels are never pushed over the ends', () => {
    expect(
      spread(
        [
          { wanted: 1, height: 10 },
          { wanted: 2, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([5, 15]);
    expect(
      spread(
        [
          { wanted: 99, height: 10 },
          { wanted: 99, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([85, 95]);
  });

  test('whatever is wanted, order is kept and no two labels overlap', () => {
    const shelf = fc.record({
      wanted: fc.integer({ min: 0, max: 300 }),
      height: fc.integer({ min: 8, max: 40 }),
    });
    fc.assert(
      fc.property(fc.array(shelf, { maxLength: 6 }), (items) => {
        const middles = spread(items, 0, 300);
        const order = items
          .map((item, index) => ({ ...item, middle: middles[index]!, index }))
          .sort((a, b) => a.wanted - b.wanted || a.index - b.index);
        for (let n = 1; n < order.length; n++) {
          const upper = order[n - 1]!;
          const lower = order[n]!;
          expect(lower.middle - lower.height / 2).toBeGreaterThanOrEqual(
            upper.middle + upper.height / 2 - 1e-9,
          );
        }
        for (const one of order) {
          expect(one.middle - one.height / 2).toBeGreaterThanOrEqual(-1e-9);
          expect(one.middle + one.height / 2).toBeLessThanOrEqual(300 + 1e-9);
        }
      }),
      { seed: 23 },
    );
  });
});

describe('breaking lines', () => {
  const byLetters = (text: string) => text.length * 7;

  test('a text is broken at spaces so that each line fits', () => {
    expect(breakLines('A and B stop below 86 lux', 80, byLetters)).toEqual([
      'A and B',
      'stop below',
      '86 lux',
    ]);
  });

  test('a word wider than the line is cut, and nothing is lost', () => {
    const lines = breakLines('reference 1.54 V', 42, byLetters);
    expect(lines.every((line) => byLetters(line) <= 42)).toBe(true);
    expect(lines.join('').replaceAll(' ', '')).toBe('reference1.54V');
  });

  test('a short text is one line', () => {
    expect(breakLines('A 0.76 V', 200, byLetters)).toEqual(['A 0.76 V']);
  });
});
