/**
 * One board of a batch: every part drawn within its tolerance, the threshold then set the way a builder sets it. For
 * the spread of healthy readings, and for trials of the fault finder.
 */
import { steadyConductance } from '../circuit/cell.ts';
import { cellSiemens, gatesOf, nodeVolts, rotationForVolts } from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, trimmersOf } from '../design/design.ts';
import { CELLS } from '../parts/cells.ts';
import { type Fraction, pairOf, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import type { BenchLight } from './slip-values.ts';

/** Metal film. */
const RESISTOR: Fraction = 0.01;

/** A board whose parts are drawn, each evenly over its tolerance; cells evenly by ratio over the middle of their band. */
export function drawnBoard(design: Design, uniform: () => number): Design {
  const within = (value: number, tolerance: Fraction): number =>
    value * (1 + tolerance * (2 * uniform() - 1));
  const resistor = (ohms: number): number => within(ohms, RESISTOR);
  const voices = pairOf((id) => {
    const v = design.voices[id];
    const { r10Ohms } = CELLS[v.cell.family];
    // Cells of one bag lie closer together than the grade allows: half its width by ratio (common practice).
    const width = Math.sqrt(r10Ohms.max / r10Ohms.min);
    return {
      ...v,
      raOhms: resistor(v.raOhms),
      rbFixedOhms: resistor(v.rbFixedOhms),
      trimmer: { ...v.trimmer, ohms: within(v.trimmer.ohms, v.trimmer.tolerance) },
      capacitor: { ...v.capacitor, farads: within(v.capacitor.farads, v.capacitor.tolerance) },
      cell: { ...v.cell, r10Ohms: v.cell.r10Ohms * width ** (uniform() - 0.5) },
      divider: { ...v.divider, fixedOhms: resistor(v.divider.fixedOhms) },
      hysteresisOhms: v.hysteresisOhms === null ? null : resistor(v.hysteresisOhms),
      inputOhms: resistor(v.inputOhms),
      pullUpOhms: resistor(v.pullUpOhms),
    };
  });
  const trimmers = pairOf((id) => {
    const part = design.threshold.trimmers[id];
    const ohms = within(part.trimmer.ohms, part.trimmer.tolerance);
    return {
      topOhms: resistor(part.topOhms),
      bottomOhms: resistor(part.bottomOhms),
      trimmer: { ...part.trimmer, ohms },
    };
  });
  const { mixOhms, shuntOhms } = design.output;
  return {
    ...design,
    voices,
    threshold: { ...design.threshold, trimmers },
    output: {
      ...design.output,
      mixOhms: mixOhms === null ? null : pairOf((id) => resistor(mixOhms[id])),
      shuntOhms: shuntOhms === null ? null : resistor(shuntOhms),
    },
  };
}

/** The design with each threshold half way, by ratio, between its voices' nodes lit and shaded. */
export function setForBench(design: Design, bench: BenchLight): Design {
  const rail = railVolts(design.supply);
  const gates = gatesOf(design, rail);
  const nodeAt = (voice: VoiceId, lux: number): Volts => {
    const gate = gates[voice];
    return nodeVolts(
      gate.states[0]!,
      cellSiemens(gate, steadyConductance(design.voices[voice].cell.gamma, lux)),
    );
  };
  const middleOf = (voice: VoiceId): Volts =>
    Math.sqrt(nodeAt(voice, bench.lit) * nodeAt(voice, bench.shaded));
  const trimmers = { ...design.threshold.trimmers };
  for (const id of trimmersOf(design)) {
    const voices = design.threshold.arrangement === 'shared' ? VOICES : [id];
    const volts = voices.reduce((product, voice) => product * middleOf(voice), 1) ** (1 / voices.length);
    const part = design.threshold.trimmers[id];
    const rotation = Math.min(1, Math.max(0, rotationForVolts(part, rail, volts)));
    trimmers[id] = { ...part, trimmer: { ...part.trimmer, rotation } };
  }
  return { ...design, threshold: { ...design.threshold, trimmers } };
}
