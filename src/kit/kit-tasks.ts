/**
 * The long work of the bench as plain data, so that a worker or the page itself can do it: a board plan, a ranking of
 * faults with the next reading, and what one trouble on the board does. Pure, but for a dictionary kept between calls.
 */

import { jackNet, netlistOf } from '../circuit/network/design-netlist.ts';
import { joined, type Netlist, opened, type PartPin, parted } from '../circuit/network/netlist.ts';
import { runNetwork } from '../circuit/network/network.ts';
import type { Design } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';
import { type Steps, wholeOf } from '../plan/slices.ts';
import { type Hertz, type Pair, pairOf, type Seconds, VOICES } from '../quantity/units.ts';
import type { FaultKind } from '../words/faults.ts';
import { type BoardWishes, boardSteps, type Planned } from './board/plan-board.ts';
import { type Dictionary, dictionarySteps } from './dictionary.ts';
import { setForBench } from './drawn-board.ts';
import { type Findings, type NextReading, nextReadingSteps, rank } from './fault-finder.ts';
import type { Fault } from './faults.ts';
import type { MissingLink } from './missing-links.ts';
import { type Ear, type FinderLight, healthyOf, observeSteps, type Reading, readingsOf } from './observe.ts';
import type { Connections } from './parts.ts';
import { type BenchLight, luxIn } from './slip-values.ts';
import { type Loop, loopOf } from './trouble-loop.ts';

/** What is wrong at one place of the board. */
export type Trouble =
  /** Two nets joined: a cut left out, a bridge of solder. */
  | { readonly kind: 'joined'; readonly one: string; readonly other: string }
  /** A joint left open: the part as the circuit names it, and its pin. */
  | { readonly kind: 'opened'; readonly part: string; readonly pin: string }
  /** A link left out: these pins are cut off from the rest of their net. */
  | { readonly kind: 'parted'; readonly pins: readonly PartPin[] };

export type KitTask =
  | {
      readonly kind: 'board';
      readonly id: number;
      readonly connections: Connections;
      readonly wishes: BoardWishes;
    }
  | {
      readonly kind: 'faults';
      readonly id: number;
      readonly design: Design;
      readonly bench: BenchLight;
      /** Of the board plan; empty without one. */
      readonly links: readonly MissingLink[];
      readonly findings: Findings;
    }
  | {
      readonly kind: 'trouble';
      readonly id: number;
      readonly design: Design;
      readonly bench: BenchLight;
      readonly trouble: Trouble;
    };

export interface NamedFault {
  readonly id: string;
  /** Null = nothing is wrong. */
  readonly kind: FaultKind | null;
  readonly voice: 'A' | 'B' | null;
  /** Of a missing link: which. */
  readonly link: string | null;
  /** Share of the belief, 0…1. */
  readonly share: number;
}

export interface Ranked {
  /** Likeliest first. */
  readonly faults: readonly NamedFault[];
  readonly left: number;
  readonly confidence: number;
  readonly contradictions: readonly string[];
  readonly cutPower: boolean;
  readonly next: NextReading | null;
  readonly readings: readonly Reading[];
}

/** One reading on the healthy board and on this one; null = not computed. */
export interface Compared {
  readonly reading: Reading;
  readonly healthy: number | null;
  readonly troubled: number | null;
}

export interface Troubled {
  readonly ear: Ear;
  readonly compared: readonly Compared[];
  readonly notComputed: readonly FinderLight[];
  /** Of each voice with both sensors lit; null = silent or not computed. */
  readonly hertz: Pair<Hertz | null>;
  /** The jack's voltage with both sensors lit, to be played over and over; null = nothing sounds, or not computed. */
  readonly loop: Loop | null;
}

export type KitAnswer =
  | { readonly kind: 'board'; readonly id: number; readonly planned: Planned }
  | { readonly kind: 'faults'; readonly id: number; readonly ranked: Ranked }
  | { readonly kind: 'trouble'; readonly id: number; readonly troubled: Troubled };

/** A task that broke off, by the fault of the work. */
export interface KitFailure {
  readonly kind: 'failed';
  readonly of: KitTask['kind'];
  readonly id: number;
}

/** Does the work; one for each worker. */
export class KitWork {
  #known: { readonly of: readonly unknown[]; readonly dictionary: Dictionary } | null = null;

