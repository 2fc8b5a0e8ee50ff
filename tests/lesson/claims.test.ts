/**
 * What each lesson claims, worked out here from the handbook's formulas and published rows, beside what the model
 * fills into its words. γ, R10 and the other values are read from the lesson's own design.
 */
import { describe, expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { luxOf } from '../../src/lesson/bench.ts';
import { CONTROLS } from '../../src/lesson/controls.ts';
import { amountOf } from '../../src/lesson/figures.ts';
import { kitsOf } from '../../src/lesson/kits.ts';
import { factOption, startBench } from '../../src/lesson/lesson.ts';
import { LESSON_DESIGN, LESSONS } from '../../src/lesson/lessons.ts';
import { type Verdict, verdictOn } from '../../src/lesson/verdict.ts';
import { fractionAt, stepSizes, valueAt } from '../../src/views/controls/stepping.ts';

const V = 9;
const { A, B } = LESSON_DESIGN.voices;
const GAMMA = A.cell.gamma;
const ohmsAt = (lux: number, r10 = A.cell.r10Ohms, gamma = GAMMA) => r10 * (lux / 10) ** -gamma;
const bottomNode = (lux: number) => (V * ohmsAt(lux)) / (ohmsAt(lux) + A.divider.fixedOhms);
const topNode = (lux: number) => V - bottomNode(lux);
/** RB: fixed part, the end of the track (1 %), and the turned part of the rest. */
const rb = (voice: typeof A, rotation = voice.trimmer.rotation) =>
  voice.rbFixedOhms + 0.01 * voice.trimmer.ohms + rotation * 0.99 * voice.trimmer.ohms;
/** TI SLFS022, without saturation: 1/(ln 2·(RA + 2RB)·C). */
const handbook = (ra: number, rbOhms: number, farads: number) => 1 / (Math.LN2 * (ra + 2 * rbOhms) * farads);

function stepOf(name: string) {
  const [lessonId, stepId] = name.split('/');
  const step = LESSONS.find(({ id }) => id === lessonId)!.steps.find(({ id }) => id === stepId)!;
  const bench = startBench(step, LESSON_DESIGN);
  const value = (figure: string): number => amountOf(step.figures[figure]!, bench).value!;
  return {
    bench,
    value,
    near: (figure: string, expected: number, within = 0.001) => {
      const found = value(figure);
      expect(Math.abs(found / expected - 1), `${figure} ${found} ${expected}`).toBeLessThanOrEqual(within);
    },
    verdict: () => verdictOn(step, LESSON_DESIGN, null),
  };
}

/**
 * Trip points by Kirchhoff at the shared wiper: the trimmer's source, and both voices' feedback through input and
 * hysteresis resistor (reset pin 0.1 mA at a high output, TI SLFS022; comparator 37.5 Ω when low, onsemi LM393/D).
 */
function tripLuxBy(hysteresisOhms: number | null, rotation: number, sounding: boolean): number {
  const total = 8200 + 10_000 + 470;
  const below = 470 + 100 + rotation * 9800;
  const source = { volts: (V * below) / total, ohms: (below * (total - below)) / total };
  const low = (37.5 * (V / A.pullUpOhms + 0.0004)) / (1 + 37.5 / A.pullUpOhms);
  const out = sounding ? { volts: V - 1e-4 * A.pullUpOhms, ohms: A.pullUpOhms } : { volts: low, ohms: 0 };
  if (hysteresisOhms === null) return luxOfNode(source.volts);
  const path = 1 / (A.inputOhms + hysteresisOhms + out.ohms);
  const wiper = (source.volts / source.ohms + 2 * path * out.volts) / (1 / source.ohms + 2 * path);
  return luxOfNode(wiper + (out.volts - wiper) * A.inputOhms * path);
}
function luxOfNode(node: number): number {
  const ohms = (A.divider.fixedOhms * node) / (V - node);
  return 10 * (A.cell.r10Ohms / ohms) ** (1 / GAMMA);
}

test('the lessons’ design has the values these claims are worked out from', () => {
  expect(LESSON_DESIGN.supply).toMatchObject({ volts: V, diode: false });
  expect(A).toMatchObject({
    divider: { cell: 'bottom', fixedOhms: 12_000 },
    hysteresisOhms: 680e3,
    inputOhms: 10e3,
  });
  expect([A.cell, A.polarity, A.pullUpOhms]).toEqual([B.cell, B.polarity, B.pullUpOhms]);
  expect(LESSON_DESIGN.threshold.trimmers.A).toMatchObject({
    topOhms: 8200,
    bottomOhms: 470,
    trimmer: { ohms: 10_000, rotation: 0.27 },
  });
});

describe('every question', () => {
  const asked = LESSONS.flatMap(({ id, steps }) =>
    steps.map((step) => ({ name: `${id}/${step.id}`, step })),
  ).filter(({ step }) => step.question !== null);
  test.each(asked)('$name has an answer, and it is one of those offered', ({ step }) => {
    const question = step.question!;
    const verdict = verdictOn(step, LESSON_DESIGN, null);
    expect(verdict).not.toBeNull();
    if (question.kind !== 'choice') return;
    expect(question.options).toContain(factOption(question.fact, startBench(step, LESSON_DESIGN)));
    for (const { option } of question.fact.bands) expect(question.options).toContain(option);
  });
});

test.each([
  // R grows by 2^γ: ls:L22, 1.6245 at γ 0.7.
  ['light-becomes-resistance/half', 'less-than-double'],
  // The node is the cell's share of the supply; job:E, 0.76 V lit, 2.85 V shaded.
  ['two-resistors-share/which-way', 'rises'],
  ['two-resistors-share/other-side', 'falls'],
  ['comparison/scales', 'silent'],
  ['comparison/move-the-other', 'down'],
  ['comparison/turn-it-round', 'sounding'],
  ['why-a-shadow-stops-it/which-way', 'rises'],
  ['why-a-shadow-stops-it/what-for', 'stutters'],
  ['why-a-shadow-stops-it/set-it', 'brighter'],
  // ln3/ln2 = 1.585: TI SLFS022, el:A34, el:A36.
  ['the-first-cycle/longer', 'longer'],
  ['the-first-cycle/where-it-waits', 'near-zero'],
  ['the-first-cycle/how-much', 'half-again'],
  ['tone-and-trimmer/turn', 'lower'],
  ['tone-and-trimmer/light-and-pitch', 'same'],
  ['tone-and-trimmer/capacitor', 'octave-up'],
  ['duty-and-timbre/shares', 'more'],
  ['duty-and-timbre/colour', 'second'],
  ['duty-and-timbre/pitch-too', 'lower'],
  ['hysteresis-and-chatter/without', 'stutters'],
  ['hysteresis-and-chatter/with', 'stops'],
  ['hysteresis-and-chatter/too-much', 'wider'],
  ['lamp-ripple/hear-the-lamp', 'stutters'],
  ['lamp-ripple/how-often', 'twice'],
  ['lamp-ripple/cure', 'not-enough'],
  ['thirty-kits/one-mark', 'most'],
  ['thirty-kits/its-own-turn', 'up'],
  ['thirty-kits/and-its-pitch', 'semitones'],
])('%s: the model answers “%s”, as the words of its reveal say', (name, option) => {
  expect(stepOf(name).verdict()).toMatchObject({ kind: 'choice', option });
});

describe('light becomes resistance', () => {
  test('R = R10·(E/10)^−γ (Token Electronics, as in el:C1)', () => {
    const { near } = stepOf('light-becomes-resistance/look');
    near('bright-ohms', ohmsAt(300));
    near('dim-ohms', ohmsAt(30));
  });
  test('halving the light raises the resistance 1.6245 times (ls:L22)', () => {
    const { near } = stepOf('light-becomes-resistance/half');
    near('factor', 2 ** 0.7);
    near('factor', 1.6245);
    near('half-ohms', 1.6245 * ohmsAt(200));
  });
  test('tenfold resistance needs 10^(1/γ) times less light (ls:L22: a tenth of the light gives 5.012 times)', () => {
    const { near, verdict } = stepOf('light-becomes-resistance/tenfold');
    near('times', 10 ** (1 / 0.7));
    expect(verdict()).toMatchObject({ kind: 'place', lux: expect.closeTo(300 / 10 ** (1 / 0.7), 6) });
    expect(10 ** 0.7).toBeCloseTo(5.012, 3);
  });
});

describe('the divider and the comparison', () => {
  test('the node is the cell’s share: 0.76 V at 300 lx and 2.85 V at 30 lx (job:E, test point 2)', () => {
    const { near, value } = stepOf('two-resistors-share/which-way');
    near('lit-volts', bottomNode(300));
    near('shade-volts', bottomNode(30));
    expect(value('lit-volts')).toBeCloseTo(0.76, 2);
    expect(value('shade-volts')).toBeCloseTo(2.85, 2);
  });
  test('with the cell at the top it is the rest', () => {
    const { near } = stepOf('two-resistors-share/other-side');
    // The feedback now works on the node: up to 0.2 % of it.
    near('lit-volts', topNode(300), 0.002);
    near('shade-volts', topNode(30), 0.002);
  });
  test('equal resistors share equally', () => {
    const { near, verdict } = stepOf('two-resistors-share/half-way');
    near('fixed', ohmsAt((verdict() as { lux: number }).lux));
  });
  test('over the light it is the cell’s share all the way, and halfway where the halves are equal', () => {
    const { verdict, near, value } = stepOf('two-resistors-share/whole-way');
    const { points, curve } = verdict() as Extract<Verdict, { kind: 'sketch' }>;
    for (const { lux, volts } of [...points, ...curve]) expect(volts / bottomNode(lux)).toBeCloseTo(1, 3);
    expect(points.map(({ lux }) => lux)).toEqual([1, 10, 100, 1000, 10_000]);
    expect(bottomNode(value('place'))).toBeCloseTo(V / 2, 2);
    near('dark-volts', bottomNode(1));
    near('bright-volts', bottomNode(10_000));
  });
  test('the node moves most where the halves are equal: a tenth less light moves it less on either side', () => {
    const { lux } = stepOf('two-resistors-share/half-way').verdict() as { lux: number };
    const moves = (at: number) => bottomNode(0.9 * at) - bottomNode(at);
    for (const elsewhere of [lux / 4, lux / 2, 2 * lux, 4 * lux, 300])
      expect(moves(elsewhere)).toBeLessThan(moves(lux));
  });
  test('the reference is 1.54 V at 27 % of travel (job:E, test point 3, without the track’s ends)', () => {
    const { near, value } = stepOf('comparison/scales');
    near('reference', (V * (470 + 100 + 0.27 * 9800)) / 18_670);
    near('reference', 1.54, 0.01);
    expect(value('lit-volts')).toBeLessThan(value('reference'));
    expect(value('shade-volts')).toBeGreaterThan(value('reference'));
  });
});

describe('why a shadow stops it', () => {
  test('a hand 5 cm above leaves 0.4098 of the room’s light and none of the lamp’s (ls:L13)', () => {
    const { near } = stepOf('why-a-shadow-stops-it/which-way');
    near('shade', 20 * 0.4098);
    near('lit-volts', bottomNode(300), 0.01);
    near('shade-volts', bottomNode(20 * 0.4098));
  });
  test('the shaded node is past where the comparator tips, the lit one short of it', () => {
    const { near, value } = stepOf('why-a-shadow-stops-it/which-way');
    near('stop-volts', bottomNode(tripLuxBy(680e3, 0.27, true)));
    expect(value('shade-volts')).toBeGreaterThan(value('stop-volts'));
    expect(value('lit-volts')).toBeLessThan(value('stop-volts'));
  });
  test('it stops and starts where Kirchhoff has it, near the 83 and 98 lx of a trimmer of one’s own (job:E)', () => {
    const { near } = stepOf('why-a-shadow-stops-it/where-it-starts');
    near('stop', tripLuxBy(680e3, 0.27, true));
    near('start', tripLuxBy(680e3, 0.27, false));
    near('gap', tripLuxBy(680e3, 0.27, false) / tripLuxBy(680e3, 0.27, true), 0.002);
    near('stop', 83, 0.05);
    near('start', 98, 0.05);
  });
  test('turned down it stops in brighter light', () => {
    const { near, value } = stepOf('why-a-shadow-stops-it/set-it');
    near('stop-less', tripLuxBy(680e3, 0.2, true));
    // The trimmer alone stops it in the light there is, and lets it sound again.
    expect(tripLuxBy(680e3, 0, true)).toBeGreaterThan(value('lit'));
    expect(tripLuxBy(680e3, 0.27, false)).toBeLessThan(value('lit'));
  });
  test('without hysteresis stop and start are one place, where the noise tips it often', () => {
    const { near, value, bench } = stepOf('why-a-shadow-stops-it/what-for');
    near('stop', tripLuxBy(null, 0.27, true));
    expect(value('rate')).toBeGreaterThan(20);
    expect(value('hysteresis')).toBeGreaterThan(10 * bench.design.noise.voltsRms);
  });
  test('a silent instrument draws more than a sounding one (job pitfall 4: 22 against 15 mA at 9 V)', () => {
    const { none, both } = instrumentOf(LESSON_DESIGN).power.states;
    expect(none.drain.total).toBeGreaterThan(both.drain.total);
  });
});

describe('the tone', () => {
  test('first high over steady high is ln[(V − Vs)/(V/3)]/ln 2, 1.585 from 0 V and 1.572 from 80 mV (el:A36)', () => {
    const { near, value } = stepOf('the-first-cycle/how-much');
    const rest = stepOf('the-first-cycle/where-it-waits').value('rest');
    near('ratio', Math.log((V - rest) / (V / 3)) / Math.LN2);
    expect(value('ratio')).toBeGreaterThan(1.5721);
    expect(value('ratio')).toBeLessThan(Math.log(3) / Math.LN2);
    near('ratio-turned', value('ratio'), 0.001);
    const { near: nearTimes } = stepOf('the-first-cycle/longer');
    nearTimes('high', Math.LN2 * (A.raOhms + rb(A)) * A.capacitor.farads);
    nearTimes('first', Math.log((V - rest) / (V / 3)) * (A.raOhms + rb(A)) * A.capacitor.farads);
  });
  test('it waits near zero and swings between a third and two thirds (TI SLFS022; 80 mV at most at 2.3 mA, ST)', () => {
    const { near, value } = stepOf('the-first-cycle/where-it-waits');
    near('lower', 3);
    near('upper', 6);
    expect(value('rest')).toBeLessThanOrEqual(0.08);
  });
  test('pitches are the handbook’s, less up to 1 % for the discharge pin (el:A30)', () => {
    const { value } = stepOf('tone-and-trimmer/turn');
    for (const [figure, rotation] of [
      ['before', A.trimmer.rotation],
      ['after', 0.8],
    ] as const) {
      const ideal = handbook(A.raOhms, rb(A, rotation), A.capacitor.farads);
      expect(value(figure) / ideal).toBeLessThan(1);
      expect(value(figure) / ideal).toBeGreaterThan(0.99);
    }
  });
  test('half the capacitor is twice the frequency; half the light is no change', () => {
    const capacitor = stepOf('tone-and-trimmer/capacitor');
    capacitor.near('ratio', 2, 1e-9);
    // “about a fourth above B”: 498 cents.
    expect(
      1200 * Math.log2(capacitor.value('after') / instrumentOf(LESSON_DESIGN).voices.B.cycle.frequency),
    ).toBeCloseTo(498, -1);
    const light = stepOf('tone-and-trimmer/light-and-pitch');
    expect(light.value('frequency-half')).toBe(light.value('frequency'));
  });
  test('duty is (RA + RB)/(RA + 2RB), less up to 1 %; the octave stands at 20·log |cos πd| (el:A15)', () => {
    const { near, value } = stepOf('duty-and-timbre/colour');
    near('duty', (A.raOhms + rb(A)) / (A.raOhms + 2 * rb(A)), 0.01);
    near('duty-more', (39e3 + rb(A)) / (39e3 + 2 * rb(A)), 0.01);
    near('second-more', 20 * Math.log10(Math.abs(Math.cos(Math.PI * value('duty-more')))));
    // The row's own case: 72.73 % stands at −3.68 dB.
    expect(20 * Math.log10(Math.abs(Math.cos(Math.PI * 0.7273)))).toBeCloseTo(-3.68, 1);
  });
  test('a larger charge resistor lowers the pitch as the handbook has it', () => {
    const { value } = stepOf('duty-and-timbre/pitch-too');
    const ideal = (39e3 + 2 * rb(A)) / (A.raOhms + 2 * rb(A));
    expect(value('before') / value('after') / ideal).toBeCloseTo(1, 2);
  });
});

describe('hysteresis and lamps', () => {
  test('without hysteresis there is one place, with it two, with a tenth of the resistor far apart', () => {
    stepOf('hysteresis-and-chatter/without').near('stop', tripLuxBy(null, 0.27, true));
    const much = stepOf('hysteresis-and-chatter/too-much');
    much.near('stop', tripLuxBy(68e3, 0.27, true), 0.002);
    much.near('start', tripLuxBy(68e3, 0.27, false), 0.002);
    much.near('gap-usual', stepOf('why-a-shadow-stops-it/where-it-starts').value('gap'));
  });
  test.each(['why-a-shadow-stops-it/what-for', 'hysteresis-and-chatter/without'])(
    '%s: the lamp’s arrow keys do not step over the edge',
    (name) => {
      const { bench, value } = stepOf(name);
      const { min, max } = CONTROLS.lamp as Extract<(typeof CONTROLS)['lamp'], { kind: 'number' }>;
      const track = { min, max, scale: 'log', offAtStart: false } as const;
      const { normal } = stepSizes(1);
      const nearest = Math.round(fractionAt(value('stop'), track) / normal) * normal;
      const changes = [{ control: 'lamp' as const, value: valueAt(nearest, track) }];
      expect(amountOf({ of: 'stutters a second', voice: 'A', changes }, bench).value).toBeGreaterThan(20);
    },
  );
  test('at the edge the noise tips it often; the usual hysteresis is many times the noise', () => {
    const { value, bench } = stepOf('hysteresis-and-chatter/with');
    expect(value('rate')).toBeGreaterThan(20);
    expect(value('hysteresis')).toBeGreaterThan(10 * bench.design.noise.voltsRms);
  });
  test('the light of a lamp on 50 Hz swings 100 times a second, and so does the stutter (IES; ls section 3)', () => {
    const { value } = stepOf('lamp-ripple/how-often');
    expect(value('ripple')).toBe(100);
    expect(value('rate')).toBeCloseTo(100, 0);
    expect(value('steady-swing')).toBeLessThan(1e-6);
    expect(value('poor-swing')).toBeGreaterThan(stepOf('lamp-ripple/cure').value('more'));
  });
});

test('hysteresis larger than the swing of the node is steady at every light; smaller, it stutters at some', () => {
  const { bench, value } = stepOf('lamp-ripple/cure');
  const stutters = (hysteresis: number, lamp: number) =>
    amountOf(
      {
        of: 'stutters a second',
        voice: 'A',
        changes: [
          { control: 'hysteresis', value: hysteresis },
          { control: 'lamp', value: lamp },
        ],
      },
      bench,
    ).value!;
  expect(value('more')).toBeLessThan(value('swing'));
  expect(stutters(330e3, 88)).toBeCloseTo(100, 0);
  const larger = amountOf(
    { of: 'hysteresis volts', voice: 'A', changes: [{ control: 'hysteresis', value: 220e3 }] },
    bench,
  ).value!;
  expect(larger).toBeGreaterThan(value('swing'));
  for (const lamp of [78, 82, 86, 90, 96]) expect(stutters(220e3, lamp), `${lamp} lx`).toBeLessThan(1);
});

describe('thirty kits', () => {
  const kits = () => kitsOf(stepOf('thirty-kits/one-mark').bench.design);

  test('are drawn within what the parts’ sheets allow: 8 to 20 kΩ, γ 0.6 to 0.8', () => {
    expect(kits().length).toBe(30);
    for (const { voices } of kits()) {
      expect(voices.A.cell.r10Ohms).toBeGreaterThanOrEqual(8000);
      expect(voices.A.cell.r10Ohms).toBeLessThanOrEqual(20_000);
      expect(Math.abs(voices.A.cell.gamma - 0.7)).toBeLessThanOrEqual(0.1);
      expect(Math.abs(voices.A.capacitor.farads / A.capacitor.farads - 1)).toBeLessThanOrEqual(
        A.capacitor.tolerance,
      );
    }
  });
  test('so many do right as have both trip points between shade and light', () => {
    const { value, bench } = stepOf('thirty-kits/one-mark');
    const { rotation } = bench.design.threshold.trimmers.A.trimmer;
    const scaled = (lux: number, { r10Ohms, gamma }: typeof A.cell) => {
      const ohms = ohmsAt(lux);
      return 10 * (r10Ohms / ohms) ** (1 / gamma);
    };
    const right = (shade: number) =>
      kits().filter(
        ({ voices }) =>
          scaled(tripLuxBy(680e3, rotation, false), voices.A.cell) < 300 &&
          scaled(tripLuxBy(680e3, rotation, true), voices.A.cell) > shade,
      ).length;
    expect(value('right')).toBe(right(100));
    expect(value('right-deep')).toBe(right(30));
    expect(value('right-deep')).toBeGreaterThan(value('right'));
  });
  test('the right turn differs as job pitfall 6 tells: from less than 18 to more than 30 %', () => {
    const { value } = stepOf('thirty-kits/its-own-turn');
    expect(value('least')).toBeLessThan(0.18);
    expect(value('most')).toBeGreaterThan(0.3);
  });
  test('their pitches lie as far apart as (RA + 2RB)·C does', () => {
    const { value, bench } = stepOf('thirty-kits/and-its-pitch');
    const products = kitsOf(bench.design).map(
      ({ voices }) => (voices.A.raOhms + 2 * rb(voices.A)) * voices.A.capacitor.farads,
    );
    const ideal = 1200 * Math.log2(Math.max(...products) / Math.min(...products));
    expect(Math.abs(value('apart') - ideal)).toBeLessThan(5);
    expect(value('apart')).toBeGreaterThan(100);
  });
});

test('turned to just on, a thin shadow stops the voices: less than a third of the light has to go', () => {
  const { bench } = stepOf('this-very-room/just-on');
  const control = CONTROLS['just on'];
  if (control.kind !== 'press') throw new Error('just on is pressed');
  const light = luxOf(bench.light);
  const set = instrumentOf(control.act(light)(bench).design).voices.A.tripLux;
  expect(set.on! / light.A).toBeCloseTo(1, 1);
  expect(set.on!).toBeLessThan(light.A);
  expect(set.off! / light.A).toBeGreaterThan(2 / 3);
});

test('the best place to switch is the root of lit times shaded light (ls:L23)', () => {
  const { near } = stepOf('this-very-room/on-paper');
  near('middle', Math.sqrt(300 * 20 * 0.4098), 0.01);
});
