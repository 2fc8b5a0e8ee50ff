/** The place behind its views: when a result is out of date, and what can still be kept. */
import { expect, test } from 'vitest';
import { hasFound, isStale, keeping, taskOf } from '../../src/app/pitch-desk.ts';
import { turnPitch } from '../../src/design/commands.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { type Candidate, MOST_SHORTLISTED, type VoiceParts } from '../../src/design/pitch.ts';
import { changeDrawer, changeWish, shortlist } from '../../src/design/pitch-commands.ts';
import { fittedParts } from '../../src/plan/fitted.ts';
import { pairOf } from '../../src/quantity/units.ts';

const design = DEFAULT_DESIGN;
const searched = { task: taskOf(design), report: { kind: 'refused', problems: [] } } as const;

const candidateOf = (ohms: number): Candidate => {
  const parts: VoiceParts = { ...fittedParts(design, 'A'), ra: { ohms, tolerance: 0.01 } };
  return { parts: pairOf(() => parts), targets: pairOf(() => ({ lowHertz: 262, highHertz: 262 })) };
};

test('a search is out of date once wish, drawer or supply change, not when a trimmer is turned', () => {
  expect(isStale(searched, design)).toBe(false);
  expect(isStale(searched, turnPitch('A', 0.123)(design))).toBe(false);
  expect(isStale(searched, changeWish({ kits: 21 })(design))).toBe(true);
  expect(isStale(searched, changeDrawer({ use: 'have' })(design))).toBe(true);
  expect(isStale(searched, { ...design, supply: { ...design.supply, volts: 7 } })).toBe(true);
});

test('a refused search has found nothing, and so has none at all', () => {
  expect(hasFound(null)).toBe(false);
  expect(hasFound(searched)).toBe(false);
});

test('a candidate can be kept once, and not on a full shortlist', () => {
  const one = shortlist(candidateOf(1000))(design);
  expect(keeping(design, candidateOf(1000))).toBe('free');
  expect(keeping(one, candidateOf(1000))).toBe('kept');
  let full = design;
  for (let i = 0; i < MOST_SHORTLISTED; i++) full = shortlist(candidateOf(1000 + i))(full);
  expect(keeping(full, candidateOf(9000))).toBe('full');
  expect(keeping(full, candidateOf(1000))).toBe('kept');
});

test('the parts a voice has are those of the design, resistors taken as one per cent', () => {
  const { ra, rbFixed, trimmer, capacitor } = fittedParts(design, 'B');
  const voice = design.voices.B;
  expect([ra.ohms, rbFixed.ohms, trimmer.ohms]).toEqual([
    voice.raOhms,
    voice.rbFixedOhms,
    voice.trimmer.ohms,
  ]);
  expect([ra.tolerance, rbFixed.tolerance]).toEqual([0.01, 0.01]);
  expect(capacitor).toEqual(voice.capacitor);
});
