/**
 * What the document keeps of the workshop that builds a batch: how long each step of a build takes there, who helps,
 * and what was done beforehand.
 */
import type * as v from 'valibot';
import type { Fraction } from '../quantity/units.ts';
import { entries, listOf, oneOf, within } from './schema.ts';

/** Steps of a build, in their order. */
export const STEP_ORDER = [
  'sort',
  'cuts',
  'links',
  'flat',
  'sockets',
  'small',
  'trimmers',
  'tall',
  'pins',
  'leads',
  'first power',
  'chips',
  'tune',
] as const;
export type StepId = (typeof STEP_ORDER)[number];

/**
 * Minutes of a beginner. From one workshop's figures for a board of this size, rounded: 20 for 40 parts to sort, 17
 * for 17 cuts, 20 for 12 links, 15 for 22 socket pins, 62 for 58 joints of small parts, 30 for 22 joints of trimmers
 * and leads. Estimates, from memory: put your own log here.
 */
export interface MinutesTable {
  readonly perPart: number;
  readonly perCut: number;
  readonly perLink: number;
  readonly perSocketPin: number;
  readonly perJoint: number;
  readonly perLeadJoint: number;
  readonly perChip: number;
  readonly firstPower: number;
  readonly tune: number;
}

const USUAL_MINUTES: MinutesTable = {
  perPart: 0.5,
  perCut: 1,
  perLink: 1.67,
  perSocketPin: 0.68,
  perJoint: 1.07,
  perLeadJoint: 1.36,
  perChip: 2,
  firstPower: 15,
  tune: 12,
};

export interface Workshop {
  readonly helpers: number;
  /** Chance that a joint is bad. */
  readonly badJoint: Fraction;
  /** Minutes a helper needs to mend a board. */
  readonly repairMinutes: number;
  /** Steps done beforehand by the organiser. */
  readonly prepared: readonly StepId[];
  readonly minutes: MinutesTable;
}

export const USUAL_WORKSHOP: Workshop = {
  helpers: 3,
  badJoint: 0.005,
  repairMinutes: 15,
  prepared: [],
  minutes: USUAL_MINUTES,
};

export const WORKSHOP_LIMITS = {
  helpers: { min: 0, max: 100 },
  badJoint: { min: 0, max: 0.5 },
  minutes: { min: 0, max: 600 },
} as const;

const minutes = within(WORKSHOP_LIMITS.minutes);

/** For the entry `workshop` of a batch. */
export const workshopSchema = entries({
  helpers: within(WORKSHOP_LIMITS.helpers, 'whole'),
  badJoint: within(WORKSHOP_LIMITS.badJoint),
  repairMinutes: minutes,
  prepared: listOf(oneOf(STEP_ORDER), STEP_ORDER.length),
  minutes: entries({
    perPart: minutes,
    perCut: minutes,
    perLink: minutes,
    perSocketPin: minutes,
    perJoint: minutes,
    perLeadJoint: minutes,
    perChip: minutes,
    firstPower: minutes,
    tune: minutes,
  }),
}) satisfies v.GenericSchema<unknown, Workshop>;
