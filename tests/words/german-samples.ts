/** Arguments to try the words of Pitch and Room with: by path, wherever plain numbers will not do. */
import type { foundWords } from '../../src/words/en-pitch-found.ts';
import type {
  EdgeReason,
  HourReason,
  MeterAnswer,
  Remedy,
  RoomComplaint,
  SettingStep,
} from '../../src/words/room-facts.ts';

type Calls = readonly (readonly unknown[])[];
type Parts = Parameters<typeof foundWords.shortParts>[0];

/** For whatever has no entry: a small, a middling and a large number in every place. */
export const PLAIN: Calls = [
  [0.0371, 0.0425, 0.0513, 0.3, 0.2],
  [1, 1, 1, 1, 1],
  [12.345, 15.5, 17.25, 19.4, 20],
];

const A: Parts = {
  ra: { ohms: 4700 },
  rbFixed: { ohms: 0 },
  trimmer: { ohms: 20_000, part: 'multi-turn', tolerance: 0.1 },
  capacitor: { farads: 47e-9, dielectric: 'polyester', tolerance: 0.05 },
};
const B: Parts = {
  ...A,
  rbFixed: { ohms: 12_000 },
  trimmer: { ohms: 20_000, part: 'carbon', tolerance: 0.2 },
  capacitor: { farads: 22e-9, dielectric: 'c0g', tolerance: 0.025 },
};

export const PITCH: Readonly<Record<string, Calls>> = {
  'wanted.order': [[[]], [['E12']], [['E24', 'E6']]],
  'wanted.note': [
    ['A♯3', 0.2],
    ['B3', -12.4],
  ],
  'wanted.between': [
    [701.9, 'fifth', 'just'],
    [600, 'tritone', 'equal'],
    [600, 'tritone', 'just'],
    [1200, 'octave', 'equal'],
    [-350.4, null, 'equal'],
  ],
  'wanted.kits': [[1], [20]],
  'wish.atHand': [[{ A: 'A3', B: 'Gis4 +30 c' }]],
  'wish.comesTo': [[{ A: [261.6, 261.6], B: [98.5, 12_500] }]],
  'field.unreadable': [
    ['', '440'],
    ['zwölf Mal so viel wie eben, bitte', '440'],
  ],
  'field.outside': [['12', { min: 0.5, max: 12_500 }, '\u00A0cents']],
  'field.centsPrinted': [[12.5], [-3]],
  'problem.noNote': [
    ['A', 'H4', null],
    ['B', 'Fis3', 'F3'],
    ['A', 'C44', 'C10'],
  ],
  'problem.noOctave': [['A', 'C', 'C4']],
  'problem.emptyDrawer': [
    ['resistors', 'have'],
    ['trimmers', 'order'],
    ['capacitors', 'have'],
  ],
  'drawer.badLine': [[3, '4k7 rot', 'x']],
  'drawer.why.not a count': [['xviele']],
  'drawer.why.not a price': [['@teuer']],
  'drawer.why.unknown word': [['rot']],
};

export const FOUND: Readonly<Record<string, Calls>> = {
  ohms: [[0], [4700]],
  share: [[0.997], [0.42]],
  capacitor: [[A.capacitor], [B.capacitor]],
  shortParts: [[A], [B]],
  partsOf: [
    ['both', A],
    ['B', B],
  ],
  name: [
    [null, A, A],
    [2, A, B],
  ],
  'ruler.bar': [['both', 1, 'C']],
  'table.price': [[null], [1.5]],
  'curve.voice': [['A', 'A♯3', -12, 233.1, 8.25]],
  'hear.playing': [
    ['Ziel', 1, 1],
    ['Ziel', 2, 5],
  ],
  'abx.chance': [[0.4], [0.01]],
  'shortlist.row': [
    ['a', 'a'],
    ['a', 'b'],
  ],
  'compare.summary': [[['22 nF', '47 nF']]],
  'why.rival': [['Nr. 2', ['x', 'y']]],
  'detail.beats': [
    [3, 2, 0.2, 0.01],
    [3, 2, -4.1, 12.5],
  ],
  'detail.changeKinds.other fixed part': [[0], [12_000]],
};

