/**
 * Build cards as data: each step with its holes and joints, what to check before the next one, the cautions that
 * belong there, and how long it takes; and what a workshop of such boards takes together.
 */
import { drainOf, PLAY_STATES } from '../circuit/power.ts';
import { railVolts } from '../circuit/supply.ts';
import type { Design } from '../design/design.ts';
import type { MinutesTable, StepId, Workshop } from '../design/workshop.ts';
import type { Amperes, Fraction, Ohms, Volts } from '../quantity/units.ts';
import type { CautionPlace } from '../words/cautions.ts';
import type { NetId } from '../words/kit.ts';
import { bareBoard } from './bare-board.ts';
import type { Hole } from './board/extract.ts';
import { type BoardPlan, testPointHoles } from './board/plan.ts';
import { type BuildStep, buildSteps } from './build-steps.ts';

/** Stop, and go on only when this holds. */
export type Check =
  /** No path across a cut: the nearest holes left and right of it. */
  | { readonly kind: 'apart'; readonly from: Hole; readonly to: Hole }
  /** A link joins. */
  | { readonly kind: 'joined'; readonly from: Hole; readonly to: Hole }
  | {
      readonly kind: 'ohms';
      readonly from: Hole;
      readonly to: Hole;
      readonly least: Ohms;
      readonly most: Ohms;
    }
  /** Against 0 V. */
  | {
      readonly kind: 'volts';
      readonly at: Hole;
      readonly net: NetId;
      readonly least: Volts;
      readonly most: Volts;
    }
  | { readonly kind: 'current'; readonly most: Amperes };

export interface Card extends BuildStep {
  readonly minutes: number;
  readonly checks: readonly Check[];
  /** Where cautions are looked up for this step. */
  readonly cautions: readonly CautionPlace[];
  /** Supply limited, or a meter in its lead: set to this. */
  readonly currentLimit: Amperes | null;
}

/** A good board draws no more than what is computed times this; at least some milliamperes are always allowed. */
const CURRENT_ALLOWANCE = 1.5;
const LEAST_LIMIT: Amperes = 0.01;

/** What a good board draws at most without its chips, and with them. */
function currentLimits(design: Design, plan: BoardPlan): { readonly bare: Amperes; readonly full: Amperes } {
  const rail = railVolts(design.supply);
  const limit = (amperes: Amperes): Amperes => Math.max(LEAST_LIMIT, amperes * CURRENT_ALLOWANCE);
  const drains = Object.values(PLAY_STATES).map((sounding) => drainOf(design, rail, sounding).total);
  return {
    bare: limit(rail / bareBoard(design, plan.connections).railOhms.least),
    full: limit(Math.max(...drains)),
  };
}

export function cardsOf(design: Design, plan: BoardPlan): readonly Card[] {
  const { minutes } = design.batch.workshop;
  const limits = currentLimits(design, plan);
  return buildSteps(plan).map((step) => ({
    ...step,
    minutes: minutesOf(step, minutes),
    checks: checksOf(step.id, design, plan, limits),
    cautions: cautionsOf(step.id, plan),
    currentLimit: step.id === 'first power' ? limits.bare : step.id === 'chips' ? limits.full : null,
  }));
}

function minutesOf({ id, refs, joints }: BuildStep, table: MinutesTable): number {
  switch (id) {
    case 'sort':
      return refs.length * table.perPart;
    case 'cuts':
      return refs.length * table.perCut;
    case 'links':
      return refs.length * table.perLink;
    case 'sockets':
      return joints.length * table.perSocketPin;
    case 'flat':
    case 'small':
    case 'tall':
    case 'pins':
      return joints.length * table.perJoint;
    case 'trimmers':
    case 'leads':
      return joints.length * table.perLeadJoint;
    case 'chips':
      return refs.length * table.perChip;
    case 'first power':
      return table.firstPower;
    case 'tune':
      return table.tune;
  }
}

