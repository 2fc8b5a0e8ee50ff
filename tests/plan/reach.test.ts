/** What kits reach: seeded draws against closed forms, published figures and fresh draws, and the first order against both. */
import { describe, expect, test } from 'vitest';
import { astableOf, cycleOf } from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { togetherWarnings } from '../../src/circuit/warnings-pitch.ts';
import type { Candidate, DrawLaw, VoiceParts } from '../../src/design/pitch.ts';
import { takeCandidate } from '../../src/design/pitch-commands.ts';
import { ASSESSED_KITS, assess, nominalRange, untunedBench } from '../../src/plan/assess.ts';
import { COMPARED, compareCapacitors } from '../../src/plan/compare.ts';
import { commonRange, drawKits, kitPlan, roomFor } from '../../src/plan/draws.ts';
import { driftOf } from '../../src/plan/drift.ts';
import { centsBetween } from '../../src/plan/notes.ts';
import { firstOrderReachOf, normalBelow } from '../../src/plan/reach.ts';
import { chipOf, hertzAt, lawOf, rbAt, targetRotations, trimmerCurve } from '../../src/plan/timing.ts';
import { together } from '../../src/plan/together.ts';
import { seededDesigns } from '../circuit/any-design.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';
import { pulseOf } from '../sound/playing.ts';

const chip = chipOf(BENCH_DESIGN);

/** The reference build: 3.9 kΩ, 12 kΩ + 50 kΩ carbon trimmer (± 20 %), 47 nF ± 10 % film, 1 % resistors. */
const PARTS: VoiceParts = {
  ra: { ohms: 3900, tolerance: 0.01 },
  rbFixed: { ohms: 12_000, tolerance: 0.01 },
  trimmer: { part: 'carbon', ohms: 50_000, tolerance: 0.2 },
  capacitor: { farads: 47e-9, dielectric: 'polyester', tolerance: 0.1 },
};
const note = (hertz: number) => ({ lowHertz: hertz, highHertz: hertz });
const candidateFor = (a: number, b: number, parts: VoiceParts = PARTS): Candidate => ({
  parts: { A: parts, B: parts },
  targets: { A: note(a), B: note(b) },
});
const draw = (candidate: Candidate, law: DrawLaw, seed: number, count: number) =>
  drawKits(kitPlan(chip, candidate, law)!, seed, roomFor(count));

describe('the reference build (job:1; the figures came from uniform draws of C ± 10 % and a trimmer ± 20 %)', () => {
  const { reached, count } = draw(candidateFor(262, 330), 'uniform', 7, 40_000);

  test('262 Hz: about 76 % of kits at full travel, about 51 % with the wiper at 10 to 90 % (seed 7)', () => {
    expect(reached.full.A / count).toBeGreaterThan(0.74);
    expect(reached.full.A / count).toBeLessThan(0.79);
    expect(reached.easy.A / count).toBeGreaterThan(0.49);
    expect(reached.easy.A / count).toBeLessThan(0.545);
  });

  test('330 Hz: all kits, 99 % with the wiper at 10 to 90 % (seed 7)', () => {
    expect(reached.full.B / count).toBeGreaterThan(0.9995);
    expect(reached.easy.B / count).toBeGreaterThan(0.98);
  });

  test('in range on paper: 240 to 1100 Hz', () => {
    const { lowHertz, highHertz } = nominalRange(lawOf(chip, null, 3900)!, PARTS, 0, 1);
    expect(lowHertz).toBeCloseTo(240, -1);
    expect(highHertz).toBeGreaterThan(1050);
    expect(highHertz).toBeLessThan(1110);
  });
});

/** Nothing varies but the capacitor: class 1 ceramic, a trimmer without tolerance, an ideal setting. */
const ONLY_C: VoiceParts = {
  ra: { ohms: 3900, tolerance: 0 },
  rbFixed: { ohms: 12_000, tolerance: 0 },
  trimmer: { part: 'multi-turn', ohms: 50_000, tolerance: 0 },
  capacitor: { farads: 47e-9, dielectric: 'c0g', tolerance: 0.2 },
};

