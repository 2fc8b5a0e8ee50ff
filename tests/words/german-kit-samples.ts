/** Arguments to try the words of Kit with: by path, wherever plain numbers will not do. */
import type { BandTrouble, SlipVerdict, ValueVerdict } from '../../src/words/bench.ts';
import type { AlternateEffect, OrderSpec } from '../../src/words/order.ts';

type Calls = readonly (readonly unknown[])[];
type Samples = Readonly<Record<string, Calls>>;

const each = (facts: readonly unknown[]): Calls => facts.map((fact) => [fact]);

const TIMING = { kind: 'timing capacitor', farads: 68e-9, tolerance: 0.05, volts: 62.5 } as const;
const OTHER = { kind: 'capacitor', farads: 2.2e-6, volts: 12.5 } as const;
const TRIMMER = { kind: 'trimmer', ohms: 22_500, tolerance: 0.1 } as const;

const SPECS: readonly OrderSpec[] = [
  { kind: 'resistor', ohms: 4700 },
  ...(['polyester', 'polypropylene', 'c0g', 'x7r', 'y5v', 'electrolytic'] as const).map(
    (dielectric) => ({ ...TIMING, dielectric }) as const,
  ),
  { ...OTHER, type: 'film', use: 'coupling' },
  { ...OTHER, type: 'ceramic', use: 'bypass' },
  { ...OTHER, type: 'electrolytic', use: 'reservoir' },
  { ...TRIMMER, part: 'single-turn', turns: 1 },
  { ...TRIMMER, part: 'multi-turn', turns: 25 },
  { ...TRIMMER, part: 'carbon', turns: 0.75 },
  { kind: 'volume', ohms: 10_000 },
  { kind: 'cell', minOhms: 8000, maxOhms: 20_000, gamma: 0.65, darkOhms: 1.5e6 },
  { kind: 'timer', family: 'bipolar', minVolts: 4.5, maxVolts: 16 },
  { kind: 'timer', family: 'cmos', minVolts: 2, maxVolts: 16.5 },
  { kind: 'comparator', family: 'classic' },
  { kind: 'comparator', family: 'later' },
  { kind: 'socket', pins: 8 },
  { kind: 'diode' },
  ...(['block-9v', 'four-aa', 'five-volt'] as const).flatMap(
    (supply) =>
      [
        { kind: 'supply', supply },
        { kind: 'supply lead', supply },
      ] as const,
  ),
  { kind: 'jack' },
  { kind: 'test pin' },
  { kind: 'board', size: null },
  { kind: 'board', size: { strips: 22, holes: 23 } },
  ...(['links', 'leads', 'sleeve'] as const).map((wire) => ({ kind: 'wire', wire }) as const),
];

const EFFECTS: readonly AlternateEffect[] = [
  { kind: 'pitch', voice: 'A', cents: 0.2, rotation: 0.5 },
  { kind: 'pitch', voice: 'A', cents: 12.5, rotation: 0.42 },
  { kind: 'pitch', voice: 'B', cents: -702.4, rotation: null },
  { kind: 'silent', voice: 'A', why: 'pitch' },
  { kind: 'silent', voice: 'A', why: 'gate' },
  { kind: 'silent', voice: 'A', why: 'light' },
  { kind: 'light', voice: 'A', ratio: 1.001 },
  { kind: 'light', voice: 'A', ratio: 1.5 },
  { kind: 'level', decibels: 0.01 },
  { kind: 'level', decibels: -1.5 },
  { kind: 'level', decibels: 2.5 },
  { kind: 'current', amperes: 0.0125 },
  { kind: 'supply too low', leastVolts: 4.5 },
];

const TROUBLES: readonly BandTrouble[] = [
  { kind: 'not a colour', read: 'mauve' },
  { kind: 'band count', count: 2 },
  { kind: 'misplaced', colour: 'red', place: 2 },
];

const VALUES: readonly ValueVerdict[] = [
  { kind: 'matches' },
  { kind: 'other end', ohms: 4750 },
  { kind: 'decades', decades: -1 },
  { kind: 'decades', decades: 2 },
  { kind: 'other value', ratio: 1.25 },
];

const VERDICTS: readonly SlipVerdict[] = [
  { kind: 'good' },
  { kind: 'off', way: 'low' },
  { kind: 'off', way: 'high' },
  ...(['negative', 'above the supply', 'not a number', 'too large'] as const).map(
    (why) => ({ kind: 'impossible', why }) as const,
  ),
];

export const ORDER_LINES: Samples = { line: each(SPECS), effect: each(EFFECTS) };

export const BENCH: Samples = {
  bandTrouble: each(TROUBLES),
  valueVerdict: each(VALUES),
  range: [
    [1.25, 2.5, 'V'],
    [0.0125, 0.0155, 'A'],
    [219.5, 220.5, 'Hz'],
  ],
  sureness: [[0.999], [0.421], [0.001]],
  slipVerdict: each(VERDICTS),
};

export const KIT_LOG: Samples = {
  tooLong: [[1000]],
  refused: [
    [1, null, 'x,y'],
    [3, 'kit', 'drei'],
  ],
};

export const SOUND_CHECK: Samples = {
  turn: [
    [0.0525, 240],
    [-0.0525, 240],
    [0, 240],
    [null, 240],
  ],
};

export const KIT: Samples = {
  printed: [
    ['', '12'],
    ['A', '12'],
  ],
  'order.heading': [[1], [30]],
  'board.figure': [
    [24, 37, 1, 1, '61', '94'],
    [24, 37, 17, 12, '61', '94'],
  ],
  'cards.minutes': [[0.4], [12.5]],
  'cards.plan.each': [[1], [85.5], [155]],
  'cards.plan.before': [[1], [85.5], [155]],
  'cards.plan.mend': [
    [42.5, null],
    [155, 12.5],
  ],
  'cards.checks.volts': [
    ['A', 'B', '1', '1'],
    ['A', 'B', '1', '2'],
  ],
  'faults.left': [
    [1, 41],
    [12.5, 41],
  ],
  'sound.rings.threshold': [
    ['A', 'VR3'],
    [null, 'VR3'],
  ],
  'sound.rings.thresholdNow': [
    ['A', []],
    ['A', ['12', '15']],
  ],
  'sound.rings.starts': [
    ['A', '12'],
    ['B', null],
  ],
  'refusal.change.capacitor': [
    ['C1', 'film'],
    ['C1', 'electrolytic'],
  ],
};
