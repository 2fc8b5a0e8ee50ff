/** The jack between events: for each pair of timer outputs a source, and how the coupling capacitor lets it decay. */
import { cycleOf } from '../circuit/astable.ts';
import type { Source } from '../circuit/gate.ts';
import { loadShare } from '../circuit/output.ts';
import type { Fraction, Hertz, Volts } from '../quantity/units.ts';
import type { EngineSettings } from './settings.ts';
import { LEVEL } from './timer.ts';

/** The jack while both timer outputs stay as they are. */
export interface JackState {
  /** Of the source behind the coupling capacitor, and the share of it that reaches the load. */
  readonly volts: Volts;
  readonly share: Fraction;
  /** Decay of the jack's voltage: rate, 1/s (0 = a plain wire), and what is left after one sample. */
  readonly perSecond: number;
  readonly perSample: number;
}

/**
 * The quickest decay that samples can hold, in samples. A quicker one is a mere tick, for the ear told by its area alone:
 * it is played this long, and lower by as much.
 */
const QUICKEST = 1;

/** The jack's states by timer levels: A + 3·B. */
export function jackStates(settings: EngineSettings, sampleRate: Hertz): readonly JackState[] {
  const { jack } = settings;
  return sourcesByLevel(settings).map((source) => {
    const tau = jack.couplingFarads === null ? null : (source.ohms + jack.loadOhms) * jack.couplingFarads;
    const held = tau === null ? null : Math.max(tau, QUICKEST / sampleRate);
    const perSecond = held === null ? 0 : 1 / held;
    return {
      volts: source.volts,
      share: loadShare(jack, source) * (tau === null || held === null ? 1 : tau / held),
      perSecond,
      perSample: Math.exp(-perSecond / sampleRate),
    };
  });
}

/** The four sources of the jack, and those in which a voice too fast to play stands at its mean. */
function sourcesByLevel({ jack, astables }: EngineSettings): readonly Source[] {
  const mean = (low: Source, high: Source, duty: Fraction): Source => ({
    volts: low.volts + duty * (high.volts - low.volts),
    ohms: low.ohms + duty * (high.ohms - low.ohms),
  });
  const duty = { A: cycleOf(astables.A).dutyCycle, B: cycleOf(astables.B).dutyCycle };
  const at = (a: number, b: number): Source => {
    if (b === LEVEL.mean) return mean(at(a, LEVEL.low), at(a, LEVEL.high), duty.B);
    if (a === LEVEL.mean) return mean(at(LEVEL.low, b), at(LEVEL.high, b), duty.A);
    return jack.sources[a + 2 * b]!;
  };
  return [0, 1, 2].flatMap((b) => [0, 1, 2].map((a) => at(a, b)));
}