describe('against closed forms', () => {
  test('uniform C, fixed R: the share that reaches a low note is that of large enough capacitors (seeds 1 to 4)', () => {
    const law = lawOf(chip, null, 3900)!;
    const lowest = hertzAt(law, ONLY_C, 1);
    for (const [seed, nearer] of [0.9, 0.97, 1.04, 1.12].entries()) {
      const target = lowest * nearer;
      const kits = draw(candidateFor(target, target, ONLY_C), 'uniform', seed + 1, 40_000);
      // Low enough when (1 + x)(1 + t) ≥ lowest/target: x uniform in ± 0.2, and t, the timer, averaged over ± 2.25 %.
      let expected = 0;
      const steps = 2000;
      for (let i = 0; i < steps; i++) {
        const t = 0.0225 * ((2 * i + 1) / steps - 1);
        const least = lowest / target / (1 + t) - 1;
        expected += Math.min(1, Math.max(0, (0.2 - least) / 0.4)) / steps;
      }
      const share = kits.reached.full.A / kits.count;
      const error = Math.sqrt((expected * (1 - expected)) / kits.count);
      expect(Math.abs(share - expected), `${share} against ${expected}`).toBeLessThan(4 * error + 0.002);
    }
  });

  test('uniform C, fixed R: the untuned pitches lie as 1/C does (seed 5)', () => {
    const kits = draw(candidateFor(400, 400, ONLY_C), 'uniform', 5, 40_000);
    const periods = kits.voices.A.untunedHertz.map((hertz) => 400 / hertz);
    const mean = periods.reduce((sum, x) => sum + x, 0) / periods.length;
    const square = periods.reduce((sum, x) => sum + (x - mean) ** 2, 0) / periods.length;
    // Variances of independent uniform parts add: C ± 20 %, timer ± 2.25 %, each a third of its square.
    expect(Math.sqrt(square)).toBeCloseTo(Math.sqrt((0.2 ** 2 + 0.0225 ** 2) / 3), 2);
    expect(Math.max(...periods)).toBeLessThan(1.2 * 1.0225 * 1.01);
    expect(Math.min(...periods)).toBeGreaterThan(0.8 * 0.9775 * 0.99);
  });

  test.each([
    ['normal-2', 1 / 2],
    ['normal-3', 1 / 3],
  ] as const)('%s: one deviation is that share of the tolerance (seed 6)', (law, share) => {
    const kits = draw(candidateFor(400, 400, ONLY_C), law, 6, 40_000);
    const periods = kits.voices.A.untunedHertz.map((hertz) => 400 / hertz);
    const mean = periods.reduce((sum, x) => sum + x, 0) / periods.length;
    const square = periods.reduce((sum, x) => sum + (x - mean) ** 2, 0) / periods.length;
    expect(Math.sqrt(square)).toBeCloseTo(share * Math.hypot(0.2, 0.0225), 2);
  });

  test('the normal distribution, against its tables', () => {
    for (const [z, share] of [
      [0, 0.5],
      [1, 0.841345],
      [-1, 0.158655],
      [1.96, 0.975002],
      [-2.5758, 0.005],
      [3, 0.99865],
    ] as const)
      expect(normalBelow(z)).toBeCloseTo(share, 5);
  });
});

describe('seeded draws', () => {
  test('the same seed gives the same kits, another one others (seeds 1, 2)', () => {
    const one = draw(candidateFor(262, 330), 'uniform', 1, 500);
    expect(draw(candidateFor(262, 330), 'uniform', 1, 500)).toEqual(one);
    expect(draw(candidateFor(262, 330), 'uniform', 2, 500)).not.toEqual(one);
  });

  test('kits drawn again into the same room are the same (seed 3)', () => {
    const plan = kitPlan(chip, candidateFor(262, 330), 'normal-2')!;
    const room = roomFor(300);
    drawKits(plan, 9, room);
    expect(drawKits(plan, 3, room)).toEqual(drawKits(plan, 3, roomFor(300)));
  });

  test('a kit’s turn is the one that gives the note (seed 4)', () => {
    const { voices } = draw(candidateFor(262, 330), 'uniform', 4, 200);
    for (const [id, target] of [
      ['A', 262],
      ['B', 330],
    ] as const) {
      const { topHertz, bottomHertz, rotation } = voices[id];
      for (const [kit, w] of rotation.entries()) {
        // The period is a straight line of the turn.
        const period = (1 - w) / topHertz[kit]! + w / bottomHertz[kit]!;
        expect(period * target).toBeCloseTo(1, 9);
      }
    }
  });

  test('a batch before tuning is as many pairs as kits', () => {
    const bench = untunedBench(chip, candidateFor(262, 330), { law: 'uniform', seed: 1, kits: 12 })!;
    expect(bench).toHaveLength(12);
    for (const { A, B } of bench)
      expect([A > 200, A < 350, B > 250, B < 430]).toEqual([true, true, true, true]);
  });
});

