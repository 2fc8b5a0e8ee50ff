/** The window of a threshold: its edges against the gates in time, and a settled table of the trade. */
import { describe, expect, test } from 'vitest';
import { gatesOf, nodeVolts, rotationForVolts, stateIndex } from '../../src/circuit/gate.ts';
import { setPolarity, turnThreshold } from '../../src/design/commands.ts';
import type { Design } from '../../src/design/design.ts';
import { sweptWindow } from '../../src/headless/bench-room.ts';
import { type LightProgram, underLamp } from '../../src/light/program.ts';
import { settingsFor, tippingRotations, tippingSiemens } from '../../src/plan/setting.ts';
import { tripLuxAt } from '../../src/plan/trip-lux.ts';
import { recommendedAt, sharedVerdict, windowsFor } from '../../src/plan/window.ts';
import { VOICES, type VoiceId } from '../../src/quantity/units.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { designWith, thresholdTurned } from '../circuit/building.ts';
import { settingsFrom } from '../sound/playing.ts';
import { CALM, type DrawnRoom, drawnRoom, levels } from './rooms.ts';

/** Lit or not at A and B, one after the other: each voice meets each level with the other one lit and shaded. */
const SCENE: readonly (readonly [boolean, boolean])[] = [
  [true, true],
  [false, true],
  [false, false],
  [true, false],
  [false, false],
  [false, true],
  [true, true],
  [true, false],
  [true, true],
];
const PHASE_STEPS = 420;
const PHASE = PHASE_STEPS / GRID;
const EDGE = 0.01;
/** From here on in a phase nothing may change any more. */
const SETTLED_STEPS = 360;
/** Where each voice has its own trimmer the other one does not matter. */
const SHORT_SCENE = [
  [true, true],
  [false, false],
  [true, true],
] as const;
const phasesFor = (design: Design) => (design.threshold.arrangement === 'shared' ? SCENE : SHORT_SCENE);

function sceneOf({ design, extremes, disturbance }: DrawnRoom): LightProgram {
  const lux = (voice: VoiceId, isLit: boolean) => extremes[voice][isLit ? 'lit' : 'shade'].lux;
  const rows = phasesFor(design).flatMap(([a, b], i) => {
    const level = [lux('A', a), lux('B', b)] as const;
    return [[i * PHASE + (i === 0 ? 0 : EDGE), ...level] as const, [(i + 1) * PHASE, ...level] as const];
  });
  return underLamp(
    {
      kind: 'points',
      times: Float64Array.from(rows, ([t]) => t),
      lux: { A: Float64Array.from(rows, (row) => row[1]), B: Float64Array.from(rows, (row) => row[2]) },
    },
    disturbance.ripple,
  );
}

/** Whether both (or the asked) voices do what the light asks in the last part of every phase but the first. */
function gatesRightly(design: Design, room: DrawnRoom, voices: readonly VoiceId[]): boolean {
  const gating = new Gating(settingsFrom(design), sceneOf(room));
  const phases = phasesFor(design);
  const wants = (voice: VoiceId, phase: number): boolean =>
    phases[phase]![voice === 'A' ? 0 : 1] === (design.voices[voice].polarity === 'light');
  let isRight = true;
  for (let phase = 0; phase < phases.length; phase++) {
    const check = () => {
      if (phase > 0 && voices.some((voice) => gating.released(voice) !== wants(voice, phase)))
        isRight = false;
    };
    let counts = false;
    for (let i = 0; i < PHASE_STEPS; i++) {
      if (i === SETTLED_STEPS) {
        counts = true;
        check();
      }
      gating.advance((voice) => {
        if (counts && phase > 0 && voices.includes(voice)) isRight = false;
      });
      if (!isRight) return false;
    }
  }
  return isRight;
}

/** So far past an edge, as a share of the travel, counts as inside or outside: one degree of a single turn. */
const BESIDE = 1 / 240;

