/** Words of the place Pitch from the search on: candidates, their reach and sound, comparing, the shortlist. In English. */
import { formatFixed, formatNumber, formatQuantity, formatShare, formatSigned } from '../quantity/format.ts';
import type { VoiceId } from '../quantity/units.ts';
import { DIELECTRIC_NAMES, hertzText, TRIMMER_NAMES, toleranceText } from './en-pitch.ts';
import { spoken } from './spoken.ts';

const ohms = (value: number): string => (value === 0 ? 'none' : formatQuantity(value, 'Ω', 3));
const farads = (value: number): string => formatQuantity(value, 'F', 3);
const cents = (value: number): string =>
  `${value < 0 ? '−' : ''}${formatFixed(Math.abs(value), Math.abs(value) < 10 ? 1 : 0)}`;
const numberOf = (hertz: number): string => formatFixed(hertz, hertz < 99.95 ? 1 : 0);
/** Per cent of kits: 99.6 % is not yet all of them. */
const share = (value: number): string =>
  value > 0.995 && value < 1 ? formatShare(Math.min(value, 0.999), 1) : formatShare(value);
const span = (low: number, high: number): string => `${numberOf(low)} to ${numberOf(high)}\u00A0Hz`;
const signed = (value: number): string => formatSigned(value);

interface PartsText {
  readonly ra: { readonly ohms: number };
  readonly rbFixed: { readonly ohms: number };
  readonly trimmer: {
    readonly ohms: number;
    readonly part: keyof typeof TRIMMER_NAMES;
    readonly tolerance: number;
  };
  readonly capacitor: {
    readonly farads: number;
    readonly dielectric: keyof typeof DIELECTRIC_NAMES;
    readonly tolerance: number;
  };
}

const capacitor = ({ farads: value, dielectric, tolerance }: PartsText['capacitor']): string =>
  `${farads(value)} ${DIELECTRIC_NAMES[dielectric]} ${toleranceText(tolerance)}`;