describe('the promised range', () => {
  test.each(['uniform', 'normal-2', 'normal-3'] as const)(
    'drawn %s, a fresh draw of 20 000 kits reaches it in 99 % of cases (seeds 11 and 12)',
    (law) => {
      const promised = assess(chip, candidateFor(330, 330), { law, seed: 11 })!.voices.A.promised!;
      const fresh = draw(candidateFor(330, 330), law, 12, 20_000).voices.A;
      const reaching = fresh.topHertz.filter(
        (top, kit) => top >= promised.highHertz && fresh.bottomHertz[kit]! <= promised.lowHertz,
      ).length;
      // Each end misses 0.5 %: three deviations of two such samples of 20 000.
      expect(reaching / 20_000).toBeGreaterThan(0.99 - 3 * Math.sqrt((2 * 0.01 * 0.99) / 20_000));
      expect(reaching / 20_000).toBeLessThan(0.997);
    },
  );

  test('lies within the nominal range, and is none where no pitch is common', () => {
    const { promised, nominal } = assess(chip, candidateFor(330, 330), { law: 'uniform', seed: 1 })!.voices.A;
    expect(promised!.lowHertz).toBeGreaterThan(nominal.lowHertz);
    expect(promised!.highHertz).toBeLessThan(nominal.highHertz);
    expect(commonRange(Float64Array.of(100, 100), Float64Array.of(200, 200), 0.99)).toBeNull();
  });
});

test('the first order is near the draws wherever the share is not extreme (seed 21)', () => {
  const law = lawOf(chip, null, 3900)!;
  for (const hertz of [250, 262, 275, 300, 800, 900, 1000]) {
    for (const drawLaw of ['uniform', 'normal-2', 'normal-3'] as const) {
      const { reached, count } = draw(candidateFor(hertz, hertz), drawLaw, 21, 10_000);
      const first = firstOrderReachOf('bipolar', law, PARTS, note(hertz), drawLaw);
      expect(Math.abs(first - reached.easy.A / count), `${hertz} Hz ${drawLaw}`).toBeLessThan(0.06);
    }
  }
});

