/**
 * A class's kits: one parts list, thirty boards that differ as bought parts differ. Seeded, so that every class sees
 * the same thirty. Cells lie anywhere by ratio within their grade's band and anywhere within the spread of their
 * slope; resistors, trimmer and capacitor anywhere within their tolerance (uniform law, common practice).
 */
import { astableOf, cycleOf } from '../circuit/astable.ts';
import { steadyConductance } from '../circuit/cell.ts';
import { cellSiemens, gatesOf, nodeVolts, rotationForVolts, stateIndex } from '../circuit/gate.ts';
import { instrumentOf, momentIn } from '../circuit/instrument.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, thresholdFor, type Voice } from '../design/design.ts';
import { CELLS } from '../parts/cells.ts';
import { centsBetween } from '../plan/notes.ts';
import { uniformFrom } from '../quantity/random.ts';
import { type Fraction, type Lux, pairOf, type VoiceId } from '../quantity/units.ts';

export const KITS = 30;
const RESISTOR_TOLERANCE: Fraction = 0.01;

/** The same design built `KITS` times. */
export function kitsOf(design: Design, seed = 1): readonly Design[] {
  const uniform = uniformFrom(seed);
  const off = (tolerance: Fraction) => 1 + tolerance * (2 * uniform() - 1);
  const built = (voice: Voice): Voice => {
    const { r10Ohms, gamma } = CELLS[voice.cell.family];
    return {
      ...voice,
      raOhms: voice.raOhms * off(RESISTOR_TOLERANCE),
      rbFixedOhms: voice.rbFixedOhms * off(RESISTOR_TOLERANCE),
      trimmer: { ...voice.trimmer, ohms: voice.trimmer.ohms * off(voice.trimmer.tolerance) },
      capacitor: { ...voice.capacitor, farads: voice.capacitor.farads * off(voice.capacitor.tolerance) },
      cell: {
        ...voice.cell,
        r10Ohms: r10Ohms.min * (r10Ohms.max / r10Ohms.min) ** uniform(),
        gamma: gamma.usual + gamma.spread * (2 * uniform() - 1),
      },
    };
  };
  return Array.from({ length: KITS }, () => ({
    ...design,
    voices: pairOf((id) => built(design.voices[id])),
  }));
}

/** How many kits do right at one setting of the threshold: sound when lit, silent when shaded (or the other way). */
export function kitsRight(design: Design, voice: VoiceId, litLux: Lux, shadeLux: Lux): number {
  return kitsOf(design).filter((kit) => {
    const instrument = instrumentOf(kit);
    // Coming from the other state: the harder case, with hysteresis.
    const soundsAt = (lux: Lux, before: boolean) =>
      momentIn(kit, instrument, { A: lux, B: lux }, { A: before, B: before })[voice].sounding;
    const inLight = kit.voices[voice].polarity === 'light';
    return soundsAt(litLux, !inLight) === inLight && soundsAt(shadeLux, inLight) !== inLight;
  }).length;
}

/** The turn of the threshold that puts the reference where a silent voice's node is in this light; 0…1. */
export function turnFor(design: Design, voice: VoiceId, lux: Lux): Fraction {
  const rail = railVolts(design.supply);
  const gate = gatesOf(design, rail)[voice];
  const y = steadyConductance(design.voices[voice].cell.gamma, lux);
  const node = nodeVolts(gate.states[stateIndex({ A: false, B: false })]!, cellSiemens(gate, y));
  return Math.min(1, Math.max(0, rotationForVolts(thresholdFor(design, voice), rail, node)));
}

/** Where each kit's threshold trimmer must stand for a light in the middle (by ratio) of lit and shaded; 0…1. */
export function kitTurns(
  design: Design,
  voice: VoiceId,
  litLux: Lux,
  shadeLux: Lux,
): { readonly least: Fraction; readonly most: Fraction } {
  const turns = kitsOf(design).map((kit) => turnFor(kit, voice, Math.sqrt(litLux * shadeLux)));
  return { least: Math.min(...turns), most: Math.max(...turns) };
}

/** From the lowest kit's pitch to the highest's, cents, every trimmer at the same mark; null when one does not run. */
export function kitCents(design: Design, voice: VoiceId): number | null {
  const pitches = kitsOf(design).map(
    (kit) => cycleOf(astableOf(kit, voice, railVolts(kit.supply))).frequency,
  );
  const lowest = Math.min(...pitches);
  return lowest > 0 ? centsBetween(lowest, Math.max(...pitches)) : null;
}
