/**
 * A take by the general-purpose solver alone: both cells, both timing capacitors and the coupling capacitor as one
 * system, started anew at each event, with the jack's voltage read off at each sample. Edges are left as they fall,
 * without band limiting. What the engine has to beat.
 */
import { loadShare } from '../circuit/output.ts';
import { type LightProgram, luxAt, nextBreak } from '../light/program.ts';
import { type Hertz, type Pair, type Seconds, VOICES, type Volts } from '../quantity/units.ts';
import type { EngineSettings } from '../sound/settings.ts';
import type { OdeGate } from './ode.ts';
import { Solver } from './odex.ts';

/** The state's places: each voice's cell and capacitor, then the coupling capacitor. */
const PLACE = { A: { cell: 0, timing: 1 }, B: { cell: 2, timing: 3 } } as const;
const COUPLING = 4;

interface Event {
  readonly place: number;
  readonly level: number;
  readonly direction: 1 | -1;
  readonly happen: () => void;
}

/** Samples in volts at the jack, from a start with settled cells, empty capacitors and the supply on; no noise. */
export function odeRender(
  settings: EngineSettings,
  gates: Pair<OdeGate>,
  program: LightProgram,
  seconds: Seconds,
  rate: Hertz,
  tolerance: number,
): Float32Array {
  const { astables, jack } = settings;
  const samples = new Float32Array(Math.round(seconds * rate));
  const coupling = jack.couplingFarads;
  const rough = program.kind === 'ripple' && program.shape === 'sine' ? program.of : program;
  const solver = new Solver(5);
  solver.absoluteTolerance = solver.relativeTolerance = tolerance;
  solver.denseOutput = true;

  let state = [0, 0, 0, 0, 0];
  const on = { A: false, B: false };
  const high = { A: false, B: false };
  for (const voice of VOICES) {
    const { speed, onAt, soundsAbove } = gates[voice];
    state[PLACE[voice].cell] = (luxAt(program, voice, 0) / 10) ** speed.gamma;
    on[voice] = high[voice] = soundsAbove * (state[PLACE[voice].cell]! - onAt) > 0;
  }
  const source = () => jack.sources[(high.A ? 1 : 0) + (high.B ? 2 : 0)]!;

  const slope = (t: number, y: number[]): number[] => {
    const out = [0, 0, 0, 0, 0];
    for (const voice of VOICES) {
      const { cell, timing } = PLACE[voice];
      const { gamma, riseTau, fallTau } = gates[voice].speed;
      const gap = luxAt(program, voice, t) / 10 - Math.max(0, y[cell]!) ** (1 / gamma);
      out[cell] = gap / (gap > 0 ? riseTau : fallTau);
      const a = astables[voice];
      out[timing] = high[voice]
        ? (a.chargeVolts - y[timing]!) / (a.chargeOhms * a.farads)
        : (a.sinkVolts - y[timing]!) / (a.sinkOhms * a.farads);
    }
    if (coupling !== null) {
      const { volts, ohms } = source();
      out[COUPLING] = (volts - y[COUPLING]!) / ((ohms + jack.loadOhms) * coupling);
    }
    return out;
  };

  /** What may happen next, as things stand. */
  const possible = (): readonly Event[] =>
    VOICES.flatMap((voice): Event[] => {
      const gate = gates[voice];
      const { cell, timing } = PLACE[voice];
      const a = astables[voice];
      const trip: Event = {
        place: cell,
        level: on[voice] ? gate.offAt : gate.onAt,
        direction: on[voice] ? (-gate.soundsAbove as 1 | -1) : gate.soundsAbove,
        happen: () => {
          on[voice] = !on[voice];
          high[voice] = on[voice] && state[timing]! <= a.lowerVolts;
        },
      };
      const swing: Event = {
        place: timing,
        level: high[voice] ? a.upperVolts : on[voice] ? a.lowerVolts : Number.NEGATIVE_INFINITY,
        direction: high[voice] ? 1 : -1,
        happen: () => {
          high[voice] = !high[voice];
        },
      };
      return [trip, swing];
    });

  let sample = 0;
  let time = 0;
  while (sample < samples.length) {
    const end = Math.min(seconds, nextBreak(rough, time));
    const events = possible();
    const { volts, ohms } = source();
    const share = loadShare(jack, { volts, ohms });
    const jackVolts = (held: Volts) => (volts - held) * share;
    let first: { readonly event: Event; readonly time: Seconds; readonly state: number[] } | null = null;
    solver.initialStepSize = Math.min(1e-4, (end - time) / 2);
    const { y } = solver.solve(slope, time, state, end, (step, t0, t1, [...reached], within) => {
      if (step === 1) return undefined;
      for (const event of events) {
        if (event.direction * (reached[event.place]! - event.level) <= 0) continue;
        const at = passing(
          t0,
          first?.time ?? t1,
          (t) => event.direction * (within(event.place, t) - event.level),
        );
        if (at !== null) first = { event, time: at, state: reached.map((_, i) => within(i, at)) };
      }
      const until = first?.time ?? t1;
      for (; sample < samples.length && sample / rate < until; sample++)
        samples[sample] = jackVolts(coupling === null ? 0 : within(COUPLING, sample / rate));
      return first ? false : undefined;
    });
    const found = first as { event: Event; time: Seconds; state: number[] } | null;
    time = found ? found.time : end;
    state = found ? found.state : [...y];
    if (found) {
      state[found.event.place] = found.event.level;
      found.event.happen();
    } else if (end >= seconds) break;
  }
  return samples;
}

/** Where a function that is not above 0 at `low` first is above it, by halving; null when it is not so at `high`. */
function passing(low: Seconds, high: Seconds, above: (t: Seconds) => number): Seconds | null {
  if (above(high) <= 0) return null;
  let left = low;
  let right = high;
  for (;;) {
    const middle = (left + right) / 2;
    if (middle <= left || middle >= right) return right;
    if (above(middle) > 0) right = middle;
    else left = middle;
  }
}
