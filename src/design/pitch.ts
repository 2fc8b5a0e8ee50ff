/**
 * What the document keeps about choosing parts for notes: the wish, the drawer of parts at hand or orderable, and
 * the shortlist. Values and typed text only; what a wish comes to and what a candidate reaches is worked out from
 * them in `plan/`.
 */
import * as v from 'valibot';
import { DIELECTRICS, type DielectricId } from '../parts/capacitors.ts';
import { SERIES, type SeriesId } from '../parts/preferred.ts';
import { TRIMMERS, type TrimmerId } from '../parts/trimmers.ts';
import type { Limits } from '../quantity/parse.ts';
import type { Farads, Fraction, Hertz, Ohms, Pair, VoiceId } from '../quantity/units.ts';
import { LIMITS } from './limits.ts';
import { entries, keysOf, listOf, oneOf, pair, text, within, yesNo } from './schema.ts';

export const INTERVAL_NAMES = [
  'unison',
  'minor second',
  'major second',
  'minor third',
  'major third',
  'fourth',
  'tritone',
  'fifth',
  'minor sixth',
  'major sixth',
  'minor seventh',
  'major seventh',
  'octave',
] as const;
export type IntervalName = (typeof INTERVAL_NAMES)[number];

/** How parts lie within their tolerance: anywhere alike, or bell-shaped with the tolerance at 2 or 3 deviations. */
export const DRAW_LAWS = ['uniform', 'normal-2', 'normal-3'] as const;
export type DrawLaw = (typeof DRAW_LAWS)[number];

/** What is wanted. Each way of saying it keeps its own entries, so that changing the way loses nothing typed. */
export interface Wish {
  readonly way: 'notes' | 'interval' | 'frequencies' | 'sweep';
  /** As typed: `C4`, `F♯3`, `A4 +12 c`. With an interval only the note of `interval.from` counts. */
  readonly notes: Pair<string>;
  readonly interval: {
    /** The voice whose note is given; the other one stands the interval away from it. */
    readonly from: VoiceId;
    readonly name: IntervalName;
    readonly direction: 'up' | 'down';
    /** Added to the interval, away from the given note. */
    readonly cents: number;
  };
  readonly hertz: Pair<Hertz>;
  readonly sweep: Pair<{ readonly lowHertz: Hertz; readonly highHertz: Hertz }>;
  readonly a4Hertz: Hertz;
  /** Just: the second voice stands in a pure ratio to the first. */
  readonly temperament: 'equal' | 'just';
  /** Share of the period the output is high, as wanted at the target; null = any. */
  readonly duty: { readonly least: Fraction; readonly most: Fraction } | null;
  /** Polarised timing capacitors may be proposed. */
  readonly polarised: boolean;
  /** How much each preference counts, 0 = not at all. */
  readonly weights: {
    readonly fewerParts: number;
    readonly easierTuning: number;
    readonly surerReach: number;
    readonly cheaper: number;
  };
  readonly law: DrawLaw;
  readonly kits: number;
  readonly seed: number;
}

/** How many are at hand (null = enough for any batch), and the person's own price for one (null = not said). */
export interface Stock {
  readonly quantity: number | null;
  readonly price: number | null;
}

export interface DrawerResistor extends Stock {
  readonly ohms: Ohms;
  readonly tolerance: Fraction;
}
export interface DrawerTrimmer extends Stock {
  readonly ohms: Ohms;
  readonly part: TrimmerId;
  readonly tolerance: Fraction;
}
export interface DrawerCapacitor extends Stock {
  readonly farads: Farads;
  readonly dielectric: DielectricId;
  readonly tolerance: Fraction;
}

export interface Drawer {
  /** Only what is at hand, or also what can be ordered; quantities then limit nothing. */
  readonly use: 'have' | 'order';
  readonly resistors: readonly DrawerResistor[];
  readonly trimmers: readonly DrawerTrimmer[];
  readonly capacitors: readonly DrawerCapacitor[];
  /** What may be ordered beside that, each null for nothing. */
  readonly order: {
    readonly resistors: { readonly series: SeriesId; readonly tolerance: Fraction } | null;
    readonly trimmers: { readonly part: TrimmerId } | null;
    readonly capacitors: {
      readonly series: SeriesId;
      readonly dielectric: DielectricId;
      readonly tolerance: Fraction;
    } | null;
  };
}

/** The timing parts of one voice, with the tolerances they are bought at. */
export interface VoiceParts {
  readonly ra: { readonly ohms: Ohms; readonly tolerance: Fraction };
  readonly rbFixed: { readonly ohms: Ohms; readonly tolerance: Fraction };
  readonly trimmer: { readonly part: TrimmerId; readonly ohms: Ohms; readonly tolerance: Fraction };
  readonly capacitor: {
    readonly farads: Farads;
    readonly dielectric: DielectricId;
    readonly tolerance: Fraction;
  };
}

/** What one voice is to reach: a note has both ends alike, a sweep has not. */
export interface Target {
  readonly lowHertz: Hertz;
  readonly highHertz: Hertz;
}

