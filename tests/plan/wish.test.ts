/** A wish comes to two targets, or to the demands that are not met, each with something near that would be. */
import { describe, expect, test } from 'vitest';
import { DEFAULT_PITCH, type Drawer, type Wish } from '../../src/design/pitch.ts';
import { centsBetween } from '../../src/plan/notes.ts';
import { TONE_HERTZ, targetsOf, wishProblems } from '../../src/plan/wish.ts';

const wishWith = (change: Partial<Wish>): Wish => ({ ...DEFAULT_PITCH.wish, ...change });
const targets = (change: Partial<Wish>) => {
  const wanted = targetsOf(wishWith(change));
  if (!wanted.ok) throw new Error(JSON.stringify(wanted.problems));
  return wanted.targets;
};
const problems = (change: Partial<Wish>) => {
  const wanted = targetsOf(wishWith(change));
  return wanted.ok ? [] : wanted.problems;
};

describe('what is wanted', () => {
  test('two notes of ISO 16', () => {
    const { A, B } = targets({ notes: { A: 'E4', B: 'C4' } });
    expect(A.lowHertz).toBeCloseTo(329.6276, 4);
    expect(B.highHertz).toBeCloseTo(261.6256, 4);
    expect(A.lowHertz).toBe(A.highHertz);
  });

  test('another tuning moves both alike', () => {
    const { A, B } = targets({ notes: { A: 'E4', B: 'C4' }, a4Hertz: 415 });
    expect(centsBetween(329.6276, A.lowHertz)).toBeCloseTo(-101.27, 1);
    expect(centsBetween(261.6256, B.lowHertz)).toBeCloseTo(-101.27, 1);
  });

  test('just: the second voice is a pure ratio from the first, cents typed kept', () => {
    const just = { temperament: 'just' } as const;
    const third = targets({ ...just, notes: { A: 'C4', B: 'E4' } });
    expect(third.B.lowHertz / third.A.lowHertz).toBeCloseTo(5 / 4, 12);
    const down = targets({ ...just, notes: { A: 'C4', B: 'F3' } });
    expect(down.B.lowHertz / down.A.lowHertz).toBeCloseTo(2 / 3, 12);
    const wider = targets({ ...just, notes: { A: 'C4', B: 'G4 +10 c' } });
    expect(centsBetween(1.5 * wider.A.lowHertz, wider.B.lowHertz)).toBeCloseTo(10, 9);
  });

  test('a note and an interval from it, up and down, with cents', () => {
    const fifth = { from: 'A', name: 'fifth', direction: 'up', cents: 0 } as const;
    const up = targets({ way: 'interval', notes: { A: 'A4', B: 'nonsense' }, interval: fifth });
    expect(up.A.lowHertz).toBe(440);
    expect(centsBetween(440, up.B.lowHertz)).toBeCloseTo(700, 9);
    const down = targets({
      way: 'interval',
      temperament: 'just',
      notes: { A: '', B: 'A4' },
      interval: { from: 'B', name: 'octave', direction: 'down', cents: 7 },
    });
    expect(centsBetween(440, down.A.lowHertz)).toBeCloseTo(-1207, 9);
  });

  test('frequencies and sweeps as they are', () => {
    expect(targets({ way: 'frequencies', hertz: { A: 100, B: 200 } }).B).toEqual({
      lowHertz: 200,
      highHertz: 200,
    });
    const sweep = { A: { lowHertz: 100, highHertz: 400 }, B: { lowHertz: 50, highHertz: 90 } };
    expect(targets({ way: 'sweep', sweep })).toEqual(sweep);
  });
});

describe('demands that are not met', () => {
  test('each note that does not read, by its voice', () => {
    expect(problems({ notes: { A: 'H4', B: '' } })).toMatchObject([
      { kind: 'note', voice: 'A', problem: { kind: 'no note' } },
      { kind: 'note', voice: 'B', problem: { kind: 'nothing typed' } },
    ]);
  });

  test('a note nobody hears, with the nearest that is one', () => {
    expect(problems({ notes: { A: 'C-1', B: 'C4' } })).toMatchObject([
      { kind: 'not a tone', voice: 'A', nearestHertz: TONE_HERTZ.min },
    ]);
    expect(problems({ way: 'frequencies', hertz: { A: 440, B: 50_000 } })).toEqual([
      { kind: 'not a tone', voice: 'B', hertz: 50_000, nearestHertz: 20_000 },
    ]);
  });

  test('contradictory limits, with ones that are not', () => {
    const sweep = { A: { lowHertz: 400, highHertz: 100 }, B: { lowHertz: 300, highHertz: 300 } };
    const found = problems({ way: 'sweep', sweep, duty: { least: 0.7, most: 0.5 } });
    expect(found).toMatchObject([
      { kind: 'empty sweep', voice: 'A', nearest: { lowHertz: 100, highHertz: 400 } },
      { kind: 'empty sweep', voice: 'B', nearest: { lowHertz: 300, highHertz: 600 } },
      { kind: 'duty crossed', nearest: { least: 0.5, most: 0.7 } },
    ]);
  });

  test('an empty drawer, kind by kind, unless the kind may be ordered', () => {
    const { drawer, wish } = DEFAULT_PITCH;
    const missing = (change: Partial<Drawer>) =>
      wishProblems({ wish, drawer: { ...drawer, ...change } }).map(
        (p) => p.kind === 'empty drawer' && p.missing,
      );
    expect(missing({})).toEqual([]);
    expect(missing({ use: 'have' })).toEqual(['resistors', 'trimmers', 'capacitors']);
    expect(missing({ order: { ...drawer.order, trimmers: null } })).toEqual(['trimmers']);
    const none = { ohms: 4700, tolerance: 0.01, quantity: 0, price: null };
    expect(missing({ use: 'have', resistors: [none] })).toContain('resistors');
  });

  test('nothing but polarised capacitors, unless they are asked for', () => {
    const drawer: Drawer = {
      ...DEFAULT_PITCH.drawer,
      order: {
        ...DEFAULT_PITCH.drawer.order,
        capacitors: { series: 'E6', dielectric: 'electrolytic', tolerance: 0.2 },
      },
    };
    expect(wishProblems({ wish: wishWith({}), drawer })).toEqual([{ kind: 'only polarised' }]);
    expect(wishProblems({ wish: wishWith({ polarised: true }), drawer })).toEqual([]);
  });
});
