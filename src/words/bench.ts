/** Words of the bench: colours, what a part is for, test points, verdicts. Faults have a file of their own. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import type { Fraction, VoiceId } from '../quantity/units.ts';
import { spoken } from './spoken.ts';

/** Colours of resistor bands, by the names people read out. */
export type BandColour =
  | 'black'
  | 'brown'
  | 'red'
  | 'orange'
  | 'yellow'
  | 'green'
  | 'blue'
  | 'violet'
  | 'grey'
  | 'white'
  | 'gold'
  | 'silver'
  | 'pink';

export const colourWords: Readonly<Record<BandColour, string>> = spoken('band colours', {
  black: 'black',
  brown: 'brown',
  red: 'red',
  orange: 'orange',
  yellow: 'yellow',
  green: 'green',
  blue: 'blue',
  violet: 'violet',
  grey: 'grey',
  white: 'white',
  gold: 'gold',
  silver: 'silver',
  pink: 'pink',
});

/** Bands as read out: `brown black black red brown`. */
export function bandWords(bands: readonly BandColour[]): string {
  return bands.map((band) => colourWords[band]).join(' ');
}

const ROLES: Readonly<Record<string, string>> = spoken('part uses', {
  charge: 'RA',
  'fixed rb': 'fixed part of RB',
  pitch: 'pitch',
  timing: 'timing',
  'control bypass': 'control pin',
  cell: 'light cell',
  divider: 'divider',
  input: 'comparator input',
  hysteresis: 'hysteresis',
  'pull-up': 'pull-up',
  'above threshold': 'above the threshold',
  threshold: 'threshold',
  'below threshold': 'below the threshold',
  mixing: 'mixing',
  shunt: 'mix to 0 V',
  volume: 'volume',
  coupling: 'coupling',
  jack: 'jack',
  supply: 'supply',
  diode: 'against reversed polarity',
  reservoir: 'reservoir at the timer',
  'timer bypass': 'bypass at the timer',
  'comparator bypass': 'bypass at the comparator',
  timer: 'timer',
  comparator: 'comparator',
  board: 'board',
  'test pin': 'test points',
  links: 'links',
  'sensor leads': 'leads of light cell',
});

/** What parts are for: `RA A, RA B; pull-up A`. */
export function useWords(uses: readonly { readonly role: string; readonly voice: VoiceId | null }[]): string {
  return uses
    .map(({ role, voice }) => `${ROLES[role] ?? role}${voice === null ? '' : ` ${voice}`}`)
    .join(', ');
}

/** What can be wrong with colours read out. */
export type BandTrouble =
  | { readonly kind: 'not a colour'; readonly read: string }
  | { readonly kind: 'band count'; readonly count: number }
  | { readonly kind: 'misplaced'; readonly colour: BandColour; readonly place: number };

function bandTrouble(problem: BandTrouble): string {
  switch (problem.kind) {
    case 'not a colour':
      return `“${problem.read}” is no band colour; there are black, brown, red, orange, yellow, green, blue, violet, grey, white, gold, silver and pink.`;
    case 'band count':
      return `A resistor has three to six bands; read ${problem.count}.`;
    case 'misplaced':
      return `${colourWords[problem.colour]} cannot stand at place ${problem.place}: try reading from the other end.`;
  }
}

export type ValueVerdict =
  | { readonly kind: 'matches' }
  | { readonly kind: 'other end'; readonly ohms: number }
  | { readonly kind: 'decades'; readonly decades: number }
  | { readonly kind: 'other value'; readonly ratio: number };

function valueVerdict(verdict: ValueVerdict): string {
  switch (verdict.kind) {
    case 'matches':
      return 'The right part.';
    case 'other end':
      return `Read from the other end it is ${formatQuantity(verdict.ohms, 'Ω')}, the right part: measure it to be sure.`;
    case 'decades':
      return `${verdict.decades < 0 ? 'Too small' : 'Too large'} by a factor of ${formatNumber(10 ** Math.abs(verdict.decades), 3)}: the commonest slip. Do not fit it.`;
    case 'other value':
      return `Another value, ${formatNumber(verdict.ratio, 3)} times the right one. Do not fit it.`;
  }
}

/** What is measured, and in what. */
export type Unit = 'V' | 'A' | 'Hz';

export function measured(value: number, unit: Unit): string {
  switch (unit) {
    case 'V':
      return formatFixed(value, 2, 'V').replace('-', '−');
    case 'A':
      return `${formatFixed(value * 1000, 1)}\u00A0mA`.replace('-', '−');
    case 'Hz':
      return `${formatNumber(value, 4)}\u00A0Hz`;
  }
}

function range(least: number, most: number, unit: Unit): string {
  return `${measured(least, unit)} to ${measured(most, unit)}`;
}

function sureness(share: Fraction): string {
  return share >= 0.995 ? 'nearly certain' : share < 0.005 ? 'most unlikely' : formatShare(share);
}