/** Parts for both voices, and what they were chosen for. */
export interface Candidate {
  readonly parts: Pair<VoiceParts>;
  readonly targets: Pair<Target>;
}

export interface Pitch {
  readonly wish: Wish;
  readonly drawer: Drawer;
  readonly shortlist: readonly Candidate[];
}

export const PITCH_LIMITS = {
  hertz: { min: 1, max: 100_000 },
  a4Hertz: { min: 300, max: 600 },
  cents: { min: -1200, max: 1200 },
  weight: { min: 0, max: 3 },
  kits: { min: 1, max: 1000 },
  seed: { min: 0, max: 2 ** 31 - 1 },
  quantity: { min: 0, max: 100_000 },
  price: { min: 0, max: 10_000 },
} as const satisfies Record<string, Limits>;

/** A note as typed. */
export const NOTE_LENGTH = 24;
/** Lines of a drawer, of each kind. */
export const MOST_LINES = 200;
export const MOST_SHORTLISTED = 12;

const { hertz, price, cents, weight } = PITCH_LIMITS;
const stock = {
  quantity: v.nullable(within(PITCH_LIMITS.quantity, 'whole')),
  price: v.nullable(within(price)),
};
const ohmsOf = (limits: Limits) => ({ ohms: within(limits), tolerance: within(LIMITS.tolerance) });
const trimmer = { ...ohmsOf(LIMITS.trimmerOhms), part: keysOf(TRIMMERS) };
const capacitor = {
  farads: within(LIMITS.timingFarads),
  dielectric: keysOf(DIELECTRICS),
  tolerance: within(LIMITS.tolerance),
};
const range = entries({ lowHertz: within(hertz), highHertz: within(hertz) });

const voiceParts = entries({
  ra: entries(ohmsOf(LIMITS.raOhms)),
  rbFixed: entries(ohmsOf(LIMITS.rbFixedOhms)),
  trimmer: entries(trimmer),
  capacitor: entries(capacitor),
});

const candidateSchema = entries({ parts: pair(voiceParts), targets: pair(range) });

export const pitchSchema = entries({
  wish: entries({
    way: oneOf(['notes', 'interval', 'frequencies', 'sweep']),
    notes: pair(text(NOTE_LENGTH)),
    interval: entries({
      from: oneOf(['A', 'B']),
      name: oneOf(INTERVAL_NAMES),
      direction: oneOf(['up', 'down']),
      cents: within(cents),
    }),
    hertz: pair(within(hertz)),
    sweep: pair(range),
    a4Hertz: within(PITCH_LIMITS.a4Hertz),
    temperament: oneOf(['equal', 'just']),
    duty: v.nullable(entries({ least: within(LIMITS.fraction), most: within(LIMITS.fraction) })),
    polarised: yesNo,
    weights: entries({
      fewerParts: within(weight),
      easierTuning: within(weight),
      surerReach: within(weight),
      cheaper: within(weight),
    }),
    law: oneOf(DRAW_LAWS),
    kits: within(PITCH_LIMITS.kits, 'whole'),
    seed: within(PITCH_LIMITS.seed, 'whole'),
  }),
  drawer: entries({
    use: oneOf(['have', 'order']),
    resistors: listOf(entries({ ...ohmsOf(LIMITS.raOhms), ...stock }), MOST_LINES),
    trimmers: listOf(entries({ ...trimmer, ...stock }), MOST_LINES),
    capacitors: listOf(entries({ ...capacitor, ...stock }), MOST_LINES),
    order: entries({
      resistors: v.nullable(entries({ series: keysOf(SERIES), tolerance: within(LIMITS.tolerance) })),
      trimmers: v.nullable(entries({ part: keysOf(TRIMMERS) })),
      capacitors: v.nullable(
        entries({
          series: keysOf(SERIES),
          dielectric: keysOf(DIELECTRICS),
          tolerance: within(LIMITS.tolerance),
        }),
      ),
    }),
  }),
  shortlist: listOf(candidateSchema, MOST_SHORTLISTED),
});

/** What a new document starts from: the first ready design's own notes, an empty drawer, common parts to order. */
export const DEFAULT_PITCH: Pitch = {
  wish: {
    way: 'notes',
    notes: { A: 'A3', B: 'E4' },
    interval: { from: 'A', name: 'fifth', direction: 'up', cents: 0 },
    hertz: { A: 220, B: 330 },
    sweep: { A: { lowHertz: 130, highHertz: 520 }, B: { lowHertz: 260, highHertz: 1040 } },
    a4Hertz: 440,
    temperament: 'equal',
    duty: null,
    polarised: false,
    weights: { fewerParts: 1, easierTuning: 1, surerReach: 2, cheaper: 0 },
    law: 'uniform',
    kits: 30,
    seed: 1,
  },
  drawer: {
    use: 'order',
    resistors: [],
    trimmers: [],
    capacitors: [],
    order: {
      resistors: { series: 'E12', tolerance: 0.01 },
      trimmers: { part: 'single-turn' },
      capacitors: { series: 'E6', dielectric: 'polyester', tolerance: 0.05 },
    },
  },
  shortlist: [],
};
