/**
 * Cautions as data: the hazard, where it arises, the words, and what they rest on. Each is shown where the
 * hazard arises, before the act. Local rules and licensed practice always come first.
 */
import { spoken } from './spoken.ts';

export const CAUTION_PLACES = [
  'sound',
  'headphones',
  'light',
  'camera',
  'timing capacitor',
  'output',
  'supply',
  'cell',
  'cutting',
  'building',
  'order in the eu',
  'order in the uk',
  'order elsewhere',
  'battery transport',
  'first power-up',
] as const;
export type CautionPlace = (typeof CAUTION_PLACES)[number];

export interface Caution {
  readonly hazard: string;
  readonly place: CautionPlace;
  readonly words: string;
  readonly source: string;
}

export interface CautionWords {
  readonly localRules: string;
  readonly all: readonly Caution[];
}

const all: readonly Caution[] = [
  {
    hazard: 'hearing',
    place: 'sound',
    words:
      'Start quietly: square waves sound louder than they measure. This page cannot know how loud your loudspeaker is. As a guide, adults can take 80 dB(A) for 40 hours a week, children 75; every 3 dB more halves the time.',
    source: 'ITU-T H.870; WHO and ITU, Safe listening devices and systems (2019)',
  },
  {
    hazard: 'headphones',
    place: 'headphones',
    words: 'Take headphones off before you press Sound on, and put them on once you know the level.',
    source: 'common practice',
  },
  {
    hazard: 'flashing light',
    place: 'light',
    words:
      'A hand waved under a lamp, or a slotted lantern, can flash. Keep real light below 3 flashes a second: faster flashing can trigger seizures. Nothing on this page flashes faster, whatever the sound does.',
    source: 'WCAG 2.2, 2.3.1; Epilepsy Society (UK)',
  },
  {
    hazard: 'lamps',
    place: 'light',
    words:
      'Real lamps: low voltage and cool ones for a class, nothing opened that runs from the mains, no paper near a flame, and never look into a focused LED or the sun.',
    source: 'common practice',
  },
  {
    hazard: 'privacy',
    place: 'camera',
    words:
      'The picture stays on this device: two brightness numbers are read from each frame, nothing is stored or sent. Ask people before a camera sees them.',
    source: 'common practice',
  },
  {
    hazard: 'polarity',
    place: 'timing capacitor',
    words:
      'An electrolytic capacitor has a polarity: the shorter leg and the stripe are minus. Reversed, it can leak, vent or burst. It is a poor timing part besides: its leakage and tolerance move the pitch.',
    source: 'Rubycon and Elna, cautions for aluminium electrolytics',
  },
  {
    hazard: 'polarity',
    place: 'output',
    words:
      'A polarised coupling capacitor sits with its plus leg toward the timers. Never plug headphones straight into timer outputs: use at least 1 kΩ in series, better 4.7 kΩ or more, and a volume control.',
    source: 'computed from 9 V into 32 Ω at 100 dB/mW; common practice',
  },
  {
    hazard: 'batteries',
    place: 'supply',
    words:
      'A 9 V block shorted by keys or wire wool can start a fire: keep its cap on. Do not mix old and new cells, and never recharge alkaline ones.',
    source: 'NFPA, 9-volt battery storage; Energizer FAQ',
  },
  {
    hazard: 'cadmium',
    place: 'cell',
    words:
      'These light cells hold cadmium: do not sand, break or burn them, and hand them in as electronic waste. Selling kits with them is restricted in some countries.',
    source: 'EU RoHS Directive; common practice',
  },
  {
    hazard: 'cadmium',
    place: 'order in the eu',
    words:
      'In the European Union light cells with cadmium may no longer be sold in new equipment: the exemption ended on 31 December 2013. Ask before you sell or give away kits; a phototransistor is the usual way out, with a divider of its own.',
    source: 'EU RoHS Directive 2011/65/EU, annex III; distributor notice on the end of the exemption',
  },
  {
    hazard: 'cadmium',
    place: 'order in the uk',
    words:
      'In the United Kingdom the same limit on cadmium holds as in the European Union: ask before you sell or give away kits with these light cells.',
    source: 'UK RoHS Regulations 2012; from memory',
  },
  {
    hazard: 'cadmium',
    place: 'order elsewhere',
    words:
      'These light cells hold cadmium. Rules differ from country to country: ask before you sell kits or carry them over a border.',
    source: 'common practice',
  },
  {
    hazard: 'batteries',
    place: 'battery transport',
    words:
      'Carry batteries in their packing or with their contacts covered, 9 V blocks one by one; never loose in a bag with clips or wire. Carriers have rules of their own for batteries: ask.',
    source: 'NFPA, 9-volt battery storage; common practice',
  },
  {
    hazard: 'first power-up',
    place: 'first power-up',
    words:
      'Power up first without the chips, through a supply limited to 50 mA or with a meter in the lead. More than 35 mA, or anything warm: cut the power, then look.',
    source: 'common practice',
  },
  {
    hazard: 'copper splinters',
    place: 'cutting',
    words:
      'Cutting strips throws fine splinters of copper: protect your eyes, brush the dust off rather than blow, wash your hands.',
    source: 'common practice',
  },
  {
    hazard: 'soldering',
    place: 'building',
    words:
      'Rosin fume is a leading cause of occupational asthma: extract it, keep your head out of the plume, protect your eyes when clipping leads, wash your hands.',
    source: 'HSE (UK), INDG248 and asthma guidance for solderers',
  },
];

export const cautionWords: CautionWords = spoken('cautions', {
  localRules: 'Your local rules and licensed practice come first.',
  all,
});

/** The cautions for a place, in the language spoken. */
export function cautionsAt(...places: readonly CautionPlace[]): readonly Caution[] {
  return cautionWords.all.filter((caution) => places.includes(caution.place));
}