export const ROOM: Readonly<Record<string, Calls>> = {
  'readings.typical': [
    [300, 'EN 12464-1', false],
    [5.25, 'EN 12464-1', true],
  ],
  'lamps.ripple': [[100, 0.42, '']],
  'lamps.index': [
    [0.12, 0.12],
    [0.12, 0.34],
  ],
  'daylight.zone': [['Europe/Berlin', '2\u00A0h']],
  'field.hour': [['spät']],
  'field.date': [['gestern']],
};

const hours = [9, 16.5];
export const ANSWER: Readonly<Record<string, Calls>> = {
  ohms: [[null], [4700]],
  'why.resets': [[hours]],
  'title.hours': [
    [0, 24],
    [9, 16.5],
  ],
  'set.place': [
    [0.42, 10.5, 25],
    [0.42, 0.42, 1],
  ],
  'set.times': [[150], [1.05], [3.5], [25]],
  'set.outlook.gating': [
    [0, 0],
    [1, 3],
  ],
  'chart.threshold': [
    [100, 99.5],
    [100, 75.5],
  ],
  'chart.run': [
    ['right', 9, 12],
    ['unknown', 12, 13],
  ],
  'chart.summary': [['12 lx', '300 lx', ['a', 'b']]],
  'chart.figure': [
    [0.999, 'now', 1],
    [0.004, 'recommended', 1],
    [0.5, 'resets', 1],
    [1, 'resets', 3],
  ],
  'chart.moment': [
    [9, { low: 12.5, high: 99 }, 3.2, 'marginal'],
    [9, { low: 99, high: 99 }, 3.2, 'wrong'],
  ],
  'chart.row': [[9, { low: 12.5, middle: 20, high: 99 }, 3.2, 'marginal']],
  'chart.change': [[16.5, 'wrong']],
  'parts.hysteresisOf': [
    [null, 1, 2],
    [680_000, 12.5, 15],
  ],
  'parts.chatterOf': [[0], [0.01], [12.5]],
  'parts.fit': [
    [null, 1.234],
    [680_000, 1.234],
  ],
  'parts.dividerOf': [
    [4700, 'top'],
    [4700, 'bottom'],
  ],
  'parts.better': [[4700, 'top', 31.2]],
  'parts.sharing': [[true], [false]],
  'timing.longerBy': [[0], [0.0125], [-1.25]],
  'timing.order': [[null], [0.001], [0.012], [-1.2]],
  'timing.verdict': [
    [{ kind: 'too shallow', margin: 1.5 }],
    [{ kind: 'too short', seconds: 0.012, neededSeconds: 0.05 }],
    [{ kind: 'gates', margin: 1.5 }],
  ],
  'batch.marks': [[[0.31, 0.42]]],
  'batch.gain': [
    [0, 0, 0],
    [0.9, 0.9, 0.9],
    [0.9, 0.6, 0.8],
  ],
  'cell.tooFew': [[0], [1]],
  'card.for': [['']],
  'card.on': [
    [null, 9, 17],
    ['1. Mai', 9, 17],
  ],
  'meter.rest': [
    [1, 9],
    [0.5, 9],
  ],
  'hear.now.margin': [[true], [false]],
  'hear.now.chatter': [[null], [680_000]],
  date: [['2026-03-14']],
  list: [[['a', 'b']]],
  pair: [['x', { A: '1', B: '2' }]],
};

