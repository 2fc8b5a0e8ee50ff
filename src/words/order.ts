/** The words of the order list: what each line is, what must match, what may vary, and the table's headings. */
import { formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import type { Farads, Fraction, Ohms, VoiceId, Volts } from '../quantity/units.ts';
import { spoken } from './spoken.ts';

/** Where the kits are handed out: it decides what may be sold. */
export type Region = 'eu' | 'uk' | 'elsewhere';

export type LossKind = 'resistor' | 'capacitor' | 'chip' | 'trimmer' | 'cell' | 'battery lead' | 'other';

export type FilmOrCeramic = 'film' | 'ceramic' | 'electrolytic';

/** What a line of the order is, in terms no maker owns. */
export type OrderSpec =
  | { readonly kind: 'resistor'; readonly ohms: Ohms }
  | {
      readonly kind: 'timing capacitor';
      readonly farads: Farads;
      readonly dielectric: 'polyester' | 'polypropylene' | 'c0g' | 'x7r' | 'y5v' | 'electrolytic';
      readonly tolerance: Fraction;
      readonly volts: Volts;
    }
  | {
      readonly kind: 'capacitor';
      readonly farads: Farads;
      readonly type: FilmOrCeramic;
      readonly use: 'coupling' | 'bypass' | 'reservoir';
      readonly volts: Volts;
    }
  | {
      readonly kind: 'trimmer';
      readonly part: 'single-turn' | 'multi-turn' | 'carbon';
      readonly ohms: Ohms;
      readonly turns: number;
      readonly tolerance: Fraction;
    }
  | { readonly kind: 'volume'; readonly ohms: Ohms }
  | {
      readonly kind: 'cell';
      readonly minOhms: Ohms;
      readonly maxOhms: Ohms;
      readonly gamma: number;
      readonly darkOhms: Ohms;
    }
  | {
      readonly kind: 'timer';
      readonly family: 'bipolar' | 'cmos';
      readonly minVolts: Volts;
      readonly maxVolts: Volts;
    }
  | { readonly kind: 'comparator'; readonly family: 'classic' | 'later' }
  | { readonly kind: 'socket'; readonly pins: 8 | 14 }
  | { readonly kind: 'diode' }
  | { readonly kind: 'supply'; readonly supply: 'block-9v' | 'four-aa' | 'five-volt' }
  | { readonly kind: 'supply lead'; readonly supply: 'block-9v' | 'four-aa' | 'five-volt' }
  | { readonly kind: 'jack' }
  | { readonly kind: 'test pin' }
  | { readonly kind: 'board'; readonly size: { readonly strips: number; readonly holes: number } | null }
  /** By the metre. */
  | { readonly kind: 'wire'; readonly wire: 'links' | 'leads' | 'sleeve' };

export interface LineWords {
  readonly name: string;
  readonly mustMatch: string;
  readonly mayVary: string;
}

const DIELECTRIC = {
  polyester: 'polyester film',
  polypropylene: 'polypropylene film',
  c0g: 'ceramic, C0G (NP0)',
  x7r: 'ceramic, X7R',
  y5v: 'ceramic, Y5V',
  electrolytic: 'electrolytic',
} as const;

const TRIMMER = {
  'single-turn': 'Cermet trimmer, one turn',
  'multi-turn': 'Cermet trimmer, many turns',
  carbon: 'Carbon trimmer, one turn',
} as const;

const ohm = (ohms: Ohms): string => formatQuantity(ohms, 'Ω');
const farad = (farads: Farads): string => formatQuantity(farads, 'F');

/** Across the strips and along them, in whole millimetres. */
export const pieceSize = ({ strips, holes }: { readonly strips: number; readonly holes: number }): string =>
  `${formatNumber(Math.ceil(strips * 2.54), 4)} × ${formatNumber(Math.ceil(holes * 2.54), 4)}\u00A0mm`;

const WIRE = {
  links: {
    name: 'Wire for links, bare tinned copper, by the metre',
    mustMatch: 'solid, 0.5 to 0.7 mm thick',
    mayVary: 'maker; clipped leads of resistors serve for short links',
  },
  leads: {
    name: 'Wire for sensor leads, stranded and insulated, by the metre',
    mustMatch: 'stranded, as solid wire breaks; about 0.14 mm², the bare end fits a 1 mm hole',
    mayVary: 'maker, colours; of twin lead half the length',
  },
  sleeve: {
    name: 'Heat-shrink sleeving, 3 mm, by the metre',
    mustMatch: 'slips over a soldered lead and shrinks to 1.5 mm',
    mayVary: 'maker, colour; plain sleeving',
  },
} as const;

function lineOf(spec: OrderSpec): LineWords {
  switch (spec.kind) {
    case 'resistor':
      return {
        name: `Resistor ${ohm(spec.ohms)}, metal film, 1 %, 0.25 W`,
        mustMatch: 'the value; 1 %; body no longer than 7 mm',
        mayVary: 'maker, body colour, 0.25 to 0.6 W, four or five bands',
      };
    case 'timing capacitor':
      return {
        name: `Capacitor ${farad(spec.farads)}, ${DIELECTRIC[spec.dielectric]}, ±${formatShare(spec.tolerance)}, ${formatNumber(spec.volts, 3)} V or more`,
        mustMatch: 'the value and the dielectric: both set the pitch; 5 mm lead spacing',
        mayVary: 'maker, higher voltage, a closer tolerance',
      };
    case 'capacitor':
      return capacitorWords(spec);
    case 'trimmer':
      return {
        name: `${TRIMMER[spec.part]} ${ohm(spec.ohms)}, ±${formatShare(spec.tolerance)}`,
        mustMatch: `the value; ${formatNumber(spec.turns, 3)} ${spec.turns === 1 ? 'turn' : 'turns'}; legs that fit 2.54 mm holes; linear`,
        mayVary: 'maker, side or top adjustment',
      };
    case 'volume':
      return {
        name: `Trimmer or potentiometer ${ohm(spec.ohms)}, linear or logarithmic`,
        mustMatch: 'the value',
        mayVary: 'maker, shaft, law',
      };
    case 'cell':
      return {
        name: `Light cell, ${ohm(spec.minOhms)} to ${ohm(spec.maxOhms)} at 10 lx, dark ${ohm(spec.darkOhms)} or more`,
        mustMatch: `the grade at 10 lx; slope near ${formatNumber(spec.gamma, 2)}; all from one lot`,
        mayVary: 'maker, 5 mm or larger body',
      };
    case 'timer':
      return {
        name: `Dual timer, 556 type, ${spec.family === 'cmos' ? 'CMOS' : 'bipolar'}, 14 pins DIP`,
        mustMatch: `${spec.family === 'cmos' ? 'CMOS' : 'bipolar'}; runs from ${formatNumber(spec.minVolts, 3)} to ${formatNumber(spec.maxVolts, 3)} V; DIP body`,
        mayVary: 'maker, letters before and after the number',
      };
    case 'comparator':
      return {
        name: `Dual comparator, 393 type, ${spec.family === 'later' ? 'later die' : 'classic die'}, 8 pins DIP`,
        mustMatch: 'open-collector outputs; DIP body; not an operational amplifier',
        mayVary: 'maker, letters before and after the number',
      };
    case 'socket':
      return {
        name: `Chip socket, ${spec.pins} pins, 7.62 mm wide`,
        mustMatch: `${spec.pins} pins, notch marked`,
        mayVary: 'maker, turned or stamped contacts',
      };
    case 'diode':
      return {
        name: 'Schottky diode, 1 A, 20 V or more, axial',
        mustMatch: 'Schottky: a silicon diode takes 0.4 V more',
        mayVary: 'maker, 0.5 to 3 A',
      };
    case 'supply':
      return SUPPLY_WORDS[spec.supply].supply;
    case 'supply lead':
      return SUPPLY_WORDS[spec.supply].lead;
    case 'jack':
      return {
        name: 'Jack socket, 6.35 mm or 3.5 mm, mono, board mounting',
        mustMatch: 'the plug of your cables; a mono plug in a stereo socket shorts the ring',
        mayVary: 'maker, switched or not',
      };
    case 'test pin':
      return { name: 'Test pin, 1 mm', mustMatch: 'fits a 1 mm hole', mayVary: 'maker, colour, loop or pin' };
    case 'board':
      return {
        name:
          spec.size === null
            ? 'Stripboard, 2.54 mm'
            : `Stripboard, 2.54 mm, ${spec.size.strips} strips of ${spec.size.holes} holes`,
        mustMatch:
          spec.size === null
            ? '2.54 mm pitch; strips not yet cut; size as on the board plan'
            : `2.54 mm pitch; strips not yet cut; a piece of at least ${pieceSize(spec.size)}`,
        mayVary: 'maker, paper or glass-fibre base; larger pieces to cut from',
      };
    case 'wire':
      return WIRE[spec.wire];
  }
}

function capacitorWords(spec: OrderSpec & { kind: 'capacitor' }): LineWords {
  const name = `Capacitor ${farad(spec.farads)}, ${spec.type}, ${formatNumber(spec.volts, 3)} V or more`;
  if (spec.type === 'electrolytic')
    return {
      name,
      mustMatch: 'radial leads; a stripe or shorter leg marks minus',
      mayVary: 'maker, higher voltage, up to twice the value',
    };
  return {
    name,
    mustMatch:
      spec.use === 'coupling' ? 'not polarised; the value within a fifth' : 'not polarised; fits two holes',
    mayVary: spec.use === 'coupling' ? 'maker, higher voltage' : 'maker, dielectric, half to twice the value',
  };
}

const SUPPLY_WORDS: Readonly<
  Record<'block-9v' | 'four-aa' | 'five-volt', { readonly supply: LineWords; readonly lead: LineWords }>
> = {
  'block-9v': {
    supply: {
      name: 'Battery, 9 V block, alkaline (6LR61)',
      mustMatch: 'alkaline: zinc–carbon gives a tenth of the hours',
      mayVary: 'maker',
    },
    lead: {
      name: 'Battery clip, 9 V block, with leads',
      mustMatch: 'red plus, black minus',
      mayVary: 'maker',
    },
  },
  'four-aa': {
    supply: {
      name: 'Battery, AA, alkaline (LR6)',
      mustMatch: 'alkaline; one maker and age in a kit',
      mayVary: 'maker',
    },
    lead: {
      name: 'Holder for four AA cells, with leads',
      mustMatch: 'four in series, 6 V',
      mayVary: 'maker',
    },
  },
  'five-volt': {
    supply: {
      name: 'Supply, 5 V regulated, 100 mA or more',
      mustMatch: '5 V, limited current, safety mark for your country',
      mayVary: 'maker',
    },
    lead: { name: 'Supply socket or lead, 5 V', mustMatch: 'fits the supply', mayVary: 'maker' },
  },
};

/** What another part would do, worked out by the model. */
export type AlternateEffect =
  | {
      readonly kind: 'pitch';
      readonly voice: VoiceId;
      /** With the trimmer left where it is. */
      readonly cents: number;
      /** Where the trimmer stands for the old pitch; null = out of its reach. */
      readonly rotation: Fraction | null;
    }
  | { readonly kind: 'silent'; readonly voice: VoiceId; readonly why: 'pitch' | 'gate' | 'light' }
  /** Light at which the voice starts: before and after, with the threshold left where it is. */
  | { readonly kind: 'light'; readonly voice: VoiceId; readonly ratio: number }
  | { readonly kind: 'level'; readonly decibels: number }
  | { readonly kind: 'current'; readonly amperes: number }
  | { readonly kind: 'supply too low'; readonly leastVolts: Volts };

function effectSentence(effect: AlternateEffect): string {
  switch (effect.kind) {
    case 'pitch': {
      const moved = `Voice ${effect.voice} moves ${formatNumber(Math.abs(effect.cents), 3)} cents ${effect.cents < 0 ? 'down' : 'up'}`;
      if (Math.abs(effect.cents) < 0.5) return `Voice ${effect.voice} keeps its pitch.`;
      return effect.rotation === null
        ? `${moved}, further than its trimmer can bring back.`
        : `${moved}; its trimmer brings it back at ${formatShare(effect.rotation)} of its travel.`;
    }
    case 'silent':
      return `Voice ${effect.voice} would be silent: ${
        {
          pitch: 'its capacitor never reaches the level that turns it.',
          gate: 'its reset pin is never released.',
          light: 'no light sets it off with the threshold where it is.',
        }[effect.why]
      }`;
    case 'light':
      return Math.abs(Math.log(effect.ratio)) < 0.005
        ? `Voice ${effect.voice} switches in the same light.`
        : `Voice ${effect.voice} starts at ${formatNumber(effect.ratio, 2)} times the light: set its threshold anew.`;
    case 'level':
      return Math.abs(effect.decibels) < 0.05
        ? 'As loud as before.'
        : `${formatNumber(Math.abs(effect.decibels), 2)} dB ${effect.decibels < 0 ? 'quieter' : 'louder'}.`;
    case 'current':
      return `Draws ${formatQuantity(effect.amperes, 'A', 3)} with both silent.`;
    case 'supply too low':
      return `Does not run on this supply: it needs ${formatNumber(effect.leastVolts, 3)} V.`;
  }
}

/** What a line is, and what another part would do. */
export const orderLines = spoken('order lines', { line: lineOf, effect: effectSentence });

/** One line in words. */
export const lineWords = (spec: OrderSpec): LineWords => orderLines.line(spec);

/** One effect as a sentence. */
export const effectWords = (effect: AlternateEffect): string => orderLines.effect(effect);

export const orderWords = spoken('order', {
  columns: [
    'Part',
    'Must match',
    'May vary',
    'Used for',
    'Per kit',
    'Needed',
    'With spares',
    'In stock',
    'Pack of',
    'Packs to buy',
    'Price of a pack',
    'Cost',
    'Chance that it is enough',
    'Instead of it',
  ],
  total: 'Total',
  basket: (chance: Fraction) => `Chance that nothing runs short: ${formatShare(chance, 1)}`,
  noCount: 'At this loss rate no number is safe.',
  partLosses: {
    resistor: 'resistors',
    capacitor: 'capacitors',
    chip: 'chips',
    trimmer: 'trimmers',
    cell: 'light cells',
    'battery lead': 'battery leads',
    other: 'everything else',
  } satisfies Record<LossKind, string>,
} as const);
