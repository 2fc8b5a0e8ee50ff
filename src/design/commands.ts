/**
 * Every change a person can make to a design, as pure functions `(design, …) → design`. A change that changes
 * nothing returns the same object. Values arrive already parsed and within `LIMITS`.
 */

import type { CapacitorKindId, DielectricId } from '../parts/capacitors.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { CELLS, type CellId } from '../parts/cells.ts';
import type { ComparatorId } from '../parts/comparators.ts';
import { SUPPLIES, type SupplyId } from '../parts/supplies.ts';
import type { TimerId } from '../parts/timers.ts';
import { TRIMMERS, type TrimmerId } from '../parts/trimmers.ts';
import type { Farads, Fraction, Ohms, Pair, VoiceId, Volts } from '../quantity/units.ts';
import type {
  Cell,
  CellKept,
  CellPosition,
  Design,
  Output,
  Polarity,
  Supply,
  ThresholdTrimmer,
  Voice,
} from './design.ts';
import { withEntries } from './entries.ts';

export type Command = (design: Design) => Design;

/** The old part where the new one equals it, so that nothing counts as changed. */
function sameOrNew<T extends object>(old: T | null, next: T | null): T | null {
  return old !== null && next !== null ? withEntries(old, next) : next;
}

const inVoice =
  (id: VoiceId, change: (voice: Voice) => Voice): Command =>
  (design) =>
    withEntries(design, { voices: withEntries(design.voices, { [id]: change(design.voices[id]) }) });

const inOutput =
  (change: Partial<Output>): Command =>
  (design) =>
    withEntries(design, { output: withEntries(design.output, change) });

const inThreshold =
  (id: VoiceId, change: (part: ThresholdTrimmer) => ThresholdTrimmer): Command =>
  (design) => {
    const { threshold } = design;
    const trimmers = withEntries(threshold.trimmers, { [id]: change(threshold.trimmers[id]) });
    return withEntries(design, { threshold: withEntries(threshold, { trimmers }) });
  };

export const rename =
  (name: string): Command =>
  (design) =>
    withEntries(design, { name });
export const annotate =
  (notes: string): Command =>
  (design) =>
    withEntries(design, { notes });
export const chooseTimer =
  (timer: TimerId): Command =>
  (design) =>
    withEntries(design, { timer });
export const chooseComparator =
  (comparator: ComparatorId): Command =>
  (design) =>
    withEntries(design, { comparator });

/** Turns a pitch trimmer. */
export const turnPitch = (id: VoiceId, rotation: Fraction): Command =>
  inVoice(id, (voice) => withEntries(voice, { trimmer: withEntries(voice.trimmer, { rotation }) }));

/** Fits another pitch trimmer of the same turn. */
export const fitPitchTrimmer = (id: VoiceId, change: { part?: TrimmerId; ohms?: Ohms }): Command =>
  inVoice(id, (voice) => withEntries(voice, { trimmer: withPart(voice.trimmer, change) }));

/** Another kind of part brings its own tolerance. */
function withPart<T extends { part: TrimmerId; ohms: Ohms; tolerance: Fraction }>(
  trimmer: T,
  change: { part?: TrimmerId; ohms?: Ohms },
): T {
  const part = change.part ?? trimmer.part;
  const tolerance = part === trimmer.part ? trimmer.tolerance : TRIMMERS[part].tolerance;
  return withEntries<{ part: TrimmerId; ohms: Ohms; tolerance: Fraction }>(trimmer, {
    part,
    ohms: change.ohms ?? trimmer.ohms,
    tolerance,
  }) as T;
}

type VoiceValue = 'raOhms' | 'rbFixedOhms' | 'hysteresisOhms' | 'inputOhms' | 'pullUpOhms';
/** Sets one resistor of a voice; null takes the hysteresis resistor out. */
export const setVoiceValue = <K extends VoiceValue>(id: VoiceId, key: K, value: Voice[K]): Command =>
  inVoice(id, (voice) => withEntries(voice, { [key]: value } as Partial<Voice>));

export const setCapacitance = (id: VoiceId, farads: Farads): Command =>
  inVoice(id, (voice) => withEntries(voice, { capacitor: withEntries(voice.capacitor, { farads }) }));

/** Another dielectric brings its own usual tolerance. */
export const chooseDielectric = (id: VoiceId, dielectric: DielectricId): Command =>
  inVoice(id, (voice) =>
    voice.capacitor.dielectric === dielectric
      ? voice
      : {
          ...voice,
          capacitor: { ...voice.capacitor, dielectric, tolerance: DIELECTRICS[dielectric].tolerance },
        },
  );

