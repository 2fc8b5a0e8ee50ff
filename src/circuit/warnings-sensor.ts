/** Warnings about light cells and their dividers. SI units. */
import { type Design, thresholdFor } from '../design/design.ts';
import { CELLS } from '../parts/cells.ts';
import { TRIMMERS } from '../parts/trimmers.ts';
import type { Fraction, Hertz, Lux, VoiceId, Volts } from '../quantity/units.ts';
import { cellSpeed, steadyConductance } from './cell.ts';
import { cellSiemens, nodeSlope, nodeVolts, overdriveVolts, rotationForVolts, stateIndex } from './gate.ts';
import type { Instrument } from './instrument.ts';
import { type Warning, warn } from './warning.ts';

/** Flicker of a common lamp: share of its mean, at twice the mains frequency. */
const LAMP_DEPTH: Fraction = 0.3;
const LAMP_HERTZ: Hertz = 100;

/** A hand over a sensor, and the trip point in the middle: light above and below it by this factor. */
const HAND_FACTOR = Math.sqrt(10);

const BOTH_SILENT = stateIndex({ A: false, B: false });
const BOTH_SOUNDING = stateIndex({ A: true, B: true });

export function sensorWarnings(design: Design, instrument: Instrument, voice: VoiceId): readonly Warning[] {
  const out: Warning[] = [];
  const v = design.voices[voice];
  const family = CELLS[v.cell.family];
  const gate = instrument.gates[voice];
  const silent = gate.states[BOTH_SILENT]!;
  const sounding = gate.states[BOTH_SOUNDING]!;
  const rail = instrument.railVolts;

  const heat = (rail * rail) / (4 * v.divider.fixedOhms);
  if (heat > family.mostWatts)
    out.push(
      warn('cell-heat', voice, 'wrong', {
        watts: heat,
        mostWatts: family.mostWatts,
        leastOhms: (rail * rail) / (4 * family.mostWatts),
      }),
    );
  if (family.fallSeconds >= 0.1)
    out.push(warn('slow-fall', voice, 'note', { fallSeconds: family.fallSeconds }));
  if (v.polarity === 'shade') out.push(warn('sounds-in-shade', voice, 'note', { cell: v.divider.cell }));
  if (gate.releases && gate.silences && overdriveVolts(silent, nodeVolts(silent, 0)) > 0)
    out.push(warn('unplugged-sounds', voice, 'note', { nodeVolts: nodeVolts(silent, 0) }));

  const darkOhms = 1 / (silent.d0 + gate.darkSiemens);
  if (darkOhms > 100e3) out.push(warn('long-lead', voice, 'caution', { nodeOhms: darkOhms }));

  const lux = tripMiddle(instrument, voice);
  if (lux !== null) {
    const siemens = cellSiemens(gate, steadyConductance(v.cell.gamma, lux));
    const nodeOhms = 1 / (silent.d0 + siemens);
    if (nodeOhms > 100e3) out.push(warn('touchable-node', voice, 'caution', { nodeOhms }));
    out.push(...spreadWarnings(design, instrument, voice, siemens));
    out.push(...travelWarnings(design, instrument, voice, lux));
    const swingVolts = rippleVolts(design, instrument, voice, lux);
    const hysteresisVolts = Math.abs(silent.tripVolts - sounding.tripVolts);
    if (Number.isFinite(hysteresisVolts) && swingVolts > hysteresisVolts)
      out.push(
        warn('lamp-ripple', voice, 'caution', {
          swingVolts,
          hysteresisVolts,
          lux,
          depth: LAMP_DEPTH,
          hertz: LAMP_HERTZ,
        }),
      );
  }
  return out;
}

/** The light between the trip points, by ratio; one of them where there is only one. */
function tripMiddle(instrument: Instrument, voice: VoiceId): Lux | null {
  const { on, off } = instrument.voices[voice].tripLux;
  return on !== null && off !== null ? Math.sqrt(on * off) : (on ?? off);
}

