/** Rows about what moves a pitch after tuning, and how finely a trimmer sets it. */
import { agedShare, DIELECTRICS, type DielectricId } from '../../src/parts/capacitors.ts';
import { TIMERS, type TimerId } from '../../src/parts/timers.ts';
import { endOhms, type TrimmerId } from '../../src/parts/trimmers.ts';
import { curvePoint, rotationFor, type TimingLaw } from '../../src/plan/timing.ts';
import type { Evaluators } from './rows.ts';

export const planning: Evaluators = {
  'timer over temperature': (inputs) => {
    const share = TIMERS[inputs.text('timer') as TimerId].driftPerDegree * inputs.number('degrees');
    return { share, cents: 1200 * Math.log2(1 + share) };
  },

  ageing: (inputs) => {
    const { ageing } = DIELECTRICS[inputs.text('dielectric') as DielectricId];
    return { change: agedShare(ageing, inputs.number('fromHours'), inputs.number('toHours')) - 1 };
  },

  'trimmer miss': (inputs) => {
    const raOhms = inputs.number('raOhms');
    // The handbook's formula: both levels a third of the supply apart, an ideal discharge.
    const law: TimingLaw = { ownOhms: Math.LN2 * raOhms, factor: 2 * Math.LN2, highFactor: Math.LN2 };
    const part = inputs.text('part') as TrimmerId;
    const ohms = inputs.number('trimmerOhms');
    const parts = {
      ra: { ohms: raOhms, tolerance: 0 },
      rbFixed: { ohms: 10_000, tolerance: 0 },
      trimmer: { part, ohms, tolerance: 0.1 },
      capacitor: { farads: 10e-9, dielectric: 'polyester' as const, tolerance: 0.1 },
    };
    const rotation = rotationFor(parts, inputs.number('rbOhms'));
    const { missCents, centsPerDegree } = curvePoint(law, parts, rotation);
    return { missCents, centsPerDegree, endOhms: endOhms(part, ohms) };
  },
};