/** Where the test slip measures. */
export type SlipPoint =
  | 'rail'
  | 'node'
  | 'reference'
  | 'gate'
  | 'capacitor'
  | 'control'
  | 'out'
  | 'mix'
  | 'jack dc'
  | 'jack ac'
  | 'current'
  | 'pitch at low end'
  | 'pitch at high end'
  | 'pitch at target';

/** In what light. */
export type SlipLight = 'any' | 'lit' | 'shade' | 'A shaded' | 'B shaded' | 'unplugged';

const POINTS: Readonly<Record<SlipPoint, string>> = spoken('slip points', {
  rail: 'TP1 rail',
  node: 'TP2 sensor node',
  reference: 'TP3 reference',
  gate: 'TP4 gate',
  capacitor: 'TP5 timing capacitor, average',
  control: 'Control pin',
  out: 'TP6 timer output, average',
  mix: 'TP7 mixing point, average',
  'jack dc': 'TP8 jack, DC',
  'jack ac': 'TP8 jack, AC',
  current: 'Supply current',
  'pitch at low end': 'Pitch, trimmer fully clockwise',
  'pitch at high end': 'Pitch, trimmer fully anticlockwise',
  'pitch at target': 'Pitch, tuned',
});

const LIGHTS: Readonly<Record<SlipLight, string>> = spoken('slip lights', {
  any: '',
  lit: 'both sensors lit',
  shade: 'both sensors shaded',
  'A shaded': 'sensor A shaded',
  'B shaded': 'sensor B shaded',
  unplugged: 'one lead of its sensor off',
});

/** `TP2 sensor node A, both sensors lit`; `TP5 timing capacitor A, average`: the voice stands before the first comma. */
export function slipPointWords(point: SlipPoint, voice: VoiceId | null, light: SlipLight): string {
  const where = voice === null ? POINTS[point] : POINTS[point].replace(/(?=,|$)/, ` ${voice}`);
  return light === 'any' ? where : `${where}, ${LIGHTS[light]}`;
}

export type SlipVerdict =
  | { readonly kind: 'good' }
  | { readonly kind: 'off'; readonly way: 'low' | 'high' }
  | {
      readonly kind: 'impossible';
      readonly why: 'negative' | 'above the supply' | 'not a number' | 'too large';
    };

function slipVerdict(verdict: SlipVerdict): string {
  switch (verdict.kind) {
    case 'good':
      return 'Good.';
    case 'off':
      return verdict.way === 'low' ? 'Too low.' : 'Too high.';
    case 'impossible':
      return {
        negative: 'Below zero: turn the probes round, black to 0 V, and measure again.',
        'above the supply': 'More than the supply gives: look at the range and the unit, and measure again.',
        'not a number': 'No number was read: type it once more.',
        'too large': 'No board can show this: look at the range and the unit, and measure again.',
      }[verdict.why];
  }
}

/** What the bench judges, told in whole sentences. */
export const benchWords = spoken('bench', { bandTrouble, valueVerdict, range, sureness, slipVerdict });

export const bandTroubleWords = (problem: BandTrouble): string => benchWords.bandTrouble(problem);
export const valueVerdictWords = (verdict: ValueVerdict): string => benchWords.valueVerdict(verdict);
export const verdictWords = (verdict: SlipVerdict): string => benchWords.slipVerdict(verdict);
export const measuredRange = (least: number, most: number, unit: Unit): string =>
  benchWords.range(least, most, unit);
/** How sure the ranking is. */
export const shareWords = (share: Fraction): string => benchWords.sureness(share);

/** The kit log: kit numbers, no names. The columns are those of its file, the same in every language. */
export const logWords = spoken('kit log', {
  columns: ['kit', 'fault', 'minutes', 'readings', 'lost'],
  noNames: 'Kit numbers only: no names, please.',
  tooLong: (most: number) =>
    `The file holds more than ${formatNumber(most, 6)} kits, the most a log holds. Nothing was taken from this file.`,
  refused: (line: number, column: string | null, read: string) =>
    column === null
      ? `The first line should be kit,fault,minutes,readings,lost; read “${read}”.`
      : `Line ${line}, column ${column}: “${read}” cannot be read. Nothing was taken from this file.`,
} as const);

/** Words for the check of a board by its sound. */
export const soundCheckWords = spoken('sound check', {
  oneVoice: 'One voice at a time: shade or light the other sensor until it is silent.',
  none: {
    'too short': 'The recording is too short: a quarter of a second at least, better two.',
    silent: 'There is nothing to hear in it: look at the input and its level.',
    'no steady pitch': 'No single steady pitch was found: is the other voice silent?',
  },
  turn: (turn: number | null, degrees: number) => {
    if (turn === null) return 'The target is out of this trimmer’s reach.';
    const way = turn > 0 ? 'clockwise' : 'anticlockwise';
    return Math.abs(turn) < 0.001
      ? 'Leave the trimmer.'
      : `Turn it ${formatNumber(Math.abs(turn) * degrees, 2)}° ${way}.`;
  },
} as const);
