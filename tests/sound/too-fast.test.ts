import { describe, expect, it } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { setCapacitance, setCoupling, setVoiceValue, turnPitch } from '../../src/design/commands.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { Engine } from '../../src/sound/engine.ts';
import { renderTake } from '../../src/sound/render.ts';
import { settingsOf } from '../../src/sound/settings.ts';

const bare: Design = setCoupling(null)({ ...DEFAULT_DESIGN, noise: { voltsRms: 0, seed: 1 } });
const tooFast = (farads: number) =>
  turnPitch('A', 0)(setVoiceValue('A', 'rbFixedOhms', 0)(setCapacitance('A', farads)(bare)));
const litA = { kind: 'steady', lux: { A: 300, B: 1 } } as const;
const settings = (design: Design) => settingsOf(design, instrumentOf(design));

describe('a voice faster than the sampling rate can carry', () => {
  it('stands at its mean: duty times the step of its output', () => {
    const design = tooFast(1e-9);
    const { voices, jack } = instrumentOf(design);
    expect(voices.A.cycle.frequency).toBeGreaterThan(24_000);
    const share = (i: number) =>
      (jack.sources[i]!.volts * jack.loadOhms) / (jack.sources[i]!.ohms + jack.loadOhms);
    const mean = share(0) + voices.A.cycle.dutyCycle * (share(1) - share(0));
    const { samples } = renderTake(settings(design), litA, 0.2);
    for (const value of samples.subarray(4800)) expect(value / mean).toBeCloseTo(1, 4);
  });

  it('costs no more events than a silent one, even at hundreds of megahertz', () => {
    let edges = 0;
    const engine = new Engine(48_000, settings(tooFast(100e-12)), litA);
    engine.onGate = () => edges++;
    const out = new Float32Array(48_000);
    engine.render(out);
    expect(edges).toBe(0);
    expect(new Set(out.subarray(4800)).size).toBeLessThan(20);
  });

  it('comes back to its tone when it is slowed again', () => {
    const engine = new Engine(48_000, settings(tooFast(1e-9)), litA);
    engine.render(new Float32Array(4800));
    engine.setSettings(settings(bare));
    engine.render(new Float32Array(9600));
    const out = new Float32Array(48_000);
    engine.render(out);
    const middle = (Math.max(...out) + Math.min(...out)) / 2;
    let ups = 0;
    for (let i = 1; i < out.length; i++) if (out[i - 1]! < middle && out[i]! >= middle) ups++;
    expect(Math.abs(ups - instrumentOf(bare).voices.A.cycle.frequency)).toBeLessThanOrEqual(1);
  });
});
