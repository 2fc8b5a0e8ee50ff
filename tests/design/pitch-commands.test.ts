/** Changes of the wish, the drawer and the shortlist, and a candidate taken as one step. */

import { describe, expect, test } from 'vitest';
import { complaintSentence } from '../../src/app/complaint.ts';
import { DocumentStore } from '../../src/app/store.ts';
import { decode } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { equalValues } from '../../src/design/entries.ts';
import { type Candidate, DEFAULT_PITCH, MOST_SHORTLISTED } from '../../src/design/pitch.ts';
import {
  changeDrawer,
  changeWish,
  shortlist,
  takeCandidate,
  unlist,
} from '../../src/design/pitch-commands.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

const candidate = (farads: number): Candidate => {
  const parts = {
    ra: { ohms: 4700, tolerance: 0.01 },
    rbFixed: { ohms: 15_000, tolerance: 0.01 },
    trimmer: { part: 'multi-turn', ohms: 20_000, tolerance: 0.1 },
    capacitor: { farads, dielectric: 'c0g', tolerance: 0.05 },
  } as const;
  const target = { lowHertz: 440, highHertz: 440 };
  return {
    parts: { A: parts, B: { ...parts, ra: { ohms: 3300, tolerance: 0.05 } } },
    targets: { A: target, B: target },
  };
};

describe('what changes nothing returns the same object', () => {
  const { wish, drawer } = DEFAULT_PITCH;
  const listed = shortlist(candidate(47e-9))(BENCH_DESIGN);
  const taken = takeCandidate(candidate(47e-9), { A: 0.5, B: 0.25 })(BENCH_DESIGN);
  test.each([
    ['the wish as it is', BENCH_DESIGN, changeWish({ notes: { ...wish.notes }, law: wish.law })],
    [
      'the drawer as it is',
      BENCH_DESIGN,
      changeDrawer({ resistors: [], order: structuredClone(drawer.order) }),
    ],
    ['a candidate listed twice', listed, shortlist(candidate(47e-9))],
    ['one taken off where none stands', listed, unlist(3)],
    ['a candidate taken twice', taken, takeCandidate(candidate(47e-9), { A: 0.5, B: 0.25 })],
  ] as const)('%s', (_, design, command) => {
    expect(command(design)).toBe(design);
  });
});

test('the wish and the drawer change entry by entry, and the rest of the design stays the same objects', () => {
  const design = changeDrawer({ use: 'have' })(
    changeWish({ notes: { A: 'G3', B: 'not yet' } })(BENCH_DESIGN),
  );
  expect(design.pitch.wish).toEqual({ ...DEFAULT_PITCH.wish, notes: { A: 'G3', B: 'not yet' } });
  expect(design.pitch.drawer.use).toBe('have');
  expect(design.voices).toBe(BENCH_DESIGN.voices);
  expect(decode(design)).toEqual({ ok: true, design });
});

test('the shortlist keeps twelve, in the order they were put there, and lets go of one by its place', () => {
  let design: Design = BENCH_DESIGN;
  for (let i = 0; i < MOST_SHORTLISTED + 3; i++)
    design = shortlist(candidate(Number(`${10 + i}e-9`)))(design);
  expect(design.pitch.shortlist).toHaveLength(MOST_SHORTLISTED);
  expect(decode(design).ok).toBe(true);
  const fewer = unlist(1)(design).pitch.shortlist;
  expect(fewer).toHaveLength(MOST_SHORTLISTED - 1);
  expect(fewer[1]).toEqual(candidate(12e-9));
});

test('a candidate becomes the timing parts of both voices in one step that can be taken back', () => {
  const store = new DocumentStore<Design>(BENCH_DESIGN);
  store.change('take', takeCandidate(candidate(33e-9), { A: 0.5, B: 0.25 }));
  const { A, B } = store.current.voices;
  expect([A.raOhms, A.rbFixedOhms, B.raOhms]).toEqual([4700, 15_000, 3300]);
  expect(A.trimmer).toEqual({ part: 'multi-turn', ohms: 20_000, tolerance: 0.1, rotation: 0.5 });
  expect(B.trimmer.rotation).toBe(0.25);
  expect(B.capacitor).toEqual({ farads: 33e-9, dielectric: 'c0g', tolerance: 0.05 });
  expect([A.cell, A.divider, A.hysteresisOhms]).toEqual([
    BENCH_DESIGN.voices.A.cell,
    BENCH_DESIGN.voices.A.divider,
    BENCH_DESIGN.voices.A.hysteresisOhms,
  ]);
  expect(decode(store.current)).toEqual({ ok: true, design: store.current });
  store.undo();
  expect(store.current).toBe(BENCH_DESIGN);
  expect(store.history.undo).toBeNull();
});

test('values are equal by what they hold, not by where they stand', () => {
  expect(equalValues([1, { a: null }], [1, { a: null }])).toBe(true);
  for (const [a, b] of [
    [[1], [1, 2]],
    [{ a: 1 }, { b: 1 }],
    [{ a: undefined }, {}],
    [[], {}],
    [null, {}],
    ['1', 1],
  ])
    expect(equalValues(a, b), JSON.stringify([a, b])).toBe(false);
});

test('a count that is none and a list that is too long are refused in words', () => {
  const bad = (pitch: unknown) => {
    const read = decode({ ...BENCH_DESIGN, pitch });
    return read.ok ? [] : read.complaints.map((complaint) => complaintSentence(complaint));
  };
  expect(bad({ ...DEFAULT_PITCH, wish: { ...DEFAULT_PITCH.wish, kits: 2.5 } })).toEqual([
    'pitch.wish.kits: read 2.5; accepted is a whole number from 1 to 1\u202F000.'.replace(
      '1\u202F000',
      '1000',
    ),
  ]);
  const many = Array.from({ length: 13 }, () => candidate(1e-8));
  expect(bad({ ...DEFAULT_PITCH, shortlist: many })[0]).toMatch(
    /accepted is a list of at most 12 entries\.$/,
  );
});
