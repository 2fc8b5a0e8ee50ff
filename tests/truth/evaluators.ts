/** One evaluator for each kind of row: inputs of the table in, figures from the product's own functions out. */
import {
  type Astable,
  astableFrom,
  cycleOf,
  dischargeSeconds,
  saturationVolts,
} from '../../src/circuit/astable.ts';
import {
  cellOhms,
  cellSpeed,
  fallFactor,
  luxFor,
  riseFactor,
  steadyConductance,
  stepConductance,
} from '../../src/circuit/cell.ts';
import {
  cellSiemens,
  gatesOf,
  loadedVolts,
  nodeVolts,
  plusVolts,
  pullOf,
  referenceSource,
  rotationForVolts,
  tripLux,
} from '../../src/circuit/gate.ts';
import { type Jack, jackOf, loadShare, timerOutput } from '../../src/circuit/output.ts';
import type { Cell, ThresholdTrimmer } from '../../src/design/design.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { centsBetween, frequencyOfNote, nearestNote, noteNumberOf } from '../../src/plan/notes.ts';
import { renderTake } from '../../src/sound/render.ts';
import { Timer } from '../../src/sound/timer.ts';
import { designWith } from '../circuit/building.ts';
import { DARK, LIT, ONLY_A, pulseSettings, steady } from '../sound/playing.ts';
import { lineAt } from '../sound/spectrum.ts';

type Value = number | string | null;

export interface Row {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly kind: string;
  readonly inputs: Readonly<Record<string, Value>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly allowed: { readonly relative: number } | { readonly absolute: number };
  readonly unit: string;
}

/** A row as read from its file. Throws, with the place, on anything that is not one. */
export function readRow(value: unknown, place: string): Row {
  const row = value as Row;
  const texts = [row.id, row.what, row.source, row.kind, row.unit];
  const [allowed, ...others] = Object.entries(row.allowed ?? {});
  const sound =
    texts.every((text) => typeof text === 'string' && text !== '') &&
    Object.values(row.expected ?? {}).length > 0 &&
    Object.values(row.expected).every(Number.isFinite) &&
    typeof row.inputs === 'object' &&
    others.length === 0 &&
    (allowed?.[0] === 'relative' || allowed?.[0] === 'absolute') &&
    allowed[1] > 0;
  if (!sound) throw new Error(`${place} is not a row of a truth table`);
  return row;
}

/** Reads inputs by name and notices one that is missing. */
class Inputs {
  readonly #values: Readonly<Record<string, Value>>;

  constructor(values: Readonly<Record<string, Value>>) {
    this.#values = values;
  }

  number(name: string): number {
    const value = this.#values[name];
    if (typeof value !== 'number') throw new Error(`The row has no number "${name}".`);
    return value;
  }

  numberOr<T>(name: string, otherwise: T): number | T {
    return typeof this.#values[name] === 'number' ? this.number(name) : otherwise;
  }

  text(name: string): string {
    const value = this.#values[name];
    if (typeof value !== 'string') throw new Error(`The row has no text "${name}".`);
    return value;
  }
}

type Evaluator = (inputs: Inputs) => Readonly<Record<string, number>>;

export function valuesFor(row: Row): Readonly<Record<string, number>> {
  const evaluator = EVALUATORS[row.kind];
  if (!evaluator) throw new Error(`No evaluator for rows of the kind "${row.kind}".`);
  return evaluator(new Inputs(row.inputs));
}

/** The timing network of a row: an ideal discharge unless the row says what is left there. */
function astableIn(inputs: Inputs): Astable {
  const onOhms = inputs.numberOr('onOhms', null);
  const left = inputs.numberOr('sinkVolts', 0);
  return astableFrom({
    raOhms: inputs.number('raOhms'),
    rbOhms: inputs.number('rbOhms'),
    farads: inputs.number('farads'),
    railVolts: inputs.number('railVolts'),
    controlVolts: inputs.numberOr('controlVolts', null),
    discharge:
      onOhms === null
        ? {
            kind: 'saturation',
            points: [
              [0, left],
              [1, left],
            ],
          }
        : { kind: 'resistance', ohms: onOhms },
  });
}

const cellOf = (inputs: Inputs): Cell => ({
  family: 'cds-8-20k',
  r10Ohms: inputs.number('r10Ohms'),
  gamma: inputs.number('gamma'),
});

