/** Warnings about thresholds, comparators and reset pins. SI units. */
import type { Design } from '../design/design.ts';
import { COMPARATORS } from '../parts/comparators.ts';
import { TIMERS } from '../parts/timers.ts';
import type { Lux, VoiceId, Volts } from '../quantity/units.ts';
import { type Gate, type GateState, gatesOf, nodeVolts, pullOf, stateIndex, tripLux } from './gate.ts';
import type { Instrument } from './instrument.ts';
import { lastSourceVolts, railVolts } from './supply.ts';
import { type Warning, warn } from './warning.ts';

/** Trip points that usual rooms ask for: the middle of lit and shaded, from 100 to 1000 lx and a hand's shadow. */
const ROOM_FROM_LUX: Lux = 32;
const ROOM_TO_LUX: Lux = 316;

const STEPS = 24;
const BOTH_SILENT = stateIndex({ A: false, B: false });

/** The light that the threshold trimmer reaches from stop to stop; null = none. */
export function reachableLux(design: Design, voice: VoiceId, rail: Volts): { from: Lux; to: Lux } | null {
  const owner = design.threshold.arrangement === 'shared' ? 'A' : voice;
  const reached: Lux[] = [];
  for (let i = 0; i <= STEPS; i++) {
    const part = design.threshold.trimmers[owner];
    const trimmers = {
      ...design.threshold.trimmers,
      [owner]: { ...part, trimmer: { ...part.trimmer, rotation: i / STEPS } },
    };
    const turned = { ...design, threshold: { ...design.threshold, trimmers } };
    const lux = tripLux(turned, voice, gatesOf(turned, rail)[voice].states[BOTH_SILENT]!);
    if (lux !== null) reached.push(lux);
  }
  return reached.length === 0 ? null : { from: Math.min(...reached), to: Math.max(...reached) };
}

/** Worst corner of the reset pin: greediest timer, weakest comparator. */
export function resetCorner(design: Design, voice: VoiceId, rail: Volts): { high: Volts; low: Volts } {
  const { pullUpOhms } = design.voices[voice];
  const timer = TIMERS[design.timer];
  const sunk = rail / pullUpOhms + timer.resetLowMostAmperes;
  return {
    high: Math.max(0, rail - timer.resetHighMostAmperes * pullUpOhms),
    low: COMPARATORS[design.comparator].worstSaturationOhms * sunk,
  };
}

export function gateWarnings(design: Design, instrument: Instrument, voice: VoiceId): readonly Warning[] {
  const out: Warning[] = [];
  const v = design.voices[voice];
  const gate = instrument.gates[voice];
  const { on, off } = instrument.voices[voice].tripLux;
  const rail = instrument.railVolts;

  if (v.hysteresisOhms === null && design.noise.voltsRms > 0)
    out.push(warn('no-hysteresis', voice, 'wrong', { noiseVolts: design.noise.voltsRms }));
  if (v.hysteresisOhms !== null && on !== null && off !== null) {
    const ratio = Math.max(on / off, off / on);
    if (ratio > 2)
      out.push(warn('hysteresis-wide', voice, 'caution', { ratio, hysteresisOhms: v.hysteresisOhms }));
  }
  const reach = reachableLux(design, voice, rail);
  if (reach === null || reach.from > ROOM_FROM_LUX || reach.to < ROOM_TO_LUX)
    out.push(
      warn('threshold-misses-rooms', voice, 'caution', {
        fromLux: reach?.from ?? null,
        toLux: reach?.to ?? null,
        wantedFromLux: ROOM_FROM_LUX,
        wantedToLux: ROOM_TO_LUX,
      }),
    );
  if (gate.releases && gate.silences && (on === null || off === null))
    out.push(warn('light-changes-nothing', voice, 'wrong', { starts: on !== null, stops: off !== null }));
  out.push(...interactionWarnings(design, gate, voice));
  out.push(...rangeWarnings(design, gate, voice));
  out.push(...resetWarnings(design, gate, voice, rail));
  return out;
}

/** With one trimmer for both, the other voice's state moves this voice's trip point. */
function interactionWarnings(design: Design, gate: Gate, voice: VoiceId): readonly Warning[] {
  const other = voice === 'A' ? 'B' : 'A';
  const alone = tripLux(design, voice, gate.states[BOTH_SILENT]!);
  const beside = tripLux(design, voice, gate.states[stateIndex({ A: false, B: false, [other]: true })]!);
  if (alone === null || beside === null) return [];
  const share = Math.abs(beside / alone - 1);
  return share > 0.05 ? [warn('thresholds-interact', voice, 'caution', { share })] : [];
}

