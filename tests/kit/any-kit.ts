/** Kits for tests: designs over every option that changes the connections, by combination and by seed. */
import { inBatch, wishBoard } from '../../src/design/batch-commands.ts';
import type { Design, Voice } from '../../src/design/design.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { pairOf } from '../../src/quantity/units.ts';
import { BENCH_DESIGN, cellAt, designWith } from '../circuit/building.ts';

const trimmer = BENCH_DESIGN.voices.A.trimmer;
const reference = BENCH_DESIGN.threshold.trimmers.A;

/** Each option with its choices; the first is the bench design's. */
const OPTIONS = {
  arrangement: ['each', 'shared'],
  hysteresis: [true, false],
  polarity: ['light', 'shade'],
  cell: ['bottom', 'top'],
  fixedRb: [true, false],
  endResistors: ['both', 'none', 'top', 'bottom'],
  mixing: ['resistors', 'joined'],
  shunt: [true, false],
  volume: [false, true],
  coupling: ['film', 'electrolytic', 'none', 'large film'],
  diode: [false, true],
  decoupled: [true, false],
  control: [false, true],
  trimmers: ['single-turn', 'multi-turn', 'carbon'],
  timing: ['polyester', 'x7r', 'electrolytic', 'polyester 470n'],
  resistors: ['as they fit', 'flat', 'upright'],
} as const;

type Options = typeof OPTIONS;
export type OptionName = keyof Options;
export type Choice = { readonly [K in OptionName]: Options[K][number] };

const NAMES = Object.keys(OPTIONS) as OptionName[];

const COUPLING = {
  film: { farads: 1e-6, kind: 'film' },
  electrolytic: { farads: 100e-6, kind: 'electrolytic' },
  none: null,
  'large film': { farads: 4.7e-6, kind: 'film' },
} as const;
const TIMING = {
  polyester: { farads: 68e-9, dielectric: 'polyester', tolerance: 0.1 },
  x7r: { farads: 47e-9, dielectric: 'x7r', tolerance: 0.1 },
  electrolytic: { farads: 1e-6, dielectric: 'electrolytic', tolerance: 0.2 },
  'polyester 470n': { farads: 470e-9, dielectric: 'polyester', tolerance: 0.1 },
} as const;

/** The bench design with one choice of each option, for voice A from one and for voice B from another. */
export function designOf(a: Choice, b: Choice = a): Design {
  const voiceOf = (choice: Choice): Partial<Voice> => ({
    hysteresisOhms: choice.hysteresis ? 680_000 : null,
    polarity: choice.polarity,
    ...cellAt(choice.cell),
    rbFixedOhms: choice.fixedRb ? 12_000 : 0,
    trimmer: { ...trimmer, part: choice.trimmers },
    capacitor: TIMING[choice.timing],
    controlVolts: choice.control ? 5 : null,
  });
  const end = ({ endResistors, trimmers }: Choice) => ({
    ...reference,
    trimmer: { ...reference.trimmer, part: trimmers },
    topOhms: endResistors === 'both' || endResistors === 'top' ? reference.topOhms : 0,
    bottomOhms: endResistors === 'both' || endResistors === 'bottom' ? reference.bottomOhms : 0,
  });
  const design = designWith({
    A: voiceOf(a),
    B: voiceOf(b),
    threshold: { arrangement: a.arrangement, trimmers: { A: end(a), B: end(b) } },
    output: {
      mixOhms: a.mixing === 'resistors' ? { A: 47_000, B: 47_000 } : null,
      shuntOhms: a.shunt ? 4700 : null,
      volume: a.volume ? { ohms: 10_000, rotation: 0.5 } : null,
      coupling: COUPLING[a.coupling],
    },
    supply: { diode: a.diode, decoupled: a.decoupled },
  });
  return inBatch(wishBoard({ resistors: a.resistors }))(design);
}

/** Every option at its first choice. */
export const PLAIN_CHOICE = Object.fromEntries(NAMES.map((name) => [name, OPTIONS[name][0]])) as Choice;

/** Each choice of each option, the others plain. */
export function* singleChoices(): Iterable<Choice> {
  yield PLAIN_CHOICE;
  for (const name of NAMES) for (const one of OPTIONS[name].slice(1)) yield { ...PLAIN_CHOICE, [name]: one };
}

/** Each pair of options at every pair of their choices, the others plain. */
export function* pairwiseChoices(): Iterable<Choice> {
  yield* singleChoices();
  for (const [i, name] of NAMES.entries())
    for (const other of NAMES.slice(i + 1))
      for (const one of OPTIONS[name].slice(1))
        for (const two of OPTIONS[other].slice(1)) yield { ...PLAIN_CHOICE, [name]: one, [other]: two };
}

/** Choices drawn one after another, the two voices apart. */
export function seededChoices(seed: number): () => readonly [Choice, Choice] {
  const uniform = uniformFrom(seed);
  const draw = (): Choice =>
    Object.fromEntries(
      NAMES.map((name) => [name, OPTIONS[name][Math.floor(uniform() * OPTIONS[name].length)]]),
    ) as Choice;
  return () => {
    const both = pairOf(draw);
    return [both.A, both.B];
  };
}