  /** Never throws. */
  reply(task: KitTask): KitAnswer | KitFailure {
    try {
      return wholeOf(this.steps(task));
    } catch {
      return failureOf(task);
    }
  }

  /** The work in steps, for where it must not go on in one piece. */
  *steps(task: KitTask): Steps<KitAnswer> {
    const { id } = task;
    switch (task.kind) {
      case 'board':
        return { kind: 'board', id, planned: yield* boardSteps(task.connections, task.wishes) };
      case 'faults':
        return { kind: 'faults', id, ranked: yield* this.#ranked(task) };
      case 'trouble': {
        const { design, bench, trouble } = task;
        return { kind: 'trouble', id, troubled: yield* troubleSteps(design, bench, trouble) };
      }
    }
  }

  *#ranked(task: KitTask & { readonly kind: 'faults' }): Steps<Ranked> {
    const { findings } = task;
    const dictionary = yield* this.#dictionary(task);
    const ranking = rank(dictionary, findings);
    const { left, confidence, contradictions, cutPower } = ranking;
    return {
      faults: ranking.candidates.map(({ fault: { id, kind, voice, link }, share }) => ({
        id,
        kind,
        voice,
        link,
        share,
      })),
      left,
      confidence,
      contradictions,
      cutPower,
      next: yield* nextReadingSteps(dictionary, ranking, findings),
      readings: dictionary.readings,
    };
  }

  *#dictionary({ design, bench, links }: KitTask & { readonly kind: 'faults' }): Steps<Dictionary> {
    const of = [design, bench, links];
    if (this.#known && equalValues(this.#known.of, of)) return this.#known.dictionary;
    const dictionary = yield* dictionarySteps(design, bench, links);
    this.#known = { of, dictionary };
    return dictionary;
  }
}

export const failureOf = ({ kind, id }: KitTask): KitFailure => ({ kind: 'failed', of: kind, id });

/** What is played of a troubled board. */
const LOOP_SECONDS: Seconds = 0.6;
const LOOP_RATE: Hertz = 48_000;

const same = <T>(value: T): T => value;
const HEALTHY: Fault = {
  id: 'healthy',
  kind: null,
  voice: null,
  link: null,
  prior: 1,
  onDesign: same,
  onBoard: same,
  hum: false,
};

/** What a trouble does to a board whose thresholds are set for the bench's light. */
export function troubledBy(plain: Design, bench: BenchLight, trouble: Trouble): Troubled {
  return wholeOf(troubleSteps(plain, bench, trouble));
}

function* troubleSteps(plain: Design, bench: BenchLight, trouble: Trouble): Steps<Troubled> {
  const design = setForBench(plain, bench);
  const healthy = healthyOf(design, bench);
  const readings = readingsOf(design);
  const fault: Fault = { ...HEALTHY, id: 'trouble', onBoard: (netlist) => troubled(netlist, trouble) };
  yield;
  const good = yield* observeSteps(design, HEALTHY, bench, healthy, readings);
  const bad = yield* observeSteps(design, fault, bench, healthy, readings);
  const run = runNetwork(troubled(netlistOf(design, luxIn('lit', bench)), trouble), {
    settleSeconds: 3 * healthy.seconds,
    measureSeconds: LOOP_SECONDS,
  });
  yield;
  const hertz = pairOf((voice) =>
    run.kind === 'computed' && bad.ear.heard.lit[voice] === 'sounds' ? run.halves[voice].frequency : null,
  );
  const pitches = VOICES.flatMap((voice) => hertz[voice] ?? []);
  const samples =
    run.kind === 'computed' && pitches.length > 0 ? run.samplesOf(jackNet(design), LOOP_RATE) : null;
  yield;
  return {
    ear: bad.ear,
    compared: readings.map((reading) => ({
      reading,
      healthy: good.meter.get(reading.id) ?? null,
      troubled: bad.meter.get(reading.id) ?? null,
    })),
    notComputed: bad.notComputed,
    hertz,
    loop: samples === null ? null : loopOf(samples, LOOP_RATE, pitches),
  };
}

function troubled(netlist: Netlist, trouble: Trouble): Netlist {
  switch (trouble.kind) {
    case 'joined':
      return joined(netlist, trouble.one, trouble.other);
    case 'opened':
      return opened(netlist, trouble.part, trouble.pin);
    case 'parted':
      return parted(netlist, trouble.pins);
  }
}