describe('a candidate looked at closely', () => {
  const assessment = assess(chip, candidateFor(262, 330), { law: 'uniform', seed: 1, kits: 4000 })!;
  const { A } = assessment.voices;

  test('its law, seed and count are told with its shares', () => {
    expect(assessment).toMatchObject({ law: 'uniform', seed: 1, kits: 4000 });
    expect(assessment.reached.easy).toBeLessThanOrEqual(
      Math.min(A.reached.easy, assessment.voices.B.reached.easy),
    );
  });

  test('the turn at the target gives the target on the circuit itself', () => {
    const design = takeCandidate(
      candidateFor(262, 330),
      targetRotations(chip, candidateFor(262, 330)),
    )(BENCH_DESIGN);
    const { voices } = instrumentOf(design);
    expect(voices.A.cycle.frequency).toBeCloseTo(262, 9);
    expect(voices.B.cycle.frequency).toBeCloseTo(330, 9);
    expect(A.duty).toBeCloseTo(voices.A.cycle.dutyCycle, 12);
    // Cents for one per cent of turn, as the instrument reads them; 220 degrees are a hundred per cent.
    expect(A.atTarget.centsPerDegree * 2.2).toBeCloseTo(Math.abs(voices.A.centsPerPercent!), 3);
  });

  test('unless a number is asked for, enough kits are drawn for a share known within 0.7 %', () => {
    const { kits } = assess(chip, candidateFor(262, 330), { law: 'uniform', seed: 1 })!;
    expect(kits).toBe(ASSESSED_KITS);
    expect(1.96 * Math.sqrt(0.25 / kits)).toBeLessThan(0.007);
  });

  test('worst-case parts are further out than any drawn kit', () => {
    const kits = draw(candidateFor(262, 330), 'uniform', 1, 4000);
    const untuned = kits.voices.A.untunedHertz;
    // The draws know the room besides: 5 °C of a film capacitor are 0.3 %.
    expect(Math.min(...untuned)).toBeGreaterThan(A.worstCase.lowHertz * 0.997);
    expect(Math.max(...untuned)).toBeLessThan(A.worstCase.highHertz * 1.003);
  });

  test('sensitivities are what the circuit says when one part alone is at its limit', () => {
    const rotation = A.rotation;
    const period = (change: Partial<VoiceParts>) => {
      const parts = { ...PARTS, ...change };
      const law = lawOf(chip, null, parts.ra.ohms)!;
      return parts.capacitor.farads * (law.ownOhms + law.factor * rbAt(parts, rotation));
    };
    const share = (of: string) => A.sensitivities.find((s) => s.of === of)!.share;
    const moved = (change: Partial<VoiceParts>) => period(change) / period({}) - 1;
    expect(A.sensitivities[0]!.of).toBe('trimmer');
    expect(share('capacitor')).toBeCloseTo(
      moved({ capacitor: { ...PARTS.capacitor, farads: 47e-9 * 1.1 } }),
      9,
    );
    expect(share('trimmer')).toBeCloseTo(moved({ trimmer: { ...PARTS.trimmer, ohms: 60_000 } }), 3);
    expect(share('rbFixed')).toBeCloseTo(moved({ rbFixed: { ...PARTS.rbFixed, ohms: 12_120 } }), 5);
    expect(share('ra')).toBeCloseTo(moved({ ra: { ...PARTS.ra, ohms: 3939 } }), 4);
  });

  test('what to change: every proposal helps, and draws agree (seed 31)', () => {
    expect(A.changes.length).toBeGreaterThan(3);
    const best = A.changes[0]!;
    expect(best.after).toBeGreaterThan(0.95);
    const { reached, count } = draw(candidateFor(262, 262, best.parts), 'uniform', 31, 10_000);
    expect(reached.easy.A / count).toBeGreaterThan(0.93);
    const kinds = new Set(A.changes.map(({ kind }) => kind));
    expect([...kinds]).toEqual(expect.arrayContaining(['other capacitor', 'other trimmer']));
  });
});

describe('drift', () => {
  const drift = (dielectric: VoiceParts['capacitor']['dielectric'], of = chip) =>
    driftOf(of, null, { ...PARTS, capacitor: { ...PARTS.capacitor, dielectric } }, 0.5)!;

  test('a thumb: film a few cents flat, class 2 much more, class 1 none to speak of', () => {
    expect(drift('polyester').thumb.lowCents).toBeGreaterThan(-10);
    expect(drift('polyester').thumb.highCents).toBeLessThan(0);
    expect(drift('y5v').thumb.highCents).toBeGreaterThan(51);
    expect(Math.abs(drift('c0g').thumb.lowCents)).toBeLessThan(0.5);
  });

  test('a cold van moves the other way, about twice as far as a warm room', () => {
    const { warmRoom, coldVan } = drift('polyester');
    expect(coldVan.highCents / -warmRoom.lowCents).toBeGreaterThan(1.8);
    expect(coldVan.highCents / -warmRoom.lowCents).toBeLessThan(2.2);
  });

  test('the battery: what the circuit does from 9.6 V to 5.4 V, and the maker’s 0.3 % a volt either way', () => {
    const { battery } = drift('polyester');
    const hertz = (volts: number) =>
      cycleOf(
        astableOf(
          designWith({
            A: {
              raOhms: 3900,
              rbFixedOhms: 12_000,
              trimmer: { part: 'carbon', ohms: 50_000, tolerance: 0.2, rotation: 0.5 },
            },
          }),
          'A',
          volts,
        ),
      ).frequency;
    const middle = (battery!.lowCents + battery!.highCents) / 2;
    expect(battery).toMatchObject({ fromVolts: 9.6, toVolts: 5.4 });
    expect(middle).toBeCloseTo(centsBetween(hertz(9.6), hertz(5.4)), 0);
    expect((battery!.highCents - battery!.lowCents) / 2).toBeCloseTo(21.8, 0);
    const regulated = chipOf(designWith({ supply: { kind: 'five-volt', volts: 5 } }));
    expect(drift('polyester', regulated).battery).toBeNull();
  });
});