/**
 * Whole swing of a node under a flickering lamp, V: the cell's lag for small changes is γ·τ·(E/10)^(γ − 1), one
 * pole, and a small share of light is γ times that share of conductance.
 */
export function rippleVolts(design: Design, instrument: Instrument, voice: VoiceId, lux: Lux): Volts {
  const { cell } = design.voices[voice];
  const gate = instrument.gates[voice];
  const { riseTau, fallTau } = cellSpeed(cell);
  const lag = cell.gamma * ((riseTau + fallTau) / 2) * (lux / 10) ** (cell.gamma - 1);
  const gain = 1 / Math.hypot(1, 2 * Math.PI * LAMP_HERTZ * lag);
  const siemens = steadyConductance(cell.gamma, lux) / gate.r10Ohms;
  // In the dark the cell's own dark conductance holds the reading still.
  if (siemens <= gate.darkSiemens) return 0;
  const perShare = Math.abs(nodeSlope(gate.states[BOTH_SILENT]!, siemens)) * siemens * cell.gamma;
  return 2 * LAMP_DEPTH * gain * perShare;
}

/** One grade of cell spreads the setting of the trimmer. */
function spreadWarnings(
  design: Design,
  instrument: Instrument,
  voice: VoiceId,
  siemens: number,
): readonly Warning[] {
  const { cell } = design.voices[voice];
  const { r10Ohms } = CELLS[cell.family];
  const silent = instrument.gates[voice].states[BOTH_SILENT]!;
  const rotationAt = (r10: number) => {
    const node = nodeVolts(silent, (siemens * cell.r10Ohms) / r10);
    return rotationForVolts(thresholdFor(design, voice), instrument.railVolts, node);
  };
  const ends = [rotationAt(r10Ohms.min), rotationAt(r10Ohms.max)].map((w) => Math.min(1, Math.max(0, w)));
  const fromRotation = Math.min(...ends);
  const toRotation = Math.max(...ends);
  if (!(toRotation - fromRotation > 0.1)) return [];
  return [
    warn('grade-spread', voice, 'note', {
      leastOhms: r10Ohms.min,
      mostOhms: r10Ohms.max,
      fromRotation,
      toRotation,
    }),
  ];
}

/** How far the threshold trimmer turns across a hand's shadow. */
function travelWarnings(
  design: Design,
  instrument: Instrument,
  voice: VoiceId,
  lux: Lux,
): readonly Warning[] {
  const part = thresholdFor(design, voice);
  const { gamma } = design.voices[voice].cell;
  const gate = instrument.gates[voice];
  const rotationAt = (light: Lux) => {
    const node = nodeVolts(gate.states[BOTH_SILENT]!, cellSiemens(gate, steadyConductance(gamma, light)));
    return rotationForVolts(part, instrument.railVolts, node);
  };
  const [fromLux, toLux] = [lux / HAND_FACTOR, lux * HAND_FACTOR];
  const degrees = Math.abs(rotationAt(fromLux) - rotationAt(toLux)) * TRIMMERS[part.trimmer.part].degrees;
  if (!(degrees < 45)) return [];
  return [warn('touchy-threshold', voice, 'caution', { degrees, fromLux, toLux })];
}

/** Warnings about the two sensors together. */
export function sharedLightWarnings(design: Design, instrument: Instrument): readonly Warning[] {
  const out: Warning[] = [];
  const { A, B } = design.voices;
  const [luxA, luxB] = [instrument.voices.A.tripLux.on, instrument.voices.B.tripLux.on];
  const differ =
    A.cell.family !== B.cell.family || A.cell.r10Ohms !== B.cell.r10Ohms || A.cell.gamma !== B.cell.gamma;
  if (
    differ &&
    A.polarity === B.polarity &&
    luxA !== null &&
    luxB !== null &&
    Math.max(luxA / luxB, luxB / luxA) > 1.25
  )
    out.push(warn('cells-unequal', null, 'caution', { luxA, luxB }));
  out.push(warn('cadmium', null, 'note', {}));
  return out;
}