/** The input voltage at which a straight line through two of its values meets a level. */
function solved(line: (x: number) => number, level: number): number {
  const at0 = line(0);
  return (level - at0) / (line(1) - at0);
}

/** A divider without feedback on the supply of the row. */
function dividerGate(inputs: Inputs, position: 'top' | 'bottom') {
  const voice = {
    cell: cellOf(inputs),
    divider: { cell: position, fixedOhms: inputs.number('fixedOhms') },
    hysteresisOhms: null,
  };
  const design = designWith({ A: voice });
  return { design, gate: gatesOf(design, inputs.number('supplyVolts')).A };
}

/** τ and the resistances' own figures do not matter for the moving cell: its speed at a slope. */
const speedOf = (gamma: number) => cellSpeed({ family: 'cds-8-20k', r10Ohms: 12_000, gamma });

/** Time until a moving cell passes a conductance, stepped finely and placed by a straight line. */
function passingSeconds(gamma: number, from: number, lux: number, passing: number): number {
  const speed = speedOf(gamma);
  const step = 1e-5;
  let y = from;
  for (let i = 0; i < 1e6; i++) {
    const next = stepConductance(speed, y, step, lux, lux, lux);
    if (y < passing !== next < passing) return step * (i + (passing - y) / (next - y));
    y = next;
  }
  throw new Error('The cell never passes that conductance.');
}

/** A single voltage behind a resistance, a capacitor, a load: the step at time 0 and how it decays, as sound. */
function couplingTau(inputs: Inputs): number {
  const jack: Jack = {
    ...ONLY_A,
    sources: [0, 1, 2, 3].map(() => ({ volts: 1, ohms: inputs.number('sourceOhms') })),
    loadOhms: inputs.number('loadOhms'),
    couplingFarads: inputs.number('farads'),
  };
  const rate = 192_000;
  const { samples } = renderTake(pulseSettings(100, 0.5, jack), steady(DARK, DARK), 1, rate);
  const first = 40;
  // Until about a third is left, so that the rounding of single precision does not count.
  const last = samples.findIndex((value, i) => i > first && value < samples[first]! * 0.4);
  const end = last < 0 ? samples.length - 1 : last;
  return (end - first) / rate / Math.log(samples[first]! / samples[end]!);
}

/** One second of a pulse between 0 V and 1 V: whole periods, away from its beginning. */
function pulse(inputs: Inputs): { samples: Float32Array; period: number } {
  const rate = 192_000;
  const frequency = 200;
  const duty = inputs.number('part') / inputs.number('whole');
  const { samples } = renderTake(pulseSettings(frequency, duty), steady(LIT, DARK), 0.3, rate);
  const period = rate / frequency;
  return { samples: samples.subarray(10 * period, 50 * period), period };
}