function checksOf(
  id: StepId,
  design: Design,
  plan: BoardPlan,
  limits: { readonly bare: Amperes; readonly full: Amperes },
): Check[] {
  switch (id) {
    case 'cuts':
      return plan.cuts.map(({ strip, hole }) => ({
        kind: 'apart',
        from: { strip, hole: hole - 1 },
        to: { strip, hole: hole + 1 },
      }));
    case 'links':
      return plan.links.map(({ from, to }) => ({ kind: 'joined', from, to }));
    case 'leads':
      return [railCheck(design, plan)];
    case 'first power':
      return [...bareChecks(design, plan), { kind: 'current', most: limits.bare }];
    case 'chips':
      return [{ kind: 'current', most: limits.full }];
    case 'sort':
    case 'flat':
    case 'sockets':
    case 'small':
    case 'trimmers':
    case 'tall':
    case 'pins':
    case 'tune':
      return [];
  }
}

/** Rail to 0 V before power: neither a short nor open. Through the leads, so with the chips out. */
function railCheck(design: Design, plan: BoardPlan): Check {
  const { railOhms } = bareBoard(design, plan.connections);
  const at = (net: NetId): Hole => testPointHoles(plan).find((point) => point.net === net)!.at;
  return { kind: 'ohms', from: at('rail'), to: at('ground'), ...railOhms };
}

/** What the meter reads at the test points and at the supply pins of both sockets, chips out. */
function bareChecks(design: Design, plan: BoardPlan): Check[] {
  const { volts } = bareBoard(design, plan.connections);
  const rail = railVolts(design.supply);
  const sockets = plan.parts.flatMap(({ part, leads }) =>
    part.body.kind === 'chip'
      ? part.leads.flatMap(({ net }, i): Check[] =>
          net === 'rail'
            ? [{ kind: 'volts', at: leads[i]!.at, net, least: rail * 0.95, most: rail * 1.02 }]
            : net === 'ground'
              ? [{ kind: 'volts', at: leads[i]!.at, net, least: 0, most: 0.01 }]
              : [],
        )
      : [],
  );
  const points = testPointHoles(plan)
    .filter(({ net }) => /^(node|reference|gate)/.test(net))
    .flatMap(({ net, at }): Check[] => {
      const span = volts.get(net);
      return span ? [{ kind: 'volts', at, net, ...span }] : [];
    });
  return [...sockets, ...points];
}

function cautionsOf(id: StepId, plan: BoardPlan): CautionPlace[] {
  const hasPolarised = plan.parts.some(({ part }) => part.body.kind === 'capacitor' && part.body.polarised);
  switch (id) {
    case 'cuts':
      return ['cutting'];
    case 'links':
    case 'flat':
    case 'sockets':
    case 'small':
    case 'trimmers':
    case 'pins':
      return ['building'];
    case 'tall':
      return hasPolarised ? ['building', 'output'] : ['building'];
    case 'leads':
      return ['building', 'cell', 'supply'];
    case 'first power':
    case 'chips':
      return ['supply'];
    case 'tune':
      return ['sound', 'headphones'];
    case 'sort':
      return ['cell'];
  }
}

export interface WorkshopLoad {
  readonly joints: number;
  /** One person's minutes in the room, and the organiser's before. */
  readonly minutes: number;
  readonly preparedMinutes: number;
  /** (1 − p)^N over all joints. */
  readonly firstTimeRight: Fraction;
  /** N·(1 − first time right)·repair, all boards, and for each helper; null without helpers. */
  readonly repairMinutes: number;
  readonly minutesPerHelper: number | null;
}

export function workshopLoad(
  cards: readonly Card[],
  kits: number,
  workshop: Omit<Workshop, 'minutes'>,
): WorkshopLoad {
  const joints = cards.reduce((sum, card) => sum + card.joints.length, 0);
  const isPrepared = ({ id }: Card): boolean => workshop.prepared.includes(id);
  const sum = (some: readonly Card[]): number => some.reduce((total, { minutes }) => total + minutes, 0);
  const firstTimeRight = (1 - workshop.badJoint) ** joints;
  const repairMinutes = kits * (1 - firstTimeRight) * workshop.repairMinutes;
  return {
    joints,
    minutes: sum(cards.filter((card) => !isPrepared(card))),
    preparedMinutes: kits * sum(cards.filter(isPrepared)),
    firstTimeRight,
    repairMinutes,
    minutesPerHelper: workshop.helpers > 0 ? repairMinutes / workshop.helpers : null,
  };
}