describe('the edges of the window', () => {
  test.each([0, 1, 2, 3])(
    'drawn rooms, 50 from seed %d000 on: a degree inside gates rightly for the whole scene, a degree outside does not',
    (thousand) => {
      let rooms = 0;
      const wrong: string[] = [];
      for (let seed = 1000 * thousand + 1; rooms < 50; seed++) {
        const room = drawnRoom(seed);
        const answers = windowsFor(room.design, room.extremes, room.disturbance);
        const answer = answers.at(seed % answers.length)!;
        if (answer.kind === 'none') continue;
        const { low, high, trimmer, voices } = answer.window;
        const [edge, inwards] = seed % 3 === 0 ? [high, -1] : [low, 1];
        if (edge.reason.kind !== 'lit' && edge.reason.kind !== 'shade') continue;
        rooms++;
        const beside = Math.min(BESIDE, (high.rotation - low.rotation) / 4);
        const at = (rotation: number) =>
          gatesRightly(turnThreshold(trimmer, rotation)(room.design), room, voices);
        if (!at(edge.rotation + inwards * beside)) wrong.push(`${seed}: inside`);
        if (at(edge.rotation - inwards * beside)) wrong.push(`${seed}: outside`);
      }
      expect(wrong).toEqual([]);
    },
  );
});

/** Rows job:E, worked out for a build of its own: trimmer ends 8.2 kΩ and 470 Ω about 10 kΩ, divider 12 kΩ, cell 12 kΩ at 10 lx, slope 0.7. */
describe('the reference build', () => {
  test.each([
    { lit: 1000, shade: 100, at: 0.11, band: 65, volts9: 0.74, volts5: 0.41 },
    { lit: 300, shade: 30, at: 0.27, band: 117, volts9: 1.54, volts5: 0.86 },
    { lit: 100, shade: 10, at: 0.53, band: 168, volts9: 2.78, volts5: 1.54 },
    { lit: 30, shade: 3, at: 0.9, band: 123, volts9: 4.58, volts5: 2.55 },
  ])('lit $lit lx, shade $shade lx: set at $at of the travel', ({ lit, shade, at, band, volts9, volts5 }) => {
    // That table is of a plain comparator and a trimmer that reaches its stops, of 270 degrees.
    for (const [volts, expected] of [
      [9, volts9],
      [5, volts5],
    ] as const) {
      const design = designWith({ supply: { volts }, voices: { hysteresisOhms: null } });
      const [answer] = windowsFor(design, levels(lit, shade), CALM);
      if (answer?.kind !== 'window') throw new Error('There is a window.');
      const { low, high } = answer.window;
      const { recommended } = answer;
      // Without hysteresis the middle by ratio of light is the geometric mean of the resistances.
      expect(recommended.volts).toBeCloseTo(expected, 1);
      expect(Math.abs(recommended.volts / expected - 1)).toBeLessThan(0.01);
      // 1 % at each stop of the real trimmer.
      expect(Math.abs(recommended.rotation - at)).toBeLessThan(0.016);
      expect(Math.abs((high.rotation - low.rotation) * 270 * 0.98 - band)).toBeLessThan(3);
      expect(recommended.litMargin).toBeCloseTo(Math.sqrt(lit / shade), 3);
      expect(recommended.shadeMargin).toBeCloseTo(Math.sqrt(lit / shade), 3);
    }
  });

  test('starts at 98 lx and stops at 83 lx when set for 300 and 30 lx (9 V); in shade 92 and 109 lx', () => {
    const design = designWith({
      threshold: { trimmers: { A: thresholdTurned(0.27), B: thresholdTurned(0.27) } },
    });
    // The table's trimmer reaches its stops: the same wiper voltage, not the same rotation.
    const rotation = rotationForVolts(design.threshold.trimmers.A, 9, 1.544);
    const light = tripLuxAt(settingsFor(design).A, rotation, CALM);
    expect(Math.abs(light.upper - 98)).toBeLessThan(1);
    expect(Math.abs(light.lower - 83)).toBeLessThan(1);
    const shade = tripLuxAt(settingsFor(setPolarity('A', 'shade')(design)).A, rotation, CALM);
    expect(Math.abs(shade.lower - 92)).toBeLessThan(1.5);
    expect(Math.abs(shade.upper - 109)).toBeLessThan(1.5);
  });

  test('the right place of one trimmer: 18, 27 and 43 % of the travel for cells of 8, 12 and 20 kΩ', () => {
    for (const [r10Ohms, expected] of [
      [8000, 0.18],
      [12_000, 0.27],
      [20_000, 0.43],
    ] as const) {
      const design = designWith({
        voices: { hysteresisOhms: null, cell: { family: 'cds-8-20k', r10Ohms, gamma: 0.7 } },
      });
      const [answer] = windowsFor(design, levels(300, 30), CALM);
      if (answer?.kind !== 'window') throw new Error('There is a window.');
      expect(Math.abs(answer.recommended.rotation - expected)).toBeLessThan(0.012);
    }
  });
});