const EVALUATORS: Readonly<Record<string, Evaluator>> = {
  astable: (inputs) => ({ ...cycleOf(astableIn(inputs)) }),

  'low time factor': (inputs) => ({
    factor: cycleOf(astableIn(inputs)).lowSeconds / (inputs.number('rbOhms') * inputs.number('farads')),
  }),

  'on-resistance': (inputs) => {
    const ideal = inputs.number('rbOhms') * inputs.number('farads') * Math.LN2;
    return { longerBy: cycleOf(astableIn(inputs)).lowSeconds / ideal - 1 };
  },

  'bipolar saturation': (inputs) => {
    const { discharge } = TIMERS.bipolar;
    if (discharge.kind !== 'saturation') throw new Error('The bipolar timer saturates.');
    return { volts: saturationVolts(discharge.points, inputs.number('amperes')) };
  },

  'cmos on-resistance': (inputs) => {
    const { discharge } = TIMERS.cmos;
    if (discharge.kind !== 'resistance') throw new Error('The CMOS timer has an on-resistance.');
    return { ratio: discharge.ohms / (inputs.number('volts') / inputs.number('amperes')) };
  },

  'first high ratio': (inputs) => {
    const { firstHighSeconds, highSeconds } = cycleOf(astableIn(inputs));
    return { ratio: firstHighSeconds / highSeconds };
  },

  'first period ratio': (inputs) => {
    const { firstHighSeconds, highSeconds, lowSeconds } = cycleOf(astableIn(inputs));
    return { ratio: (firstHighSeconds + lowSeconds) / (highSeconds + lowSeconds) };
  },

  'decay in reset': (inputs) => ({
    seconds: dischargeSeconds(astableIn(inputs), inputs.number('fromVolts')),
  }),

  'waits after a short reset': (inputs) => {
    const astable = astableIn(inputs);
    const timer = new Timer(astable, true);
    const volts = inputs.number('fromVolts');
    const { chargeVolts, chargeOhms, farads } = astable;
    const reset = chargeOhms * farads * Math.log(chargeVolts / (chargeVolts - volts));
    timer.setReleased(reset, false);
    timer.setReleased(reset + 1e-9, true);
    if (timer.high) throw new Error('The output rose at once.');
    return { seconds: timer.next - reset };
  },

  'reset node': (inputs) => {
    const design = designWith({ A: { pullUpOhms: inputs.number('pullUpOhms') } });
    return { volts: pullOf(design, 'A', inputs.number('supplyVolts')).high.volts };
  },

  'signal side feedback': (inputs) => {
    const [input, feedback] = [inputs.number('inputOhms'), inputs.number('feedbackOhms')];
    const trip = (volts: number, ohms: number) =>
      solved((node) => plusVolts(node, input, feedback, { volts, ohms }), inputs.number('referenceVolts'));
    const upper = trip(inputs.number('lowVolts'), 0);
    const lower = trip(inputs.number('highVolts'), inputs.number('highOhms'));
    return { upper, lower, width: upper - lower };
  },

  'reference side feedback': (inputs) => {
    const upper = referenceWith(inputs, inputs.number('highVolts'), inputs.number('highOhms'));
    const lower = referenceWith(inputs, inputs.number('lowVolts'), 0);
    return { upper, lower, width: upper - lower };
  },

  'output high': (inputs) => {
    const [volts, ohms] = [inputs.number('highVolts'), inputs.number('highOhms')];
    const upper = referenceWith(inputs, volts, ohms);
    return { volts: volts + ((upper - volts) * ohms) / (ohms + inputs.number('feedbackOhms')) };
  },

  'common-mode ceiling': (inputs) => ({
    volts: gatesOf(designWith(), inputs.number('supplyVolts')).A.states[0]!.limitVolts,
  }),

  wiper: (inputs) => {
    const part: ThresholdTrimmer = {
      topOhms: 0,
      bottomOhms: 0,
      trimmer: { part: 'single-turn', ohms: inputs.number('ohms'), tolerance: 0.1, rotation: 0 },
    };
    const supply = inputs.number('supplyVolts');
    const rotation = rotationForVolts(part, supply, inputs.number('volts'));
    return { ...referenceSource({ ...part, trimmer: { ...part.trimmer, rotation } }, supply) };
  },

  cell: (inputs) => ({ ohms: cellOhms(cellOf(inputs), inputs.number('lux')) }),

  'light for resistance': (inputs) => {
    const lux = luxFor(cellOf(inputs), inputs.number('ohms'));
    if (lux === null) throw new Error('No light does that.');
    return { lux };
  },

  divider: (inputs) => {
    const { gate } = dividerGate(inputs, inputs.text('cell') as 'top' | 'bottom');
    const siemens = cellSiemens(gate, steadyConductance(inputs.number('gamma'), inputs.number('lux')));
    return { volts: nodeVolts(gate.states[0]!, siemens) };
  },

  'light for node': (inputs) => {
    const { design, gate } = dividerGate(inputs, 'top');
    const lux = tripLux(design, 'A', { ...gate.states[0]!, tripVolts: inputs.number('volts') });
    if (lux === null) throw new Error('No light does that.');
    return { lux };
  },

  'cell factors': (inputs) => ({
    rise: riseFactor(inputs.number('gamma')),
    fall: fallFactor(inputs.number('gamma')),
  }),

  'cell stepped': (inputs) => {
    const gamma = inputs.number('gamma');
    const { riseTau, fallTau } = speedOf(gamma);
    return {
      rise: passingSeconds(gamma, 0, 10, 1 - Math.exp(-1)) / riseTau,
      fall: passingSeconds(gamma, 1, 0, Math.exp(-1)) / fallTau,
    };
  },

  'cell tau': (inputs) => {
    const { riseTau, fallTau } = speedOf(inputs.number('gamma'));
    return { rise: riseTau, fall: fallTau };
  },

  'cell predicted fall': (inputs) => {
    const gamma = inputs.number('gamma');
    return { fallSeconds: (inputs.number('riseSeconds') / riseFactor(gamma)) * fallFactor(gamma) };
  },

  'ripple gain': (inputs) => {
    const [gamma, hertz, lux] = [inputs.number('gamma'), inputs.number('hertz'), inputs.number('lux')];
    const speed = speedOf(gamma);
    const depth = 0.001;
    const perCycle = 200;
    const step = 1 / (hertz * perCycle);
    const at = (i: number) => lux * (1 + depth * Math.sin((2 * Math.PI * i) / perCycle));
    let y = steadyConductance(gamma, lux);
    const still = y;
    let least = y;
    let most = y;
    for (let i = 0; i < 60 * perCycle; i++) {
      y = stepConductance(speed, y, step, at(i), at(i + 0.5), at(i + 1));
      if (i < 50 * perCycle) continue;
      least = Math.min(least, y);
      most = Math.max(most, y);
    }
    // A slow change of the light by a small share changes the conductance by γ times that share.
    return { gain: (most - least) / (2 * still * gamma * depth) };
  },

  'passing time': (inputs) => {
    const gamma = inputs.number('gamma');
    const y = (name: string) => steadyConductance(gamma, inputs.number(name));
    return { seconds: passingSeconds(gamma, y('fromLux'), inputs.number('toLux'), y('passingLux')) };
  },

  'coupling corner': (inputs) => ({ hertz: 1 / (2 * Math.PI * couplingTau(inputs)) }),
  'coupling time constant': (inputs) => ({ seconds: couplingTau(inputs) }),

  'mix share': (inputs) => {
    const ohms = inputs.number('mixOhms');
    const load = inputs.numberOr('loadOhms', null);
    const design = designWith({
      output: {
        mixOhms: { A: ohms, B: ohms },
        shuntOhms: inputs.numberOr('shuntOhms', null),
        coupling: null,
        loadOhms: load ?? 1e6,
      },
    });
    const jack = jackOf(design, 9);
    const [none, onlyA] = jack.sources;
    const share = (source: typeof none) => (load === null ? 1 : loadShare(jack, source!));
    const swing = timerOutput(design, 9, true).volts - timerOutput(design, 9, false).volts;
    return { share: (onlyA!.volts * share(onlyA) - none!.volts * share(none)) / swing };
  },

  note: (inputs) => {
    const frequency = frequencyOfNote(inputs.number('noteNumber'));
    const nearest = nearestNote(frequency);
    const named = nearest.name === inputs.text('name') && Math.abs(nearest.cents) < 1e-6;
    return { frequency, period: 1 / frequency, named: Number(named) };
  },

  cents: (inputs) => ({ cents: centsBetween(inputs.number('from'), inputs.number('to')) }),
  ratio: (inputs) => ({ ratio: frequencyOfNote(69 + inputs.number('cents') / 100) / 440 }),
  'note number': (inputs) => ({ noteNumber: noteNumberOf(inputs.number('frequency')) }),

  nearest: (inputs) => {
    const { name, cents } = nearestNote(inputs.number('frequency'));
    return { cents, named: Number(name === inputs.text('name')) };
  },

  harmonics: (inputs) => {
    const { samples, period } = pulse(inputs);
    return Object.fromEntries([1, 2, 3, 4, 5, 6, 7, 8].map((n) => [`c${n}`, lineAt(samples, n / period)]));
  },

  'second harmonic': (inputs) => {
    const { samples, period } = pulse(inputs);
    return { ratio: lineAt(samples, 2 / period) / lineAt(samples, 1 / period) };
  },

  'ac level': (inputs) => {
    const { samples } = pulse(inputs);
    const mean = samples.reduce((sum, value) => sum + value, 0) / samples.length;
    return { rms: Math.sqrt(samples.reduce((sum, value) => sum + (value - mean) ** 2, 0) / samples.length) };
  },
};

/** The + input of an inverting comparator for one state of its output. */
function referenceWith(inputs: Inputs, volts: number, ohms: number): number {
  const [top, bottom] = [inputs.number('topOhms'), inputs.number('bottomOhms')];
  const source = {
    volts: (inputs.number('supplyVolts') * bottom) / (top + bottom),
    ohms: (top * bottom) / (top + bottom),
  };
  return loadedVolts(source, [{ siemens: 1 / (inputs.number('feedbackOhms') + ohms), volts }]);
}
