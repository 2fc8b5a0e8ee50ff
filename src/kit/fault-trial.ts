/**
 * The fault finder put to the test: boards with a fault drawn by prior and healthy parts within tolerance, a meter
 * within ± 1 %, what the ear says for nothing and then up to four readings.
 */

import { gaussianFrom, uniformFrom } from '../quantity/random.ts';
import type { Fraction } from '../quantity/units.ts';
import type { Dictionary } from './dictionary.ts';
import { drawnBoard, setForBench } from './drawn-board.ts';
import { earOf, type Findings, nextReading, rank } from './fault-finder.ts';
import type { Fault } from './faults.ts';
import { observe } from './observe.ts';

export interface Trial {
  readonly boards: number;
  /** Share of boards whose true fault is among the first three. */
  readonly topThree: Fraction;
  readonly first: Fraction;
  /** Candidates left at the end, mean; and readings taken, mean. */
  readonly left: number;
  readonly readings: number;
  /** How often each fault was drawn and missed. */
  readonly missed: ReadonlyMap<string, number>;
}

const MOST_READINGS = 4;
/** A meter's error, evenly within; and its last figure, volts and amperes. */
const METER: Fraction = 0.01;
const LAST = { V: 0.01, A: 0.0001, Hz: 1 } as const;

/** Runs a trial; reproducible from the seed. */
export function faultTrial(dictionary: Dictionary, boards: number, seed: number): Trial {
  const uniform = uniformFrom(seed);
  const gaussian = gaussianFrom(seed + 1);
  const faults = dictionary.entries.map(({ fault }) => fault).filter(({ kind }) => kind !== null);
  const missed = new Map<string, number>();
  let [topThree, first, left, readings] = [0, 0, 0, 0];
  for (let board = 0; board < boards; board++) {
    const truth = drawnFault(faults, uniform());
    const { found, taken, remaining } = oneBoard(dictionary, truth, uniform, gaussian);
    const place = found.indexOf(truth.id);
    if (place >= 0 && place < 3) topThree++;
    else missed.set(truth.id, (missed.get(truth.id) ?? 0) + 1);
    if (place === 0) first++;
    left += remaining;
    readings += taken;
  }
  const share = (count: number): number => count / boards;
  return {
    boards,
    topThree: share(topThree),
    first: share(first),
    left: share(left),
    readings: share(readings),
    missed,
  };
}

function drawnFault(faults: readonly Fault[], at: Fraction): Fault {
  const total = faults.reduce((sum, { prior }) => sum + prior, 0);
  let rest = at * total;
  for (const fault of faults) {
    rest -= fault.prior;
    if (rest < 0) return fault;
  }
  return faults.at(-1)!;
}

function oneBoard(
  dictionary: Dictionary,
  truth: Fault,
  uniform: () => number,
  gaussian: () => number,
): { readonly found: readonly string[]; readonly taken: number; readonly remaining: number } {
  const { design, bench, healthy } = dictionary;
  const board = setForBench(drawnBoard(design, uniform), bench);
  const observed = observe(board, truth, bench, healthy, dictionary.readings);
  let findings: Findings = { ear: earOf({ fault: truth, observed }), meter: {} };
  let ranking = rank(dictionary, findings);
  let taken = 0;
  while (taken < MOST_READINGS) {
    const next = nextReading(dictionary, ranking, findings);
    if (next === null) break;
    const { id, unit } = next.reading;
    const exact = observed.meter.get(id) ?? 0;
    const value = exact * (1 + METER * (2 * uniform() - 1)) + (LAST[unit] * gaussian()) / 2;
    findings = { ...findings, meter: { ...findings.meter, [id]: value } };
    ranking = rank(dictionary, findings);
    taken++;
  }
  return {
    found: ranking.candidates.slice(0, 3).map(({ fault }) => fault.id),
    taken,
    remaining: ranking.left,
  };
}
