/** From two timer outputs to the jack, against an independent solution of the net. */
import { describe, expect, test } from 'vitest';
import { jackOf, loadShare, timerOutput } from '../../src/circuit/output.ts';
import type { Design } from '../../src/design/design.ts';
import { designWith } from './building.ts';
import { type Part, rail, resistor, solve } from './nodal.ts';

/** Voltage at the load with a wire in the place of the coupling capacitor. */
function jackVolts(design: Design, aHigh: boolean, bHigh: boolean): number {
  const { mixOhms, shuntOhms, volume, loadOhms } = design.output;
  const parts: Part[] = [];
  for (const [id, high] of [
    ['A', aHigh],
    ['B', bHigh],
  ] as const) {
    const { volts, ohms } = timerOutput(design, 9, high);
    parts.push(rail(`drive${id}`, volts), resistor(`drive${id}`, 'mix', ohms + (mixOhms?.[id] ?? 0)));
  }
  if (shuntOhms !== null) parts.push(resistor('mix', '0', shuntOhms));
  const out = volume === null ? 'mix' : 'jack';
  if (volume !== null) {
    parts.push(resistor('mix', 'jack', volume.ohms * (1 - volume.rotation)));
    parts.push(resistor('jack', '0', volume.ohms * volume.rotation));
  }
  parts.push(resistor(out, '0', loadOhms));
  return solve(parts)[out]!;
}

const outputs = [
  { name: 'mixed, with a shunt', output: {} },
  { name: 'mixed unequally', output: { mixOhms: { A: 10_000, B: 68_000 } } },
  { name: 'mixed, no shunt', output: { shuntOhms: null } },
  { name: 'joined', output: { mixOhms: null } },
  { name: 'with a volume control', output: { volume: { ohms: 10_000, rotation: 0.3 } } },
  {
    name: 'joined, volume control, headphones',
    output: { mixOhms: null, volume: { ohms: 1000, rotation: 0.7 }, loadOhms: 32 },
  },
];

describe.each(outputs)('$name', ({ output }) => {
  test.each(['bipolar', 'cmos'] as const)('the four voltages at the load agree with the net, %s', (timer) => {
    const design = designWith({ timer, output });
    const jack = jackOf(design, 9);
    const values = [0, 1, 2, 3].map((i) => jackVolts(design, (i & 1) === 1, (i & 2) === 2));
    for (const [i, source] of jack.sources.entries())
      expect(source.volts * loadShare(jack, source)).toBeCloseTo(values[i]!, 6);
    // Through the coupling capacitor the highest source may be left behind by a state of another share.
    const held = jack.couplingFarads === null ? 0 : Math.max(...jack.sources.map((source) => source.volts));
    const far = jack.sources.map(
      (source) => loadShare(jack, source) * Math.max(source.volts, held - source.volts),
    );
    expect(jack.boundVolts).toBeCloseTo(Math.max(...values, ...far), 6);
  });
});

test('joined outputs give three levels, and fight with the current that their own resistances let through', () => {
  const design = designWith({ output: { mixOhms: null } });
  const jack = jackOf(design, 9);
  const [none, a, b, all] = jack.sources.map((source) => source.volts * loadShare(jack, source)) as [
    number,
    number,
    number,
    number,
  ];
  expect(a).toBeCloseTo(b, 9);
  expect(a).toBeGreaterThan(none + 1);
  expect(all).toBeGreaterThan(a + 1);
  // 7.7 V behind 6 Ω against 0.02 V behind 12 Ω.
  expect(jack.clashAmperes).toBeCloseTo((7.7 - 0.02) / 18, 9);
  expect(jackOf(designWith(), 9).clashAmperes).toBeLessThan(1e-4);
});

test('a volume control turned down leaves nothing at the jack', () => {
  const jack = jackOf(designWith({ output: { volume: { ohms: 10_000, rotation: 0 } } }), 9);
  for (const source of jack.sources) expect(source.volts * loadShare(jack, source)).toBe(0);
});
