/**
 * The fault dictionary of one design: what each fault sounds and measures like, computed, and how far a healthy
 * board's own tolerances blur each reading.
 */
import { railVolts } from '../circuit/supply.ts';
import type { Design } from '../design/design.ts';
import { type Steps, wholeOf } from '../plan/slices.ts';
import { uniformFrom } from '../quantity/random.ts';
import type { Amperes, Volts } from '../quantity/units.ts';
import { drawnBoard, setForBench } from './drawn-board.ts';
import { type Fault, faultsOf, linkFault } from './faults.ts';
import type { MissingLink } from './missing-links.ts';
import { type Healthy, healthyOf, type Observed, observeSteps, type Reading, readingsOf } from './observe.ts';
import { USUAL_BENCH } from './slip.ts';
import type { BenchLight } from './slip-values.ts';

export interface Entry {
  readonly fault: Fault;
  readonly observed: Observed;
}

export interface Dictionary {
  /** The design with its thresholds set for the bench's light. */
  readonly design: Design;
  readonly bench: BenchLight;
  readonly healthy: Healthy;
  readonly readings: readonly Reading[];
  readonly entries: readonly Entry[];
  /** Blur of each reading by tolerances: volts per rail·x·(1 − x), x the reading over the rail; by id. */
  readonly blur: ReadonlyMap<string, number>;
  readonly supplyVolts: Volts;
  /** Above this a board draws what no healthy one does: cut the power. */
  readonly mostAmperes: Amperes;
}

/** Boards drawn to see how far healthy readings spread. */
const BOARDS = 12;
const SEED = 5;
/** Above this a small instrument draws too much (judgement), or above half more than the healthy one. */
const OVER_CURRENT: Amperes = 0.035;

/** Computes the dictionary of a design: some three hundred runs of the network. */
export function dictionaryOf(
  design: Design,
  bench: BenchLight = USUAL_BENCH,
  links: readonly MissingLink[] = [],
): Dictionary {
  return wholeOf(dictionarySteps(design, bench, links));
}

/** The same in steps. */
export function* dictionarySteps(
  design: Design,
  bench: BenchLight,
  links: readonly MissingLink[],
): Steps<Dictionary> {
  const set = setForBench(design, bench);
  const healthy = healthyOf(set, bench);
  const readings = readingsOf(set);
  yield;
  const entries: Entry[] = [];
  for (const fault of [...faultsOf(set), ...links.map(linkFault)])
    entries.push({ fault, observed: yield* observeSteps(set, fault, bench, healthy, readings) });
  const [first] = entries;
  const supplyVolts = railVolts(set.supply);
  const currents = readings.flatMap(({ point, id }) =>
    point === 'current' ? [first!.observed.meter.get(id) ?? 0] : [],
  );
  return {
    design: set,
    bench,
    healthy,
    readings,
    entries,
    blur: yield* blurOf(set, bench, healthy, readings, first!),
    supplyVolts,
    mostAmperes: Math.max(OVER_CURRENT, 1.5 * Math.max(...currents)),
  };
}

/** x·(1 − x) of a reading as a share of the rail: how much a divider's ratio moves it. */
export function leverOf(value: number, supplyVolts: Volts): number {
  const x = Math.min(1, Math.max(0, value / supplyVolts));
  return supplyVolts * x * (1 - x);
}

function* blurOf(
  design: Design,
  bench: BenchLight,
  healthy: Healthy,
  readings: readonly Reading[],
  entry: Entry,
): Steps<ReadonlyMap<string, number>> {
  const uniform = uniformFrom(SEED);
  const supplyVolts = railVolts(design.supply);
  const sums = new Map<string, number>();
  for (let board = 0; board < BOARDS; board++) {
    const drawn = setForBench(drawnBoard(design, uniform), bench);
    const { meter } = yield* observeSteps(drawn, entry.fault, bench, healthy, readings);
    for (const { id } of readings) {
      const [usual, own] = [entry.observed.meter.get(id) ?? null, meter.get(id) ?? null];
      if (usual !== null && own !== null) sums.set(id, (sums.get(id) ?? 0) + (own - usual) ** 2);
    }
  }
  return new Map(
    readings.map(({ id, unit }) => {
      const usual = entry.observed.meter.get(id) ?? 0;
      const deviation = Math.sqrt((sums.get(id) ?? 0) / BOARDS);
      const lever = unit === 'V' ? leverOf(usual, supplyVolts) : Math.max(1e-3, usual);
      return [id, deviation / Math.max(lever, 0.02 * (unit === 'V' ? supplyVolts : 1e-2))];
    }),
  );
}
