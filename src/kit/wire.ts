/**
 * Wire for one kit, by the metre: bare wire for the links of the board plan, insulated wire and sleeving for the light
 * cells, which hang on leads. How much goes to waste is a rule, not a draw of lots: nobody loses a wire.
 */
import type { Design } from '../design/design.ts';
import type { Fraction, Metres } from '../quantity/units.ts';
import type { OrderSpec } from '../words/order.ts';
import type { BoardPlan } from './board/plan.ts';
import { connectionsOf } from './connections.ts';
import type { Use } from './order.ts';

/** Common practice: both ends of a link bent, through the board and held; leads long enough to choose a place late. */
export const WIRE_RULE: {
  readonly linkEnds: Metres;
  readonly lead: Metres;
  readonly sleeve: Metres;
  readonly waste: Fraction;
} = { linkEnds: 0.012, lead: 0.3, sleeve: 0.025, waste: 0.2 };

export interface Length {
  readonly key: string;
  readonly spec: OrderSpec;
  readonly uses: readonly Use[];
  readonly perKit: Metres;
}

/** Without a plan there are no links to measure. */
export function wireOf(design: Design, plan: BoardPlan | null): readonly Length[] {
  const cells = connectionsOf(design).parts.filter(({ body }) => body.kind === 'cell');
  const leads = cells.reduce((sum, { leads }) => sum + leads.length, 0);
  const links = (plan?.links ?? []).reduce(
    (sum, { millimetres }) => sum + millimetres / 1000 + WIRE_RULE.linkEnds,
    0,
  );
  const forCells = cells.map(({ voice }) => ({ role: 'sensor leads', voice }));
  const all: readonly Length[] = [
    {
      key: 'wire links',
      spec: { kind: 'wire', wire: 'links' },
      uses: [{ role: 'links', voice: null }],
      perKit: links,
    },
    {
      key: 'wire leads',
      spec: { kind: 'wire', wire: 'leads' },
      uses: forCells,
      perKit: leads * WIRE_RULE.lead,
    },
    {
      key: 'wire sleeve',
      spec: { kind: 'wire', wire: 'sleeve' },
      uses: forCells,
      perKit: leads * WIRE_RULE.sleeve,
    },
  ];
  return all.filter(({ perKit }) => perKit > 0);
}
