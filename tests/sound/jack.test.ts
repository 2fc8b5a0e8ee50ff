/** Levels at the jack, the coupling capacitor's corner, aliases, and the bound that nothing passes. */
import { describe, expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { jackOf, loadShare } from '../../src/circuit/output.ts';
import { decode } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { Engine } from '../../src/sound/engine.ts';
import { renderTake } from '../../src/sound/render.ts';
import { settingsOf } from '../../src/sound/settings.ts';
import { seededDesigns } from '../circuit/any-design.ts';
import { designWith, pitchTurned } from '../circuit/building.ts';
import { levelAt, partOf, peakOf } from '../ear.ts';
import { DARK, jumps, LIT, ONLY_A, pulseOf, pulseSettings, settingsFrom, steady } from './playing.ts';
import { windowedSpectrum } from './spectrum.ts';

/** Every level that a sound rests at: values that stay the same over forty samples. */
function plateaus(samples: Float32Array): readonly number[] {
  const found = new Set<number>();
  for (let i = 0, run = 1; i < samples.length; i++, run++) {
    if (Math.abs(samples[i]! - samples[i - 1]!) > 1e-6) run = 0;
    if (run === 40) found.add(Math.round(samples[i]! * 1e5) / 1e5);
  }
  return [...found].sort((a, b) => a - b);
}

test.each(['bipolar', 'cmos'] as const)('two mixed voices rest at the jack’s four levels (%s)', (timer) => {
  const design = designWith({
    timer,
    A: { capacitor: { farads: 1e-6, dielectric: 'polyester', tolerance: 0.1 } },
    B: { capacitor: { farads: 1.7e-6, dielectric: 'polyester', tolerance: 0.1 } },
    output: { coupling: null, mixOhms: { A: 22_000, B: 47_000 } },
  });
  const jack = jackOf(design, 9);
  const levels = jack.sources.map((source) => source.volts * loadShare(jack, source)).sort((a, b) => a - b);
  const heard = plateaus(renderTake(settingsFrom(design), steady(LIT, LIT), 1).samples.subarray(1000));
  expect(heard.length).toBe(4);
  for (const [i, level] of levels.entries()) expect(heard[i]).toBeCloseTo(level, 4);
});

test('joined outputs rest at three levels', () => {
  const design = designWith({
    A: { capacitor: { farads: 1e-6, dielectric: 'polyester', tolerance: 0.1 } },
    B: { capacitor: { farads: 1.7e-6, dielectric: 'polyester', tolerance: 0.1 } },
    output: { coupling: null, mixOhms: null },
  });
  const heard = plateaus(renderTake(settingsFrom(design), steady(LIT, LIT), 1).samples.subarray(1000));
  expect(heard.length).toBe(3);
});

describe('the coupling capacitor', () => {
  test.each([
    { farads: 1e-6, loadOhms: 10_000 },
    { farads: 100e-9, loadOhms: 47_000 },
    { farads: 220e-6, loadOhms: 32 },
  ])('lets a step decay with (source + load)·C: $farads F into $loadOhms Ω', ({ farads, loadOhms }) => {
    const design = designWith({ output: { coupling: { farads, kind: 'film' }, loadOhms } });
    // Silent from the start: only the step of switching the supply on is left, and that decays.
    const jack = jackOf(design, 9);
    const source = jack.sources[0]!;
    const tau = (source.ohms + loadOhms) * farads;
    const { samples, sampleRate } = renderTake(settingsFrom(design), steady(DARK, DARK), 0.05);
    const start = source.volts * loadShare(jack, source);
    for (const i of [40, 100, 400, 1000, 2300]) {
      const expected = start * Math.exp(-i / sampleRate / tau);
      expect(Math.abs(samples[i]! / expected - 1)).toBeLessThan(2e-6);
    }
  });

  test.each([
    { farads: 1e-9, loadOhms: 8, share: 1e-3 },
    { farads: 1e-9, loadOhms: 32, share: 3e-3 },
    { farads: 1e-9, loadOhms: 1000, share: 0.1 },
  ])(
    'too small for any sound leaves ticks by their area: $farads F into $loadOhms Ω',
    ({ farads, loadOhms, share }) => {
      const design = designWith({ output: { mixOhms: null, coupling: { farads, kind: 'film' }, loadOhms } });
      const settings = settingsFrom(design);
      const take = renderTake(settings, steady(LIT, DARK), 0.5);
      expect(peakOf(take)).toBeLessThan(share * settings.jack.boundVolts);
      expect(peakOf(take)).toBeGreaterThan(0);
      // The first tick, from switching on: its area is that of a decay from the jump, jump · tau.
      const source = settings.jack.sources[3]!;
      const { samples } = renderTake(
        { ...settings, jack: { ...settings.jack, sources: Array(4).fill(source) } },
        steady(DARK, DARK),
        0.01,
      );
      const area = samples.reduce((sum, value) => sum + value, 0) / 48_000;
      const tau = (source.ohms + loadOhms) * farads;
      expect(area / (source.volts * loadShare(settings.jack, source) * tau)).toBeCloseTo(1, 1);
    },
  );

  test('takes away the mean: a long sound has none', () => {
    const { samples } = partOf(renderTake(settingsFrom(designWith()), steady(LIT, DARK), 1.5), 0.5, 1.5);
    const mean = samples.reduce((sum, value) => sum + value, 0) / samples.length;
    expect(Math.abs(mean)).toBeLessThan(1e-3 * levelAt({ samples, sampleRate: 48_000 }));
  });

  test('keeps its charge when the load is changed: the step is the load’s share of what was there', () => {
    const small = designWith();
    const large = designWith({ output: { loadOhms: 100_000 } });
    const engine = new Engine(48_000, settingsFrom(small), steady(DARK, DARK));
    engine.render(new Float32Array(4800));
    engine.setSettings(settingsFrom(large));
    const after = new Float32Array(2000);
    engine.render(after);
    // Silent for a tenth of a second, seven time constants: a thousandth of the first step is left.
    const first = jackOf(small, 9);
    const low = first.sources[0]!.volts;
    const held = low * (1 - Math.exp(-0.1 / ((first.sources[0]!.ohms + 10_000) * 1e-6)));
    const jack = jackOf(large, 9);
    const share = loadShare(jack, jack.sources[0]!);
    const tau = (jack.sources[0]!.ohms + 100_000) * 1e-6;
    const at = 100;
    const expected = (low - held) * share * Math.exp(-(at - 16) / 48_000 / tau);
    expect(Math.abs(after[at]! / expected - 1)).toBeLessThan(0.01);
  });
});

/** Largest line that is no harmonic and not the mean, below 16 kHz, in decibels against the fundamental. */
function loudestAlias(frequency: number, duty: number, jack = ONLY_A): number {
  const rate = 48_000;
  const count = 32_768;
  const take = renderTake(pulseSettings(frequency, duty, jack), steady(LIT, DARK), 1, rate);
  const lines = windowedSpectrum(take.samples.subarray(8000, 8000 + count));
  const binOf = (hertz: number) => (hertz * count) / rate;
  const around = (bin: number) => Math.max(...lines.subarray(Math.round(bin) - 1, Math.round(bin) + 2));
  let loudest = 0;
  for (let bin = 9; bin < binOf(16_000); bin++) {
    const nearest = Math.round(bin / binOf(frequency)) * binOf(frequency);
    if (Math.abs(bin - nearest) > 8) loudest = Math.max(loudest, lines[bin]!);
  }
  return 20 * Math.log10(loudest / around(binOf(frequency)));
}

test.each([
  [1234.5, 0.25],
  [1234.5, 2 / 3],
  [5000.3, 0.25],
  [5000.3, 2 / 3],
  [9876.5, 0.5],
])('at %d Hz, %d high, no alias below 16 kHz stands above −90 dB', (frequency, duty) => {
  expect(loudestAlias(frequency, duty)).toBeLessThan(-90);
});

test.each([1234.5, 5000.3])(
  'at %d Hz also behind a small coupling capacitor, where every edge sags',
  (frequency) => {
    // 10 kΩ · 100 nF: 48 samples.
    expect(loudestAlias(frequency, 0.25, { ...ONLY_A, couplingFarads: 100e-9 })).toBeLessThan(-90);
  },
);

test('behind a very small one they rise, but no further than told', () => {
  // 10 kΩ · 10 nF: 5 samples.
  const loudest = [1234.5, 5000.3, 9876.5].map((hertz) =>
    loudestAlias(hertz, 0.25, { ...ONLY_A, couplingFarads: 10e-9 }),
  );
  expect(Math.max(...loudest)).toBeLessThan(-69);
  expect(Math.min(...loudest)).toBeGreaterThan(-75);
});

test('an edge placed on whole samples would be noticed by that measure', () => {
  const rate = 48_000;
  const naive = Float32Array.from({ length: 32_768 }, (_, i) => (((i * 1234.5) / rate) % 1 < 0.25 ? 1 : 0));
  const lines = windowedSpectrum(naive);
  const perBin = rate / 32_768;
  const fundamental = Math.max(...lines.subarray(842, 845));
  let loudest = 0;
  for (let bin = 9; bin * perBin < 16_000; bin++) {
    const harmonic = Math.round((bin * perBin) / 1234.5) * 1234.5;
    if (Math.abs(bin * perBin - harmonic) > 8 * perBin) loudest = Math.max(loudest, lines[bin]!);
  }
  expect(20 * Math.log10(loudest / fundamental)).toBeGreaterThan(-40);
});

test('a harmonic near the top of hearing keeps its strength', () => {
  const rate = 48_000;
  const take = renderTake({ ...pulseSettings(2000, 0.5) }, steady(LIT, DARK), 1, rate);
  const lines = windowedSpectrum(take.samples.subarray(8000, 8000 + 32_768));
  const around = (hertz: number) => {
    const bin = Math.round((hertz * 32_768) / rate);
    return Math.max(...lines.subarray(bin - 1, bin + 2));
  };
  // The seventh harmonic of a square is a seventh of the first.
  expect(20 * Math.log10((7 * around(14_000)) / around(2000))).toBeCloseTo(0, 0);
});

describe('whatever is built', () => {
  const { between, anyDesign } = seededDesigns(2026);
  /** Any design whose astables stay below the formula's own limit of 100 kHz. */
  const anyPlayable = (): Design => {
    for (;;) {
      const design = anyDesign();
      const { A, B } = instrumentOf(design).voices;
      if (A.cycle.frequency < 100_000 && B.cycle.frequency < 100_000) return design;
    }
  };

  test('the jack never passes 1.25 of its bound and stays a number, over 200 designs (seed 2026)', () => {
    let heard = 0;
    for (let i = 0; i < 200; i++) {
      const design = anyPlayable();
      expect(decode(design)).toMatchObject({ ok: true });
      const instrument = instrumentOf(design);
      const light = jumps(
        [0, between({ min: 0.1, max: 5000 }), between({ min: 0.1, max: 5000 })],
        [0.03, between({ min: 0.1, max: 5000 }), between({ min: 0.1, max: 5000 })],
        [0.06, 0, 20_000],
      );
      const take = renderTake(settingsOf(design, instrument), light, 0.1);
      expect(take.samples.every(Number.isFinite), `design ${i}`).toBe(true);
      const peak = peakOf(take);
      expect(peak, `design ${i}`).toBeLessThanOrEqual(1.25 * instrument.jack.boundVolts + 1e-12);
      if (peak > 0.5 * instrument.jack.boundVolts) heard++;
    }
    // Many of them do sound, so that the bound means something.
    expect(heard).toBeGreaterThan(80);
  });
});

describe('a trimmer turned while sounding', () => {
  /** Largest change from one sample to the next. */
  const jumpOf = (samples: Float32Array) =>
    samples.reduce((most, value, i) => (i === 0 ? 0 : Math.max(most, Math.abs(value - samples[i - 1]!))), 0);

  test('makes no larger jump than an edge does anyway', () => {
    const from = settingsFrom(designWith({ voices: pitchTurned('A', 0.2) }));
    const to = settingsFrom(designWith({ voices: pitchTurned('A', 0.9) }));
    const usual = Math.max(
      ...[from, to].map((settings) => jumpOf(renderTake(settings, steady(LIT, LIT), 1).samples)),
    );
    const engine = new Engine(48_000, from, steady(LIT, LIT));
    let largest = 0;
    for (let turn = 0; turn < 20; turn++) {
      const samples = new Float32Array(2400 + turn * 37);
      engine.render(samples);
      largest = Math.max(largest, jumpOf(samples));
      engine.setSettings(turn % 2 === 0 ? to : from);
    }
    expect(largest).toBeLessThanOrEqual(usual * 1.02);
  });

  test('arrives at the new pitch after its glide, through pitches in between', () => {
    const wire = { output: { coupling: null } };
    const from = designWith({ ...wire, A: pitchTurned('A', 0.2) });
    const to = designWith({ ...wire, A: pitchTurned('A', 0.9) });
    const engine = new Engine(48_000, { ...settingsFrom(from), jack: ONLY_A }, steady(LIT, DARK));
    engine.render(new Float32Array(4800));
    engine.setSettings({ ...settingsFrom(to), jack: ONLY_A });
    const samples = new Float32Array(9600);
    engine.render(samples);
    const ups: number[] = [];
    for (let i = 1; i < samples.length; i++) if (samples[i - 1]! < 0.5 && samples[i]! >= 0.5) ups.push(i);
    const periods = ups.slice(1).map((at, i) => at - ups[i]!);
    const ends = [from, to].map((design) => 48_000 / instrumentOf(design).voices.A.cycle.frequency) as [
      number,
      number,
    ];
    expect(periods.some((p) => p > ends[0] + 3 && p < ends[1] - 3)).toBe(true);
    expect(periods.at(-1)!).toBeGreaterThan(ends[1] - 1.5);
    expect(periods.at(-1)!).toBeLessThan(ends[1] + 1.5);
    for (let i = 1; i < periods.length; i++) expect(periods[i]!).toBeGreaterThan(periods[i - 1]! - 2);
  });
});

test('the pulse that the spectrum rows ask about is the one described', () => {
  const a = pulseOf(200, 0.25);
  expect(a.chargeOhms * a.farads * Math.LN2).toBeCloseTo(0.25 / 200, 15);
  expect(a.sinkOhms * a.farads * Math.LN2).toBeCloseTo(0.75 / 200, 15);
});