test('capacitors side by side: the better one reaches more, in the order given (seed 1)', () => {
  const capacitors: VoiceParts['capacitor'][] = [
    { farads: 47e-9, dielectric: 'y5v', tolerance: 0.2 },
    { farads: 47e-9, dielectric: 'polyester', tolerance: 0.1 },
    { farads: 47e-9, dielectric: 'c0g', tolerance: 0.05 },
  ];
  const compared = compareCapacitors(chip, null, PARTS, capacitors, { law: 'uniform', seed: 1, kits: 4000 });
  expect(compared.map(({ parts }) => parts.capacitor)).toEqual(capacitors);
  const widths = compared.map(({ promised }) => Math.log(promised!.highHertz / promised!.lowHertz));
  expect(widths.toSorted((a, b) => a - b)).toEqual(widths);
  expect(capacitors.length).toBeGreaterThanOrEqual(COMPARED.min);
  expect(capacitors.length).toBeLessThanOrEqual(COMPARED.max);
  expect(new Set(compared.map(({ nominal }) => nominal.lowHertz)).size).toBe(1);
});

describe('two voices together', () => {
  test('says what the design’s own warning says', () => {
    const design = designWith({ A: BENCH_DESIGN.voices.B, supply: { sharedDipVolts: 0.1 } });
    const instrument = instrumentOf(design);
    const [warning] = togetherWarnings(design, instrument);
    expect(together(chipOf(design), instrument.astables).lock).toEqual(warning!.facts);
  });

  test('an equal fifth on 440 Hz is 2 cents narrow of 3:2 and beats as its partials do (3·440 against 2·659.26 Hz)', () => {
    const fifth = together(chip, { A: pulseOf(440, 0.6), B: pulseOf(440 * 2 ** (7 / 12), 0.6) });
    expect(fifth.ratio).toEqual([3, 2]);
    expect(fifth.beatHertz).toBeCloseTo(3 * 440 - 2 * 659.2551, 3);
    expect(fifth.apartCents).toBeCloseTo(-1.955, 3);
  });
});

test('the straight line of RB agrees with the circuit’s own astable for any voice (seed 41)', () => {
  const { anyDesign } = seededDesigns(41);
  let running = 0;
  for (let i = 0; i < 300; i++) {
    const design = anyDesign();
    const of = chipOf(design);
    const v = design.voices.A;
    const law = lawOf(of, v.controlVolts, v.raOhms);
    const { frequency } = cycleOf(astableOf(design, 'A', of.railVolts));
    if (law === null) {
      expect(frequency).toBe(0);
      continue;
    }
    running++;
    const parts: VoiceParts = {
      ra: { ohms: v.raOhms, tolerance: 0 },
      rbFixed: { ohms: v.rbFixedOhms, tolerance: 0 },
      trimmer: v.trimmer,
      capacitor: v.capacitor,
    };
    expect(hertzAt(law, parts, v.trimmer.rotation) / frequency).toBeCloseTo(1, 10);
  }
  expect(running).toBeGreaterThan(150);
});

test('a trimmer’s way falls from stop to stop, steepest at the high end', () => {
  const curve = trimmerCurve(chip, null, PARTS);
  expect(curve).toHaveLength(61);
  for (const [i, { hertz, centsPerDegree }] of curve.entries()) {
    if (i === 0) continue;
    expect(hertz).toBeLessThan(curve[i - 1]!.hertz);
    expect(centsPerDegree).toBeLessThan(curve[i - 1]!.centsPerDegree);
  }
});
