/** Rows about the comparator, its reset pin and its threshold, and about the steady light cell in its divider. */
import { cellOhms, luxFor, steadyConductance } from '../../src/circuit/cell.ts';
import {
  cellSiemens,
  gatesOf,
  loadedVolts,
  nodeVolts,
  plusVolts,
  pullOf,
  referenceSource,
  rotationForVolts,
  tripLux,
} from '../../src/circuit/gate.ts';
import { drainOf } from '../../src/circuit/power.ts';
import { resetCorner } from '../../src/circuit/warnings-gate.ts';
import type { Cell, ThresholdTrimmer } from '../../src/design/design.ts';
import { COMPARATORS } from '../../src/parts/comparators.ts';
import { designWith } from '../circuit/building.ts';
import type { Evaluators, Inputs } from './rows.ts';

const cellOf = (inputs: Inputs): Cell => ({
  family: 'cds-8-20k',
  r10Ohms: inputs.number('r10Ohms'),
  gamma: inputs.number('gamma'),
});

/** The input voltage at which a straight line through two of its values meets a level. */
function solved(line: (x: number) => number, level: number): number {
  const at0 = line(0);
  return (level - at0) / (line(1) - at0);
}

/** A divider without feedback on the supply of the row. */
function dividerGate(inputs: Inputs, position: 'top' | 'bottom') {
  const voice = {
    cell: cellOf(inputs),
    divider: { cell: position, fixedOhms: inputs.number('fixedOhms') },
    hysteresisOhms: null,
  };
  const design = designWith({ A: voice });
  return { design, gate: gatesOf(design, inputs.number('supplyVolts')).A };
}

/** The + input of an inverting comparator for one state of its output. */
function referenceWith(inputs: Inputs, volts: number, ohms: number): number {
  const [top, bottom] = [inputs.number('topOhms'), inputs.number('bottomOhms')];
  const source = {
    volts: (inputs.number('supplyVolts') * bottom) / (top + bottom),
    ohms: (top * bottom) / (top + bottom),
  };
  return loadedVolts(source, [{ siemens: 1 / (inputs.number('feedbackOhms') + ohms), volts }]);
}

export const gates: Evaluators = {
  'reset node': (inputs) => {
    const design = designWith({ A: { pullUpOhms: inputs.number('pullUpOhms') } });
    return { volts: pullOf(design, 'A', inputs.number('supplyVolts')).high.volts };
  },

  'reset node at most': (inputs) => {
    const design = designWith({ A: { pullUpOhms: inputs.number('pullUpOhms') } });
    return { volts: resetCorner(design, 'A', inputs.number('supplyVolts')).high };
  },

  'comparator sinks at most': (inputs) => {
    const design = designWith({ A: { pullUpOhms: inputs.number('pullUpOhms') } });
    const { low } = resetCorner(design, 'A', inputs.number('supplyVolts'));
    return { volts: low, amperes: low / COMPARATORS[design.comparator].worstSaturationOhms };
  },

  // A CMOS timer's reset pin gives next to nothing, so that the pull-up alone is sunk.
  'pull-up sunk': (inputs) => {
    const design = designWith({ timer: 'cmos', voices: { pullUpOhms: inputs.number('pullUpOhms') } });
    const volts = inputs.number('supplyVolts');
    const { gates: sunk } = drainOf(design, volts, { A: false, B: false });
    return { amperes: sunk / 2, lowVolts: pullOf(design, 'A', volts).low.volts };
  },

  'signal side feedback': (inputs) => {
    const [input, feedback] = [inputs.number('inputOhms'), inputs.number('feedbackOhms')];
    const trip = (volts: number, ohms: number) =>
      solved((node) => plusVolts(node, input, feedback, { volts, ohms }), inputs.number('referenceVolts'));
    const upper = trip(inputs.number('lowVolts'), 0);
    const lower = trip(inputs.number('highVolts'), inputs.number('highOhms'));
    return { upper, lower, width: upper - lower };
  },

  'reference side feedback': (inputs) => {
    const upper = referenceWith(inputs, inputs.number('highVolts'), inputs.number('highOhms'));
    const lower = referenceWith(inputs, inputs.number('lowVolts'), 0);
    return { upper, lower, width: upper - lower };
  },

  'output high': (inputs) => {
    const [volts, ohms] = [inputs.number('highVolts'), inputs.number('highOhms')];
    const upper = referenceWith(inputs, volts, ohms);
    return { volts: volts + ((upper - volts) * ohms) / (ohms + inputs.number('feedbackOhms')) };
  },

  'common-mode ceiling': (inputs) => ({
    volts: gatesOf(designWith(), inputs.number('supplyVolts')).A.states[0]!.limitVolts,
  }),

  wiper: (inputs) => {
    const part: ThresholdTrimmer = {
      topOhms: 0,
      bottomOhms: 0,
      trimmer: { part: 'single-turn', ohms: inputs.number('ohms'), tolerance: 0.1, rotation: 0 },
    };
    const supply = inputs.number('supplyVolts');
    const rotation = rotationForVolts(part, supply, inputs.number('volts'));
    return { ...referenceSource({ ...part, trimmer: { ...part.trimmer, rotation } }, supply) };
  },

  cell: (inputs) => ({ ohms: cellOhms(cellOf(inputs), inputs.number('lux')) }),

  'light for resistance': (inputs) => {
    const lux = luxFor(cellOf(inputs), inputs.number('ohms'));
    if (lux === null) throw new Error('No light does that.');
    return { lux };
  },

  divider: (inputs) => {
    const { gate } = dividerGate(inputs, inputs.text('cell') as 'top' | 'bottom');
    const siemens = cellSiemens(gate, steadyConductance(inputs.number('gamma'), inputs.number('lux')));
    return { volts: nodeVolts(gate.states[0]!, siemens) };
  },

  'light for node': (inputs) => {
    const { design, gate } = dividerGate(inputs, 'top');
    const lux = tripLux(design, 'A', { ...gate.states[0]!, tripVolts: inputs.number('volts') });
    if (lux === null) throw new Error('No light does that.');
    return { lux };
  },

  'cell in less light': (inputs) => {
    const cell = { family: 'cds-8-20k', r10Ohms: 12_000, gamma: inputs.number('gamma') } as const;
    return { ratio: cellOhms(cell, 10 * inputs.number('left')) / cellOhms(cell, 10) };
  },
};
