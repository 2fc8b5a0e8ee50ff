/** How fast the whole chain renders, against the clock and against a general-purpose solver. */
import { designWith } from '../../tests/circuit/building.ts';
import { centsBetween, frequencyOf, partOf } from '../../tests/ear.ts';
import { ONLY_A, pulseOf, pulseSettings, settingsFrom, steady } from '../../tests/sound/playing.ts';
import { cycleOf } from '../circuit/astable.ts';
import { steadyConductance } from '../circuit/cell.ts';
import { instrumentOf } from '../circuit/instrument.ts';
import type { LightProgram } from '../light/program.ts';
import { type Hertz, pairOf, type Seconds } from '../quantity/units.ts';
import { renderTake } from '../sound/render.ts';
import type { EngineSettings } from '../sound/settings.ts';
import { fastest, timesLonger } from './bench-clock.ts';
import { odeRender } from './ode-render.ts';

const RATE: Hertz = 48_000;
/** Asked of the solver: the engine's edges are closed forms, off by rounding alone, so the solver has to come near that. */
const ODE_TOLERANCE = 1e-12;

/** Both sensors in a lamp that ripples by 37 % a hundred times a second. */
const RIPPLED: LightProgram = {
  kind: 'ripple',
  of: { kind: 'steady', lux: { A: 300, B: 300 } },
  hertz: 100,
  depth: 0.37,
  shape: 'sine',
};

/** Two voices at these frequencies, a third of a period low, with noise at both nodes. */
function pair(a: Hertz, b: Hertz): EngineSettings {
  const base = settingsFrom(designWith({ noise: { voltsRms: 0.001, seed: 1 } }));
  return { ...base, astables: { A: pulseOf(a, 2 / 3), B: pulseOf(b, 2 / 3) } };
}

/** Seconds of sound made in a second. */
export function timesRealtime(a: Hertz, b: Hertz, seconds: Seconds = 20): number {
  const settings = pair(a, b);
  return seconds / fastest(() => renderTake(settings, RIPPLED, seconds, RATE));
}

/** How many times longer the solver takes for the same take than the engine, noise off for both. */
export function renderVsOde(seconds: Seconds = 1): number {
  const settings = { ...pair(301, 299), noise: { voltsRms: 0, seed: 1 } };
  const { voices } = instrumentOf(designWith());
  const gates = pairOf((voice) => ({
    speed: settings.speeds[voice],
    onAt: steadyConductance(settings.speeds[voice].gamma, voices[voice].tripLux.on ?? 0),
    offAt: steadyConductance(settings.speeds[voice].gamma, voices[voice].tripLux.off ?? 0),
    soundsAbove: 1 as const,
  }));
  return timesLonger(
    () => odeRender(settings, gates, RIPPLED, seconds, RATE, ODE_TOLERANCE),
    () => renderTake(settings, RIPPLED, seconds, RATE),
  );
}

/** The largest error of a heard period against the model's over a handful of pitches, cents. */
export function periodErrorCents(): number {
  const errors = [55, 110, 261.6, 440, 1234.5, 3000].map((hertz) => {
    const settings = pulseSettings(hertz, 2 / 3, ONLY_A);
    const sound = renderTake(settings, steady(300, 2), 4.1, RATE);
    const { frequency } = cycleOf(settings.astables.A);
    return Math.abs(centsBetween(frequency, frequencyOf(partOf(sound, 0.1, 4.1), 0.5)));
  });
  return Math.max(...errors);
}