describe('a setting', () => {
  test('in closed form is the one at which the gate itself tips', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { design } = drawnRoom(seed);
      for (const voice of VOICES) {
        const setting = settingsFor(design)[voice];
        const trimmer = design.threshold.arrangement === 'shared' ? 'A' : voice;
        for (const high of [false, true]) {
          const siemens = 1 / 1000;
          const [rotation] = tippingRotations(setting, { high, siemens, shift: 0 });
          const gates = gatesOf(turnThreshold(trimmer, rotation!)(design), 9);
          const own = { A: voice === 'A' && high, B: voice === 'B' && high };
          const state = gates[voice].states[stateIndex(own)]!;
          if (state.otherVolts >= state.limitVolts) continue;
          expect(Math.abs(nodeVolts(state, siemens) - state.tripVolts)).toBeLessThan(1e-9);
          const [back] = tippingSiemens(setting, rotation!, high, 0);
          expect(Math.abs(Number(back) / siemens - 1)).toBeLessThan(1e-9);
        }
      }
    }
  });

  test('reads at the test point what the loaded wiper has', () => {
    const design = designWith();
    const { volts, testPointVolts } = recommendedAt(design, 'A', 0.27, levels(300, 30), CALM);
    const gate = gatesOf(design, 9).A;
    const high = gate.states[1]!;
    // The pin lies between the wiper and the output: (pin − wiper)/(out − wiper) is what the feedback leaves.
    expect(testPointVolts).toBeGreaterThan(volts);
    expect(testPointVolts).toBeLessThan(high.otherVolts);
  });

  test('one trimmer serves sensors in like light, and not sensors whose windows stand apart', () => {
    expect(sharedVerdict(designWith(), levels(300, 30), CALM).canShare).toBe(true);
    const apart = sharedVerdict(designWith(), levels(300, 100, 60, 20), CALM);
    expect(apart.canShare).toBe(false);
    expect(apart.overlap).toBeLessThan(0);
  });

  test('where no setting will do, the nearest one is told with what it lacks', () => {
    const [answer] = windowsFor(designWith(), levels(300, 290), CALM);
    expect(answer?.kind).toBe('none');
    if (answer?.kind !== 'none') return;
    expect(Math.min(answer.nearest.litMargin, answer.nearest.shadeMargin)).toBeLessThan(1);
    expect(answer.nearest.litMargin).toBeCloseTo(answer.nearest.shadeMargin, 4);
  });
});

test('a plain sweep of the trimmer finds the same window', () => {
  for (const [lit, shade] of [
    [300, 60],
    [900, 200],
    [60, 20],
  ] as const) {
    const design = designWith({ threshold: { arrangement: 'shared' } });
    const [answer] = windowsFor(design, levels(lit, shade), CALM);
    const swept = sweptWindow(design, levels(lit, shade), 1000)!;
    expect(Math.abs(answer!.window.low.rotation - swept.low)).toBeLessThan(1 / 1000);
    expect(Math.abs(answer!.window.high.rotation - swept.high)).toBeLessThan(1 / 1000);
  }
});