export const foundWords = spoken('pitch found', {
  share,
  ohms,
  farads,
  numberOf,
  span,
  noteAt: (note: string, hertz: number) => `${note}, ${hertzText(hertz)}`,
  capacitor,
  shortParts: ({ ra, rbFixed, trimmer, capacitor: c }: PartsText): string =>
    `${ohms(ra.ohms)} · ${ohms(rbFixed.ohms)} · ${ohms(trimmer.ohms)} · ${farads(c.farads)}`,
  partsOf: (voice: VoiceId | 'both', { ra, rbFixed, trimmer, capacitor: c }: PartsText): string =>
    `${voice === 'both' ? 'A and B alike' : voice}: RA ${ohms(ra.ohms)}, fixed RB ${ohms(rbFixed.ohms)}, trimmer ${ohms(trimmer.ohms)} ${TRIMMER_NAMES[trimmer.part]} ${toleranceText(trimmer.tolerance)}, C ${capacitor(c)}`,

  /** A candidate's name wherever it is spoken of: its place and its capacitors. */
  name: (place: number | null, a: PartsText, b: PartsText): string => {
    const [one, other] = [farads(a.capacitor.farads), farads(b.capacitor.farads)];
    const caps = one === other ? one : `${one} and ${other}`;
    return place === null ? caps : `No. ${place} (${caps})`;
  },

  ruler: {
    heading: 'What each reaches',
    bar: (voice: VoiceId | 'both', place: number, name: string) =>
      `${place}${voice === 'both' ? '' : voice} · ${name}`,
    target: (voice: VoiceId, note: string) => `${voice} wants ${note}`,
    targetSpan: (voice: VoiceId, low: string, high: string) => `${voice} wants ${low} to ${high}`,
    caption: (law: string, kits: number) =>
      `Broad: what the values promise from stop to stop; narrow: what 99 of 100 kits reach with the trimmer at 10 to 90 % (parts ${law}). Small marks: ${kits} kits of the chosen candidate before tuning, round A, square B.`,
    summary: (count: number, best: string, reach: string) =>
      `Reach of ${count} candidates on a line of pitches. The best, ${best}, brings ${reach} of kits to both notes.`,
    all: (count: number) => `Show all ${count} as bars`,
    fewer: 'Show the first as bars',
    table: 'Table of the bars',
    heads: ['candidate', 'voice', 'nominal from', 'nominal to', '99 % from', '99 % to'],
    nothing: 'nothing in common',
    svg: 'SVG',
    csv: 'CSV',
    fileName: 'reach',
  },

  table: {
    heading: 'The candidates',
    caption: (law: string, kits: number) =>
      `Reach counts kits that come to both notes with the trimmers between 10 and 90 % of travel: ${formatNumber(kits, 6)} kits drawn for each row, parts ${law}. In each voice’s cell: RA, fixed RB, trimmer, C.`,
    heads: [
      '',
      'A',
      'B',
      'reach both',
      'turned to, A',
      'turned to, B',
      'cents a degree',
      'warm room +10 °C',
      'hurts most',
      'different parts',
      'price a kit',
    ],
    choose: (place: number) => `Candidate ${place}`,
    same: 'the same',
    turned: (middle: number, low: number, high: number) =>
      `${formatShare(middle)} (${formatFixed(low * 100, 0)} to ${formatFixed(high * 100, 0)})`,
    pair: (a: number, b: number) => `${cents(a)} / ${cents(b)}`,
    range: (low: number, high: number) => `${signed(low)} to ${signed(high)}`,
    price: (value: number | null) => (value === null ? '–' : formatFixed(value, 2)),
    sensitivity: (of: string, value: number) => `${of} ${toleranceText(value)}`,
    csvHeads: ['place', 'reach both, 10 to 90 %', 'reach both, full travel', 'different parts', 'price'],
    csvVoiceHeads: [
      'target low Hz',
      'target high Hz',
      'RA ohm',
      'fixed RB ohm',
      'trimmer ohm',
      'trimmer kind',
      'C farad',
      'dielectric',
      'C tolerance',
      'reach, 10 to 90 %',
      '99 % of kits from Hz',
      '99 % of kits to Hz',
      'turn',
      'turn, 5 % of kits below',
      'turn, 5 % of kits above',
      'cents a degree',
      'warm room, least cents',
      'warm room, most cents',
    ],
    csv: 'Save the table as CSV',
    fileName: 'candidates',
    keys: 'Up and down arrow choose another candidate.',
  },

  sensitivity: {
    capacitor: 'C',
    ra: 'RA',
    rbFixed: 'fixed RB',
    trimmer: 'trimmer',
    timer: 'timer',
  },

  detail: {
    heading: (name: string) => `Candidate ${name}`,
    reach: (easy: number, full: number, kits: number, law: string) =>
      `${share(easy)} of kits reach both notes with the trimmers between 10 and 90 %, ${share(full)} at full travel (${formatNumber(kits, 6)} kits drawn, parts ${law}).`,
    voice: (voice: VoiceId, easy: number, full: number) =>
      `${voice} alone: ${share(easy)} of kits between 10 and 90 %, ${share(full)} at full travel.`,
    heads: ['', 'A', 'B'],
    rows: {
      target: 'target',
      nominal: 'nominal, stop to stop',
      easyNominal: 'nominal, 10 to 90 %',
      promised: '99 % of kits, stop to stop',
      easyPromised: '99 % of kits, 10 to 90 %',
      reached: 'kits that reach it, 10 to 90 %',
      rotation: 'turned to (5 to 95 % of kits)',
      degree: 'cents a degree there',
      settable: 'settable to',
      duty: 'duty cycle there',
      untuned: 'before tuning, 99 of 100 kits',
      worst: 'worst-case parts, untuned',
    },
    withLaw: (label: string, law: string) => `${label} (${law})`,
    none: 'nothing in common',
    settable: (value: number) => `±${cents(value)} cents`,
    degree: (value: number) => `${cents(value)} cents`,
    turned: (middle: number, low: number, high: number) =>
      `${formatShare(middle)} (${formatFixed(low * 100, 0)} to ${formatFixed(high * 100, 0)})`,
    table: 'Reach and tuning',
    driftTable: 'Where the pitch goes afterwards, cents',
    driftHeads: ['', 'A', 'B'],
    drifts: {
      warmRoom: 'a warm room, +10 °C',
      coldVan: 'a cold van, −20 °C',
      thumb: 'a thumb on the capacitor',
      year: 'the first year',
      battery: 'battery from fresh to empty',
    },
    battery: (from: number, to: number) => `battery, ${formatFixed(from, 1)} to ${formatFixed(to, 1)} V`,
    regulated: 'a regulated supply: none',
    hurts: 'Which tolerance hurts most',
    hurtsHeads: ['part', 'moves A by', 'moves B by'],
    hurtsBy: toleranceText,
    hurtsBasis: 'First order: what each tolerance alone does to the period, at its limit.',
    changes: 'What to change',
    noChanges: (voice: VoiceId) => `${voice}: no change of one part helps more than a trace.`,
    change: (voice: VoiceId, what: string, before: number, after: number) =>
      `${voice}: ${what} takes the reach from ${share(before)} to ${share(after)} (first order).`,
    changeKinds: {
      'closer capacitor': (tolerance: number) => `a capacitor of ${toleranceText(tolerance)}`,
      'other capacitor': (value: number) => `a capacitor of ${farads(value)}`,
      'closer trimmer': (tolerance: number) => `a trimmer of ${toleranceText(tolerance)}`,
      'other trimmer': (value: number) => `a trimmer of ${ohms(value)}`,
      'other fixed part': (value: number) => `a fixed RB of ${ohms(value)}`,
    },
    lock: (upper: number, lower: number, apart: number, within: number, dip: number) =>
      `The voices stand ${cents(apart)} cents from ${upper} : ${lower} and may lock: a shared dip of ${formatQuantity(dip, 'V', 2)} at each edge pulls them together within about ${cents(within)} cents (first order). Decoupling at both chips, or notes further apart, helps.`,
    noLock:
      'The voices stand far enough from every simple ratio, or are decoupled well enough, not to lock (first order).',
    beats: (upper: number, lower: number, apart: number, beats: number) =>
      beats < 0.05
        ? `Their interval is ${upper} : ${lower} within a trace: no beats.`
        : `Their interval is ${signed(apart)} cents from ${upper} : ${lower}: ${formatFixed(beats, beats < 10 ? 1 : 0)} beats a second (${formatFixed(beats, 2)} Hz).`,
    noBeats: 'Their interval lies near no ratio of small numbers: no beats to tell of.',
    keep: 'Keep on the shortlist',
    kept: 'On the shortlist',
    full: 'The shortlist is full: take one off first.',
    take: 'Use it in the design',
    taken: 'The design has these values now. Undo brings the old ones back.',
    takeStep: 'parts from Pitch',
    keepStep: 'keep on the shortlist',
    impossible: 'With this control voltage the capacitor never reaches both levels; nothing can be promised.',
  },

  curve: {
    heading: 'Trimmer and pitch',
    summary: (text: string) =>
      `Pitch against the turn of each trimmer, and below how many cents a degree moves it. ${text}`,
    caption: 'Above: turn to pitch, A solid and B dashed, dots at the targets; below: cents a degree.',
    cursor: 'Turn of the trimmers',
    cursorHint: 'Left and right arrow turn them.',
    at: (rotation: number) => `at ${formatShare(rotation)}`,
    voice: (voice: VoiceId, note: string, away: number, hertz: number, degree: number) =>
      `${voice} ${note} ${signed(away)} cents, ${hertzText(hertz)}, ${cents(degree)} cents a degree`,
    degrees: 'cents a degree',
    table: 'Table of the curve',
    heads: ['turned', 'A, Hz', 'A, cents a degree', 'B, Hz', 'B, cents a degree'],
    row: (hertz: number) => formatFixed(hertz, 1),
    degree: (value: number) => formatFixed(value, 1),
    fileName: 'trimmer-curve',
  },

  hear: {
    heading: 'Hear it',
    target: 'At the target',
    sweep: 'Sweep from end to end',
    worst: 'Worst-case parts',
    worstHint: 'lowest, meant, highest',
    turns: (kits: number) => `${kits} kits, one after another`,
    together: (kits: number) => `${kits} kits together`,
    stop: 'Stop',
    voices: 'hear',
    voiceNames: { both: 'both voices', A: 'A alone', B: 'B alone' },
    reference: 'Reference note beside it',
    references: 'note',
    referenceOf: (voice: VoiceId, hertz: number) => `${voice}’s target, ${hertzText(hertz)}`,
    playing: (name: string, step: number, of: number) =>
      of > 1 ? `${name}: ${step} of ${of}` : `${name} sounds.`,
    making: (step: number, of: number) => `Making the sound ready: ${step} of ${of} kits.`,
    loudness:
      'All at equal loudness, whatever the light. The kits are drawn with the seed of the wish and stand untuned, trimmers where nominal parts want them.',
  },

  abx: {
    heading: 'Hear two against each other',
    first: 'first',
    second: 'second',
    hearFirst: 'Hear the first',
    hearSecond: 'Hear the second',
    hearX: 'Hear X',
    blind: 'Blind: X is one of the two, drawn anew each time',
    isFirst: 'X is the first',
    isSecond: 'X is the second',
    explain: 'Listen to first, second and X as often as you like, then say which X is.',
    none: 'Find or keep at least two candidates; then they can be heard against each other.',
    score: (right: number, of: number) => `${right} of ${of} right.`,
    chance: (chance: number) =>
      chance > 0.05
        ? `Guessing does as well or better ${formatShare(chance)} of the time: no difference is shown yet.`
        : `Guessing does as well or better only ${formatShare(chance, 1)} of the time: you hear a difference.`,
    right: 'Right.',
    wrong: 'Wrong.',
    again: 'Begin anew',
    same: 'Choose two different candidates.',
  },

  shortlist: {
    heading: 'Shortlist',
    keptName: (name: string) => `kept, ${name}`,
    empty:
      'Nothing kept yet. Choose a candidate and press “Keep on the shortlist”; it stays in the design, its file and its link.',
    hear: (name: string) => `Hear ${name}`,
    look: (name: string) => `Look at ${name}`,
    remove: (name: string) => `Take ${name} off`,
    removeStep: 'take off the shortlist',
    row: (a: string, b: string) => (a === b ? `A and B: ${a}` : `A: ${a}; B: ${b}`),
    targets: (a: string, b: string) => `for ${a} and ${b}`,
  },

  compare: {
    heading: 'Compare capacitors',
    explain:
      'Two to six capacitors with the same resistors and trimmer: what each reaches, and how it drifts.',
    base: 'resistors of',
    bases: { A: 'voice A of the design', B: 'voice B of the design', found: 'the chosen candidate’s A' },
    with: (parts: string) => `With ${parts}.`,
    resistors: (ra: number, rb: number, trimmer: number) =>
      `RA ${ohms(ra)}, fixed RB ${ohms(rb)}, trimmer ${ohms(trimmer)}`,
    value: (n: number) => `capacitor ${n}`,
    dielectric: 'dielectric',
    tolerance: 'tolerance',
    add: 'Add a capacitor',
    remove: (n: number) => `Take away capacitor ${n}`,
    removeShort: 'Take away',
    hear: (name: string) => `Hear ${name}`,
    sweep: (name: string) => `Sweep ${name}`,
    caption: (law: string) =>
      `Broad: nominal, stop to stop; narrow: what 99 of 100 kits reach with the trimmer at 10 to 90 % (parts ${law}).`,
    summary: (names: readonly string[]) => `Reach of ${names.join(', ')} with the same resistors.`,
    table: 'Table of the capacitors',
    heads: [
      'capacitor',
      'nominal from',
      'nominal to',
      '99 % from',
      '99 % to',
      'in the middle',
      'worst case there',
      'warm room +10 °C, cents',
      'thumb, cents',
      'first year, cents',
    ],
    never: 'With this control voltage the voice never runs; nothing can be compared.',
    fileName: 'capacitors',
  },

  why: {
    before: [
      'In range on paper is not in range in the batch: capacitor and trimmer each lie somewhere within their tolerance.',
      'Say which notes are wanted and what is at hand. Every combination is then accounted for, and the best are drawn as kits.',
    ],
    bars: 'The broad bar is what the values promise. The narrow bar in it is what 99 of 100 kits reach with the trimmer between 10 and 90 %.',
    wins: (name: string, reach: number, a: number, b: number) =>
      `${name} stands first: ${share(reach)} of kits reach both notes, and a degree of the trimmer moves A by ${cents(a)} and B by ${cents(b)} cents.`,
    rival: (name: string, reasons: readonly string[]) =>
      `With other capacitors ${name} comes next: ${reasons.join(', ')}.`,
    rivalReasons: {
      reach: (value: number) => `${share(value)} of kits reach both notes`,
      tuning: (a: number, b: number) => `${cents(Math.max(a, b))} cents a degree at the worse trimmer`,
      parts: (count: number) => `${count} different parts`,
      price: (value: number) => `${formatFixed(value, 2)} a kit`,
      close: 'it is nearly as good',
    },
    hurts: (voice: VoiceId, of: string, value: number) =>
      `What moves ${voice} most is the ${of}, by ${toleranceText(value)} at its limit.`,
    allHere: 'Nearly every kit will be tuned with ease.',
    some: (inTwenty: number) =>
      `Of twenty kits about ${formatFixed(inTwenty, 0)} will not reach both notes with the trimmer between 10 and 90 %.`,
  },
} as const);
