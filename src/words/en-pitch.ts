/** Words of the place Pitch up to the search: the wish, the drawer, what stands in the way. In English. */
import { formatFixed, formatNumber, formatQuantity, formatShare, formatSigned } from '../quantity/format.ts';
import type { Limits } from '../quantity/parse.ts';
import type { Pair, VoiceId } from '../quantity/units.ts';
import { excerpt } from './excerpt.ts';
import { spoken } from './spoken.ts';

export const hertzText = (value: number): string =>
  value >= 10_000 ? formatQuantity(value, 'Hz', 3) : formatFixed(value, value < 100 ? 2 : 1, 'Hz');
/** Per cent with a decimal only where there is one. */
const percentText = (value: number): string =>
  formatShare(value, Math.abs(value * 100 - Math.round(value * 100)) < 0.05 ? 0 : 1);
export const toleranceText = (value: number): string => `±${percentText(value)}`;
const quoted = (text: string): string => `“${excerpt(text, 24)}”`;
const between = (low: number, high: number): string => `${hertzText(low)} to ${hertzText(high)}`;

export const DIELECTRIC_NAMES = spoken('dielectrics', {
  polyester: 'polyester film',
  polypropylene: 'polypropylene film',
  c0g: 'C0G ceramic',
  x7r: 'X7R ceramic',
  y5v: 'Y5V ceramic',
  electrolytic: 'electrolytic',
} as const);
export const TRIMMER_NAMES = spoken('trimmer kinds', {
  'single-turn': 'single turn',
  'multi-turn': '25 turns',
  carbon: 'carbon',
} as const);

export const INTERVAL_WORDS = spoken('intervals', {
  unison: 'unison',
  'minor second': 'minor second',
  'major second': 'major second',
  'minor third': 'minor third',
  'major third': 'major third',
  fourth: 'fourth',
  tritone: 'tritone',
  fifth: 'fifth',
  'minor sixth': 'minor sixth',
  'major sixth': 'major sixth',
  'minor seventh': 'minor seventh',
  'major seventh': 'major seventh',
  octave: 'octave',
});

