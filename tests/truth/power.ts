/** Rows about supplies and batteries, trimmers as they are set, and values as they are printed on parts. */
import { drainOf, hoursOn } from '../../src/circuit/power.ts';
import { railVolts } from '../../src/circuit/supply.ts';
import { dipVolts } from '../../src/circuit/warnings-pitch.ts';
import { SUPPLIES, type SupplyId } from '../../src/parts/supplies.ts';
import { TRIMMERS, type TrimmerId } from '../../src/parts/trimmers.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { designWith } from '../circuit/building.ts';
import type { Evaluators } from './rows.ts';

export const power: Evaluators = {
  'timers in reset': (inputs) => ({
    amperes: drainOf(designWith(), inputs.number('supplyVolts'), { A: false, B: false }).timers,
  }),

  'dip at an edge': (inputs) => {
    const decoupled = inputs.text('decoupled') === 'yes';
    const design = designWith({ supply: { decoupled, sourceOhms: inputs.number('sourceOhms') } });
    return { volts: dipVolts(design, 9) };
  },

  'sag of a source': (inputs) => {
    const { supply } = designWith({ supply: { diode: false, sourceOhms: inputs.number('sourceOhms') } });
    return { volts: railVolts(supply, 0) - railVolts(supply, inputs.number('amperes')) };
  },

  'hours of a supply': (inputs) => {
    const hours = hoursOn(inputs.text('supply') as SupplyId, inputs.number('amperes'));
    if (hours === null) throw new Error('That supply never ends.');
    return { hours };
  },

  'resistance of a supply': (inputs) => ({ ohms: SUPPLIES[inputs.text('supply') as SupplyId].sourceOhms }),

  'trimmer as divider': (inputs) => ({
    volts: TRIMMERS[inputs.text('part') as TrimmerId].settable.divider * inputs.number('supplyVolts'),
  }),

  'trimmer as resistor': (inputs) => ({
    ohms: TRIMMERS[inputs.text('part') as TrimmerId].settable.rheostat * inputs.number('ohms'),
  }),

  'one degree': (inputs) => ({ share: 1 / TRIMMERS[inputs.text('part') as TrimmerId].degrees }),

  'printed capacitance': (inputs) => {
    const reading = parseQuantity(inputs.text('printed'), 'capacitance');
    if (!reading.ok) throw new Error(`Not read: ${reading.problem.kind}`);
    return { farads: reading.value };
  },
};
