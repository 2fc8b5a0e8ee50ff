/**
 * "Just on": the turn of the threshold at which the voices just start to sound in a given steady light, the way
 * it is done in the room (common practice): give the sensors the light that should sound, turn until both have
 * just switched on. Any light a little less right then leaves them silent.
 */
import { steadyConductance } from '../circuit/cell.ts';
import { cellSiemens, type Gate, gatesOf, nodeVolts, overdriveVolts, stateIndex } from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { turnThreshold } from '../design/commands.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import { type Fraction, type Lux, type Pair, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';

export type JustOn =
  | { readonly kind: 'turn'; readonly rotation: Fraction }
  /** The voices sound at every setting of this trimmer. */
  | { readonly kind: 'always' }
  /** No setting of this trimmer lets them sound in this light. */
  | { readonly kind: 'never' };

/** Places looked at along the trimmer before the exact one is closed in on. */
const PLACES = 400;
/** "Just": this far past the trip point, or three times the node's noise if that is more. */
const LEAST_MARGIN: Volts = 0.001;

/** The turn of one threshold trimmer at which every voice on it just sounds in this light. */
export function justOn(design: Design, trimmer: VoiceId, lux: Pair<Lux>): JustOn {
  const voices = design.threshold.arrangement === 'shared' ? VOICES : [trimmer];
  const margin = Math.max(LEAST_MARGIN, 3 * design.noise.voltsRms);
  const rail = railVolts(design.supply);
  const past = (rotation: Fraction): Volts => {
    const gates = gatesOf(turnThreshold(trimmer, rotation)(design), rail);
    return (
      Math.min(...voices.map((voice) => silentOverdrive(design, gates[voice], voice, lux[voice]))) - margin
    );
  };
  const present = thresholdFor(design, trimmer).trimmer.rotation;
  let best: Fraction | null = null;
  let before = past(0);
  let sounds = before >= 0 ? 1 : 0;
  for (let place = 1; place <= PLACES; place++) {
    const here = past(place / PLACES);
    if (here >= 0) sounds++;
    if (here >= 0 !== before >= 0) {
      const found = boundary(past, (place - 1) / PLACES, place / PLACES);
      if (best === null || Math.abs(found - present) < Math.abs(best - present)) best = found;
    }
    before = here;
  }
  if (best !== null) return { kind: 'turn', rotation: best };
  return { kind: sounds > 0 ? 'always' : 'never' };
}

/** How far past its point the comparator of a silent voice is in a steady light, volts of the node. */
function silentOverdrive(design: Design, gate: Gate, voice: VoiceId, lux: Lux): Volts {
  const state = gate.states[stateIndex({ A: false, B: false })]!;
  const y = steadyConductance(design.voices[voice].cell.gamma, lux);
  return overdriveVolts(state, nodeVolts(state, cellSiemens(gate, y)));
}

/** Halves an interval whose ends differ in sign; gives the end at which the voices sound. */
function boundary(past: (rotation: Fraction) => Volts, from: Fraction, to: Fraction): Fraction {
  let sounding = past(from) >= 0 ? from : to;
  let silent = sounding === from ? to : from;
  while (Math.abs(sounding - silent) > 1e-7) {
    const middle = (sounding + silent) / 2;
    if (past(middle) >= 0) sounding = middle;
    else silent = middle;
  }
  return sounding;
}