const COMPLAINTS: readonly RoomComplaint[] = [
  { kind: 'no readings' },
  { kind: 'one sensor read', missing: 'B' },
  { kind: 'readings guessed' },
  { kind: 'shade brighter', hour: 9.5, voice: 'A', lit: 12.5, shaded: 80 },
  { kind: 'dark brighter', hour: 9.5, voice: 'A', lit: 12.5, dark: 80 },
  { kind: 'place unknown' },
  { kind: 'polar day' },
  { kind: 'polar night' },
  { kind: 'sky not measured' },
  { kind: 'sky measured in the dark', hour: 22 },
  { kind: 'daylight above reading', hour: 12, voice: 'B', modelled: 900, read: 500 },
  { kind: 'log gap', fromHour: 9, toHour: 10.5 },
  { kind: 'log at night only', mostLux: 2.5 },
  { kind: 'log clipped', voice: 'A', lux: 1000, share: 0.3 },
  { kind: 'log covers part', share: 0.4 },
  { kind: 'log empty' },
];
const REASONS: readonly HourReason[] = [
  { kind: 'too dark', voice: 'A', lux: 2.5, neededLux: 12.5 },
  { kind: 'too bright', voice: 'A', lux: 250, mostLux: 12.5 },
  { kind: 'not recorded' },
];
const EDGES: readonly EdgeReason[] = [
  { kind: 'lit', voice: 'A', lux: 12.5, hour: 9 },
  { kind: 'shade', voice: 'B', lux: 2.5, hour: 16.5 },
  { kind: 'end stop' },
  { kind: 'common-mode range', limitVolts: 3.5 },
];
const REMEDIES: readonly Remedy[] = [
  { kind: 'other divider', ohms: 4700, cell: 'top' },
  { kind: 'other divider', ohms: 4700, cell: 'bottom' },
  { kind: 'own trimmers' },
  { kind: 'reset in between', hours },
  { kind: 'local lamp', lux: 80, candela: 1.25, metres: 0.3 },
  { kind: 'tube', boreMetres: 0.012, depthMetres: 0.03, left: 0.2 },
  { kind: 'less hysteresis', ohms: 680_000 },
  { kind: 'deeper shadow', left: 0.6, neededLeft: 0.4 },
];
const turned = { volts: 1.55, rotation: 0.42, trimmer: 'A' } as const;
const STEPS: readonly SettingStep[] = [
  { kind: 'check the supply', volts: 5.02 },
  { kind: 'wait for the light', hour: null, lux: { A: 300, B: 2.5 } },
  { kind: 'wait for the light', hour: 9, lux: { A: 300, B: 2.5 } },
  { kind: 'read the node', voice: 'B', lit: 1.25, shade: 2.5 },
  { kind: 'turn to volts', ...turned, shared: true, fromVolts: 1.4, toVolts: 1.7, turns: 1, turnsOfPart: 25 },
  {
    kind: 'turn to volts',
    ...turned,
    shared: false,
    fromVolts: 1.4,
    toVolts: 1.7,
    turns: 0.4,
    turnsOfPart: 1,
  },
  { kind: 'just on', ...turned, shared: true, soundsInLight: true, thenTurns: 2.5, turnsOfPart: 25 },
  { kind: 'just on', ...turned, shared: false, soundsInLight: false, thenTurns: -0.05, turnsOfPart: 1 },
  { kind: 'try the event', voice: 'A', sounds: true },
  { kind: 'try the event', voice: 'B', sounds: false },
  { kind: 'will not reach', trimmer: 'A', remedies: REMEDIES },
  { kind: 'will not reach', trimmer: 'B', remedies: [] },
  { kind: 'watch', minutes: 5, phantomsAllowed: 1 },
  { kind: 'set again', hour: 16.5, trimmer: 'B', shared: false, volts: 1.85 },
  { kind: 'set again', hour: 16.5, trimmer: 'A', shared: true, volts: 1.85 },
];
const ANSWERS: readonly MeterAnswer[] = [
  { kind: 'leave it', volts: 1.55, litMargin: 1.25, shadeMargin: 2.5 },
  { kind: 'turn', way: 'up', volts: 1.2, toVolts: 1.55, turns: 1, turnsOfPart: 25, wouldDo: true },
  { kind: 'turn', way: 'down', volts: 1.9, toVolts: 1.55, turns: 0.05, turnsOfPart: 1, wouldDo: false },
  { kind: 'cannot be', volts: 5.5, leastVolts: 0.25, mostVolts: 4.75 },
  { kind: 'no window', volts: 1.5 },
];
const each = (facts: readonly object[]): Calls => facts.map((fact) => [fact]);

export const ROOM_WORDS: Readonly<Record<string, Calls>> = {
  complaint: each(COMPLAINTS),
  reason: each(REASONS),
  edge: each(EDGES),
  remedy: each(REMEDIES),
  step: each(STEPS),
  meter: each(ANSWERS),
};