export const setPolarity = (id: VoiceId, polarity: Polarity): Command =>
  inVoice(id, (voice) => withEntries(voice, { polarity }));

export const placeCell = (id: VoiceId, cell: CellPosition): Command =>
  inVoice(id, (voice) => withEntries(voice, { divider: withEntries(voice.divider, { cell }) }));

export const setDividerOhms = (id: VoiceId, fixedOhms: Ohms): Command =>
  inVoice(id, (voice) => withEntries(voice, { divider: withEntries(voice.divider, { fixedOhms }) }));

export const setCell = (id: VoiceId, change: Partial<Pick<Cell, 'r10Ohms' | 'gamma'>>): Command =>
  inVoice(id, (voice) => withEntries(voice, { cell: withEntries(voice.cell, change) }));

export const keepCell = (id: VoiceId, cellKept: CellKept): Command =>
  inVoice(id, (voice) => withEntries(voice, { cellKept }));

/** A cell of another family, with the family's usual resistance and slope. */
export const chooseCell = (id: VoiceId, family: CellId): Command =>
  inVoice(id, (voice) => {
    const { r10Ohms, gamma } = CELLS[family];
    return voice.cell.family === family
      ? voice
      : { ...voice, cell: { family, r10Ohms: r10Ohms.usual, gamma: gamma.usual } };
  });

export const setControlVolts = (id: VoiceId, controlVolts: Volts | null): Command =>
  inVoice(id, (voice) => withEntries(voice, { controlVolts }));

/** Turns a threshold trimmer (A's when one is shared). */
export const turnThreshold = (id: VoiceId, rotation: Fraction): Command =>
  inThreshold(id, (part) => withEntries(part, { trimmer: withEntries(part.trimmer, { rotation }) }));

export const fitThresholdTrimmer = (id: VoiceId, change: { part?: TrimmerId; ohms?: Ohms }): Command =>
  inThreshold(id, (part) => withEntries(part, { trimmer: withPart(part.trimmer, change) }));

export const setEndResistor = (id: VoiceId, end: 'topOhms' | 'bottomOhms', ohms: Ohms): Command =>
  inThreshold(id, (part) => withEntries(part, { [end]: ohms }));

/** One threshold trimmer for both voices, or one each. */
export const arrangeThreshold =
  (arrangement: 'shared' | 'each'): Command =>
  (design) =>
    withEntries(design, { threshold: withEntries(design.threshold, { arrangement }) });

/** Mixing resistors, or null to join the outputs directly. */
export const setMixing =
  (mixOhms: Pair<Ohms> | null): Command =>
  (design) =>
    inOutput({ mixOhms: sameOrNew(design.output.mixOhms, mixOhms) })(design);
export const setMixOhms =
  (id: VoiceId, ohms: Ohms): Command =>
  (design) =>
    design.output.mixOhms === null ? design : setMixing({ ...design.output.mixOhms, [id]: ohms })(design);
export const setShuntOhms = (shuntOhms: Ohms | null): Command => inOutput({ shuntOhms });
export const setLoadOhms = (loadOhms: Ohms): Command => inOutput({ loadOhms });
/** A volume control, or null to leave it out. */
export const setVolume =
  (volume: Output['volume']): Command =>
  (design) =>
    inOutput({ volume: sameOrNew(design.output.volume, volume) })(design);
export const setCoupling =
  (coupling: { farads: Farads; kind: CapacitorKindId } | null): Command =>
  (design) =>
    inOutput({ coupling: sameOrNew(design.output.coupling, coupling) })(design);

/** A supply of another kind, at its nominal voltage. */
export const chooseSupply =
  (kind: SupplyId): Command =>
  (design) =>
    design.supply.kind === kind
      ? design
      : {
          ...design,
          supply: {
            ...design.supply,
            kind,
            volts: SUPPLIES[kind].volts,
            sourceOhms: SUPPLIES[kind].sourceOhms,
          },
        };
export const setSupply =
  (change: Partial<Omit<Supply, 'kind'>>): Command =>
  (design) =>
    withEntries(design, { supply: withEntries(design.supply, change) });

export const setNoise =
  (voltsRms: Volts): Command =>
  (design) =>
    withEntries(design, { noise: withEntries(design.noise, { voltsRms }) });

export const setSeed =
  (seed: number): Command =>
  (design) =>
    withEntries(design, { noise: withEntries(design.noise, { seed }) });

/** Another whole design (a file, a preset), as one step that can be taken back. */
export const replaceWith =
  (other: Design): Command =>
  () =>
    other;