export const pitchWords = spoken('pitch', {
  why: 'Why',
  question: 'Which parts, before they are ordered?',

  wanted: {
    notes: (a: string, b: string) => `Wanted: ${a} and ${b}`,
    sweep: (voice: VoiceId, low: string, high: string) => `${voice} from ${low} to ${high}`,
    sweeps: (a: string, b: string) => `Wanted: ${a}, ${b}`,
    none: 'Wanted: not clear yet',
    /** A note as the heading names it: cents only where there are some. */
    note: (name: string, cents: number) =>
      Math.abs(cents) < 0.5 ? name : `${name} ${formatSigned(cents)} cents`,
    between: (cents: number, name: string | null, temperament: 'equal' | 'just') =>
      name === null
        ? `${formatFixed(Math.abs(cents), 0)} cents apart`
        : `${temperament === 'just' ? 'a just ' : /^[aeiou]/.test(name) ? 'an ' : 'a '}${name}`,
    a4: (value: number) => `A4 = ${formatNumber(value, 5)} Hz`,
    kits: (count: number) => `${count} ${count === 1 ? 'kit' : 'kits'}`,
    have: 'only what the drawer holds',
    order: (series: readonly string[]) =>
      series.length === 0 ? 'from the drawer' : `from the drawer, or ordered from ${series.join(' and ')}`,
    duty: (least: number, most: number) => `duty ${formatShare(least)} to ${formatShare(most)}`,
    change: 'Wish and drawer',
    compare: 'Only compare capacitors',
  },

  wish: {
    heading: 'What is wanted',
    way: 'wished for as',
    ways: {
      notes: 'two notes',
      interval: 'an interval and a note',
      frequencies: 'two frequencies',
      sweep: 'a range to sweep',
    },
    kept: 'What you typed under the other ways is kept.',
    note: (voice: VoiceId) => `note of ${voice}`,
    noteHint: 'A letter and an octave, such as C4, F♯3 or A4 +12 c. C4 is middle C.',
    given: 'the note given is',
    givenVoices: { A: 'of A', B: 'of B' },
    interval: 'interval',
    direction: (other: VoiceId) => `${other} stands`,
    directions: { up: 'above it', down: 'below it' },
    cents: 'and cents more',
    hertz: (voice: VoiceId) => `frequency of ${voice}`,
    low: (voice: VoiceId) => `${voice} from`,
    high: (voice: VoiceId) => `${voice} to`,
    a4: 'A4 is tuned to',
    temperament: 'intervals',
    temperaments: { equal: 'equal', just: 'just' },
    just: 'Just: B stands in a pure ratio to A, such as 3 : 2.',
    dutyWanted: 'Keep the duty cycle within limits',
    dutyLeast: 'duty at least',
    dutyMost: 'duty at most',
    polarised: 'Polarised timing capacitors may be proposed',
    weights: 'What counts',
    weightNames: {
      surerReach: 'surer reach',
      easierTuning: 'easier tuning',
      fewerParts: 'fewer different parts',
      cheaper: 'cheaper',
    },
    weightWords: ['does not count', 'counts a little', 'counts much', 'counts most'],
    cheaperHint: 'Cheaper counts only with prices of your own in the drawer.',
    batch: 'The batch',
    law: 'parts lie',
    laws: {
      uniform: 'anywhere within tolerance',
      'normal-2': 'bell-shaped, tolerance = 2 σ',
      'normal-3': 'bell-shaped, tolerance = 3 σ',
    },
    lawsShort: { uniform: 'uniform', 'normal-2': '2 σ', 'normal-3': '3 σ' },
    lawHint:
      'Anywhere within tolerance is common practice when nothing is known of the parts; it is the careful choice.',
    kits: 'kits to build',
    kitsHint: 'The drawer must hold parts for so many; so many are marked in the picture and heard.',
    atHand: (notes: Pair<string>) => `The open design sounds ${notes.A} and ${notes.B}.`,
    takeAtHand: 'Wish for these notes',
    seed: 'seed',
    seedHint: 'The same seed draws the same kits.',
    comesTo: (targets: Pair<readonly [number, number]>) =>
      (['A', 'B'] as const)
        .map((voice) => {
          const [low, high] = targets[voice];
          return `${voice} ${low === high ? hertzText(low) : between(low, high)}`;
        })
        .join(', '),
    step: (label: string) => `wish: ${label}`,
  },

  field: {
    unreadable: (read: string, accepted: string) =>
      `Read ${read === '' ? 'nothing' : quoted(read)}, which is not a number here. Accepted: ${accepted}.`,
    outside: (read: string, { min, max }: Limits, unit: string) =>
      `Read ${quoted(read)}. Accepted: ${formatNumber(min, 7)} to ${formatNumber(max, 9)}${unit}.`,
    hertz: '440, 440 Hz or 1.2 kHz',
    cents: '0, 12 or −12 cents',
    whole: 'a whole number, such as 20',
    centsPrinted: (value: number) => `${value < 0 ? '−' : ''}${formatNumber(Math.abs(value), 5)}\u00A0cents`,
  },

  problem: {
    heading: 'What stands in the way',
    use: 'Use this',
    useStep: 'nearest that works',
    noteEmpty: (voice: VoiceId) => `Voice ${voice} has no note yet. Type a letter and an octave, such as C4.`,
    noNote: (voice: VoiceId, read: string, nearest: string | null) =>
      `Voice ${voice}: read ${quoted(read)}, which is no note.${nearest === null ? ' Accepted: a letter and an octave, such as C4.' : ` The nearest is ${nearest}.`}`,
    noOctave: (voice: VoiceId, read: string, nearest: string) =>
      `Voice ${voice}: ${quoted(read)} has no octave. Middle C begins the fourth: ${nearest}.`,
    notTone: (voice: VoiceId, value: number, nearest: number) =>
      `Voice ${voice}: ${hertzText(value)} is not heard as a tone. The nearest that is: ${hertzText(nearest)}.`,
    emptySweep: (voice: VoiceId, low: number, high: number, nearLow: number, nearHigh: number) =>
      `Voice ${voice}: a sweep from ${hertzText(low)} to ${hertzText(high)} does not rise. The nearest that does: ${between(nearLow, nearHigh)}.`,
    dutyCrossed: (least: number, most: number) =>
      `The duty cycle cannot be at least ${formatShare(least)} and at most ${formatShare(most)}. The nearest: the two exchanged.`,
    emptyDrawer: (missing: 'resistors' | 'trimmers' | 'capacitors', use: 'have' | 'order') =>
      `There are no ${missing} to choose from. Write some into the drawer${use === 'have' ? ', or allow ordering' : ', or choose a series to order from'}.`,
    onlyPolarised:
      'All capacitors are polarised, and the wish refuses them. Write others into the drawer, or allow polarised ones.',
  },

  drawer: {
    heading: 'What is at hand',
    use: 'take',
    uses: { have: 'only what I have', order: 'what I have, or may order' },
    unlimited: 'With ordering allowed, quantities limit nothing.',
    lines: 'The drawer, one part a line',
    linesHint:
      'In any order: value, kind, tolerance, how many, your price for one; such as 4k7 1% x40, 20k trimmer 10%, or 47n film 5% x25 @0.12. Paste a table with a head of column names, or open a CSV file.',
    file: 'Open a CSV file…',
    save: 'Save as CSV',
    apply: 'Put into the drawer',
    empty: 'The drawer is empty.',
    holds: (resistors: number, trimmers: number, capacitors: number) =>
      `The drawer holds ${resistors} resistor ${resistors === 1 ? 'value' : 'values'}, ${trimmers} of trimmers and ${capacitors} of capacitors.`,
    bad: (count: number) =>
      count === 1
        ? 'One line was not understood; the rest is kept.'
        : `${count} lines were not understood; the rest is kept.`,
    pending: 'Changed; not yet in the drawer.',
    more: (count: number) => `and ${count} more`,
    badLine: (line: number, read: string, why: string) => `Line ${line}, ${quoted(read)}: ${why}`,
    why: {
      'no value': 'it has no value. Accepted: 4k7, 47n or 20k trimmer.',
      'not a count': (read: string) => `${quoted(read)} is no count. Accepted: x40.`,
      'not a price': (read: string) => `${quoted(read)} is no price. Accepted: @0.12.`,
      'unknown word': (read: string) =>
        `the word ${quoted(read)} names no kind of part. Accepted: resistor, trimmer, multi-turn, carbon, film, polypropylene, C0G, X7R, Y5V, electrolytic.`,
      twice: (entry: string) => `it has a second ${entry}. One part a line.`,
      'too many': (most: number) => `the drawer holds at most ${most} values of a kind.`,
    },
    entries: {
      value: 'value',
      tolerance: 'tolerance',
      dielectric: 'kind',
      quantity: 'count',
      price: 'price',
    },
    csvHeads: ['value', 'tolerance', 'kind', 'quantity', 'price'],
    order: 'What may be ordered',
    resistors: 'resistors',
    trimmers: 'trimmers',
    capacitors: 'capacitors',
    nothing: 'nothing',
    series: (name: string) => `${name} values`,
    tolerance: 'tolerance',
    dielectric: 'dielectric',
    step: (label: string) => `drawer: ${label}`,
    stepLines: 'drawer lines',
    tooLarge: (most: number) =>
      `That text is too long for a drawer: at most ${formatNumber(most, 6)} letters. It was not read; the drawer is as it was.`,
    fileName: 'drawer',
  },

  search: {
    go: 'Find parts',
    again: 'Find parts again',
    stop: 'Stop',
    stale: 'The wish or the drawer has changed since. Press Find parts again.',
    idle: 'Nothing searched yet. Say what is wanted and what is at hand, then press Find parts.',
    stages: {
      A: 'trying parts for A',
      B: 'trying parts for B',
      pairs: 'putting the two voices together',
      draws: 'drawing kits of the best',
      looking: 'looking closely at the best fifty',
    },
    progress: (stage: string, share: number) => `${stage}, ${formatShare(share)}`,
    progressName: 'Progress of the search',
    anew: 'A fault broke the search off; it has begun anew by itself.',
    stopped:
      'Stopped before the end: nothing is shown that was not compared with all the rest. Press Find parts to begin anew.',
    failed: 'The search broke off because of a fault. Press Find parts to begin anew; nothing typed is lost.',
    found: (shown: number, combinations: number, fitting: number) =>
      `${formatNumber(combinations, 4)} combinations of both voices accounted for, ${formatNumber(fitting, 4)} of them fit; the best ${shown} are shown.`,
    foundNone: (combinations: number) =>
      `${formatNumber(combinations, 4)} combinations of both voices accounted for; none of them fits.`,
    next: 'Put other values into the drawer, allow ordering, or wish for notes nearer to one another or to these; then search again.',
    law: (law: string, kits: number) => `Per cents: ${formatNumber(kits, 6)} kits drawn, parts ${law}.`,
    none: (voice: VoiceId) => `No parts of the drawer bring ${voice} to its note. These come nearest:`,
    nonePairs:
      'Each voice has parts that fit, but the drawer holds too few for both voices of the whole batch. Allow ordering, or make fewer kits.',
  },

  misses: {
    heading: 'Why others fall out',
    heads: ['voice', 'why', 'how many', 'nearest miss'],
    kinds: {
      'ra-too-small': 'RA so small that the discharge pin is strained',
      'never-runs': 'the capacitor never reaches both levels',
      polarised: 'a polarised timing capacitor',
      'rb-near-zero': 'RB near zero at the stop',
      'resistors-too-large': 'RA and RB so large that leakage tells',
      'too-low': 'the highest note lies too low',
      'too-high': 'the lowest note lies too high',
      duty: 'duty cycle outside the limits',
      'short-stock': 'too few at hand for the batch',
    },
    byCents: (cents: number) =>
      cents < 0.05
        ? 'misses by less than 0.1 cents'
        : `misses by ${formatFixed(cents, cents < 10 ? 1 : 0)} cents`,
    byDuty: (share: number) => `misses by ${formatShare(share, 1)} of duty`,
    none: '–',
  },
} as const);
