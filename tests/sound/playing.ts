/** Instruments made ready to play, and plain jacks that show one timer's output as it is. */

import type { Astable } from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import type { Jack } from '../../src/circuit/output.ts';
import type { Design } from '../../src/design/design.ts';
import type { LightProgram } from '../../src/light/program.ts';
import { type EngineSettings, settingsOf } from '../../src/sound/settings.ts';
import { designWith } from '../circuit/building.ts';

export const settingsFrom = (design: Design): EngineSettings => settingsOf(design, instrumentOf(design));

/** Light that leaves a voice of the bench design sounding, and light that silences it. */
export const LIT = 300;
export const DARK = 2;

export const steady = (A: number, B: number): LightProgram => ({ kind: 'steady', lux: { A, B } });

/** Light that jumps: rows of [time, lux at A, lux at B], each held until the next. */
export function jumps(...rows: readonly (readonly [number, number, number])[]): LightProgram {
  const held = rows.flatMap(([time, A, B], i) => {
    const next = rows[i + 1];
    return next ? [[time, A, B] as const, [next[0], A, B] as const] : [[time, A, B] as const];
  });
  return {
    kind: 'points',
    times: Float64Array.from(held, ([time]) => time),
    lux: { A: Float64Array.from(held, (row) => row[1]), B: Float64Array.from(held, (row) => row[2]) },
  };
}

/** A jack that is 0 V or 1 V with voice A's output, whatever B's does. */
export const ONLY_A: Jack = {
  sources: [0, 1, 0, 1].map((volts) => ({ volts, ohms: 0 })),
  loadOhms: 1e4,
  couplingFarads: null,
  boundVolts: 1,
  clashAmperes: 0,
};

/** A capacitor that runs between 3 V and 6 V of 9 V at a frequency and a duty cycle given in advance. */
export function pulseOf(frequency: number, duty: number): Astable {
  const farads = 10e-9;
  const ohms = (share: number) => share / (frequency * farads * Math.LN2);
  return {
    farads,
    chargeVolts: 9,
    chargeOhms: ohms(duty),
    sinkVolts: 0,
    sinkOhms: ohms(1 - duty),
    lowerVolts: 3,
    upperVolts: 6,
  };
}

/** A pulse between 0 V and 1 V, gated by voice A's light. */
export function pulseSettings(frequency: number, duty: number, jack: Jack = ONLY_A): EngineSettings {
  const base = settingsFrom(designWith());
  return { ...base, jack, astables: { ...base.astables, A: pulseOf(frequency, duty) } };
}
