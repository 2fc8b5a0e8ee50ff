/** Rows about the light cell while the light moves. */
import {
  type CellSpeed,
  cellSpeed,
  fallFactor,
  riseFactor,
  steadyConductance,
  stepConductance,
} from '../../src/circuit/cell.ts';
import type { Evaluators, Inputs } from './rows.ts';

/** τ and the resistances' own figures do not matter for the moving cell: its speed at a slope. */
const speedOf = (gamma: number) => cellSpeed({ family: 'cds-8-20k', r10Ohms: 12_000, gamma });

/** Time until a moving cell passes a conductance, stepped finely and placed by a straight line. */
function passingSeconds(speed: CellSpeed, from: number, lux: number, passing: number): number {
  const step = 1e-5;
  let y = from;
  for (let i = 0; i < 1e6; i++) {
    const next = stepConductance(speed, y, step, lux, lux, lux);
    if (y < passing !== next < passing) return step * (i + (passing - y) / (next - y));
    y = next;
  }
  throw new Error('The cell never passes that conductance.');
}

/** With a slope of 1 the product's cell is the plain first-order cell of the handbooks. */
const firstOrder = (tau: number): CellSpeed => ({ gamma: 1, riseTau: tau, fallTau: tau });

/** How much of a small ripple of the light is left in the conductance; 1 for a very slow one. */
function rippleGain(speed: CellSpeed, hertz: number, lux: number): number {
  const { gamma } = speed;
  const depth = 0.001;
  const perCycle = 200;
  const step = 1 / (hertz * perCycle);
  const at = (i: number) => lux * (1 + depth * Math.sin((2 * Math.PI * i) / perCycle));
  let y = steadyConductance(gamma, lux);
  const still = y;
  let least = y;
  let most = y;
  for (let i = 0; i < 60 * perCycle; i++) {
    y = stepConductance(speed, y, step, at(i), at(i + 0.5), at(i + 1));
    if (i < 50 * perCycle) continue;
    least = Math.min(least, y);
    most = Math.max(most, y);
  }
  // A slow change of the light by a small share changes the conductance by γ times that share.
  return (most - least) / (2 * still * gamma * depth);
}

export const movingCell: Evaluators = {
  'cell factors': (inputs) => ({
    rise: riseFactor(inputs.number('gamma')),
    fall: fallFactor(inputs.number('gamma')),
  }),

  'cell stepped': (inputs) => {
    const gamma = inputs.number('gamma');
    const { riseTau, fallTau } = speedOf(gamma);
    return {
      rise: passingSeconds(speedOf(gamma), 0, 10, 1 - Math.exp(-1)) / riseTau,
      fall: passingSeconds(speedOf(gamma), 1, 0, Math.exp(-1)) / fallTau,
    };
  },

  'cell tau': (inputs) => {
    const { riseTau, fallTau } = speedOf(inputs.number('gamma'));
    return { rise: riseTau, fall: fallTau };
  },

  'cell predicted fall': (inputs) => {
    const gamma = inputs.number('gamma');
    return { fallSeconds: (inputs.number('riseSeconds') / riseFactor(gamma)) * fallFactor(gamma) };
  },

  'ripple gain': (inputs) => ({
    gain: rippleGain(speedOf(inputs.number('gamma')), inputs.number('hertz'), inputs.number('lux')),
  }),

  'first-order ripple gain': (inputs) => ({
    gain: rippleGain(firstOrder(inputs.number('tau')), inputs.number('hertz'), 10),
  }),

  'passing time': (inputs) => {
    const gamma = inputs.number('gamma');
    const y = (name: string) => steadyConductance(gamma, inputs.number(name));
    return { seconds: passingSeconds(speedOf(gamma), y('fromLux'), inputs.number('toLux'), y('passingLux')) };
  },

  // Conductances relative to one at which light and conductance are both 1: that is 10 lx at a slope of 1.
  'first-order passing': (inputs) => ({
    seconds: passingSeconds(
      firstOrder(inputs.number('tau')),
      inputs.number('from'),
      10 * inputs.number('to'),
      inputs.number('passing'),
    ),
  }),

  'first-order slot': (inputs) => {
    const ratio = inputs.number('ratio');
    const on = passingSeconds(firstOrder(inputs.number('riseTau')), 0, 10 * ratio, 1);
    const off = passingSeconds(firstOrder(inputs.number('fallTau')), ratio, 0, 1);
    return { on, off, longerBy: off - on, mostHertz: 1 / (on + off) };
  },

  'first-order step': (inputs: Inputs) => {
    const speed = firstOrder(inputs.number('tau'));
    const steps = 1000;
    let y = 0;
    for (let i = 0; i < steps; i++)
      y = stepConductance(speed, y, inputs.number('seconds') / steps, 10, 10, 10);
    return { share: y };
  },
};