/** Inputs above the comparator's range: the reference, the node in its extreme light, or both at once. */
function rangeWarnings(design: Design, gate: Gate, voice: VoiceId): readonly Warning[] {
  // The node's extremes: an empty (dark) cell, and a cell lit so brightly that it counts as a wire.
  const extremes = (state: GateState) => [nodeVolts(state, gate.darkSiemens), nodeVolts(state, 1)];
  const node = Math.max(...gate.states.flatMap(extremes));
  const pin = Math.max(
    ...gate.states.flatMap((state) => extremes(state).map((n) => n * state.plusShare + state.plusOffset)),
  );
  const reference = Math.max(...gate.states.map((state) => state.otherVolts));
  const limitVolts = gate.states[0]!.limitVolts;
  const nodeAbove = pin > limitVolts;
  const referenceAbove = reference >= limitVolts;
  if (nodeAbove && referenceAbove)
    return [
      warn('both-above-range', voice, 'wrong', {
        nodeVolts: node,
        limitVolts,
        output: COMPARATORS[design.comparator].bothInputsHigh,
      }),
    ];
  if (referenceAbove)
    return [warn('reference-above-range', voice, 'wrong', { referenceVolts: reference, limitVolts })];
  return nodeAbove ? [warn('node-above-range', voice, 'note', { nodeVolts: node, limitVolts })] : [];
}

function resetWarnings(design: Design, gate: Gate, voice: VoiceId, rail: Volts): readonly Warning[] {
  const out: Warning[] = [];
  const timer = TIMERS[design.timer];
  const comparator = COMPARATORS[design.comparator];
  const { resetVolts } = timer;
  const pull = pullOf(design, voice, rail);
  const sunk = rail / design.voices[voice].pullUpOhms + timer.resetLowMostAmperes;
  const leastOhms = (ohms: number, volts: Volts, pinAmperes: number) => {
    const spare = volts / ohms - pinAmperes;
    return spare > 0 ? rail / spare : Number.POSITIVE_INFINITY;
  };

  if (!gate.releases)
    out.push(
      warn('never-sounds', voice, 'wrong', {
        resetVolts: pull.high.volts,
        neededVolts: resetVolts.typical,
        mostOhms: Math.max(0, rail - resetVolts.typical) / timer.resetHighAmperes,
      }),
    );
  else {
    const endRail = railVolts({
      ...design.supply,
      volts: lastSourceVolts(design.supply, design.timer, design.comparator),
    });
    const { high } = resetCorner(design, voice, endRail);
    if (high <= resetVolts.max)
      out.push(
        warn('reset-high-worst', voice, 'caution', {
          resetVolts: high,
          neededVolts: resetVolts.max,
          railVolts: endRail,
          mostOhms: Math.max(0, endRail - resetVolts.max) / timer.resetHighMostAmperes,
        }),
      );
  }
  const { low } = resetCorner(design, voice, rail);
  if (!gate.silences)
    out.push(
      warn('never-silent', voice, 'wrong', {
        resetVolts: pull.low.volts,
        neededVolts: resetVolts.typical,
        leastOhms: leastOhms(comparator.saturationOhms, resetVolts.typical, timer.resetLowAmperes),
      }),
    );
  else if (pull.low.volts >= resetVolts.min)
    out.push(
      warn('reset-half', voice, 'wrong', {
        resetVolts: pull.low.volts,
        fromVolts: resetVolts.min,
        toVolts: resetVolts.typical,
      }),
    );
  else if (low > resetVolts.min)
    out.push(
      warn('reset-low-worst', voice, 'caution', {
        resetVolts: low,
        neededVolts: resetVolts.min,
        leastOhms: leastOhms(comparator.worstSaturationOhms, resetVolts.min, timer.resetLowMostAmperes),
      }),
    );
  if (sunk > comparator.sinkAmperes)
    out.push(
      warn('comparator-overloaded', voice, 'wrong', { amperes: sunk, ratedAmperes: comparator.sinkAmperes }),
    );
  return out;
}
