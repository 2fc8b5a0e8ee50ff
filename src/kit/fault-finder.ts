/**
 * From what is heard and a few readings to a ranking of faults: Bayes with the priors of `faults.ts` and a meter's
 * noise, then the reading that leaves the least doubt on average. Readings that no fault explains lower the
 * confidence, and are named.
 */
import { type Steps, wholeOf } from '../plan/slices.ts';
import type { Fraction, VoiceId } from '../quantity/units.ts';
import { VOICES } from '../quantity/units.ts';
import type { Hearing, PitchHeard, StartHeard, SweepHeard } from '../words/faults.ts';
import { type Dictionary, type Entry, leverOf } from './dictionary.ts';
import type { Fault } from './faults.ts';
import { LIGHTS, type Reading } from './observe.ts';

/** What was heard; a question not answered is left out. Keys as `earKeys` names them. */
export type EarAnswers = Readonly<Record<string, Hearing | PitchHeard | SweepHeard | StartHeard>>;

export interface Findings {
  readonly ear: EarAnswers;
  /** Meter readings by id, SI units. */
  readonly meter: Readonly<Record<string, number>>;
}

export const NOTHING: Findings = { ear: {}, meter: {} };

export interface Candidate {
  readonly fault: Fault;
  /** Share of the belief, 0…1. */
  readonly share: Fraction;
}

export interface Ranking {
  /** Likeliest first. */
  readonly candidates: readonly Candidate[];
  /** How many equally likely faults would leave the same doubt: e to the entropy. */
  readonly left: number;
  /** The leader's share, less what contradicts it. */
  readonly confidence: Fraction;
  /** Ids and keys the leader does not explain. */
  readonly contradictions: readonly string[];
  /** A current was read that no healthy board draws. */
  readonly cutPower: boolean;
}

export interface NextReading {
  readonly reading: Reading;
  /** What a healthy board shows; null = not computed. */
  readonly healthy: number | null;
  /** Candidates that will be left on average after it. */
  readonly leftAfter: number;
}

/** Every question the ear is asked, with what a fault would answer. */
export function earOf(entry: Entry): EarAnswers {
  const { ear } = entry.observed;
  const out: Record<string, EarAnswers[string]> = { start: ear.start };
  for (const voice of VOICES) {
    for (const light of LIGHTS) out[earKey(light, voice)] = ear.heard[light][voice];
    out[`pitch ${voice}`] = ear.pitch[voice];
    out[`sweep ${voice}`] = ear.sweep[voice];
  }
  return out;
}

export function earKey(light: (typeof LIGHTS)[number], voice: VoiceId): string {
  return `${light}, ${voice}`;
}

/** An ear is wrong, or a board on the edge, this often. */
const EAR_WRONG: Fraction = 0.06;
/** A meter reading is a slip this often: then it may be anything. */
const SLIP: Fraction = 0.02;
/** A meter: ± 1 % and the last figures. */
const METER: Fraction = 0.01;
/** A fault's own spread beyond a healthy board's: bridges and joints have their own ohms. */
const FAULT_SPREAD: Fraction = 0.03;
/** Over-currents are of the right size at best. */
const HOT_SPREAD: Fraction = 0.4;
const LEAST_VOLTS = 0.03;
const LEAST_AMPERES = 0.0006;
/** A reading so many deviations off is not explained. */
const UNEXPLAINED = 4;

/** Standard deviation of a reading around what a fault should show. */
function deviationOf(dictionary: Dictionary, reading: Reading, expected: number): number {
  const blur = dictionary.blur.get(reading.id) ?? 0;
  if (reading.unit === 'A') {
    const hot = expected > dictionary.mostAmperes ? HOT_SPREAD : FAULT_SPREAD + METER;
    return Math.hypot(LEAST_AMPERES, (hot + blur) * expected);
  }
  const lever = leverOf(expected, dictionary.supplyVolts);
  return Math.hypot(LEAST_VOLTS, METER * expected, (FAULT_SPREAD + blur) * lever);
}

function readingLikelihood(dictionary: Dictionary, reading: Reading, entry: Entry, value: number): number {
  const expected = entry.observed.meter.get(reading.id) ?? null;
  const range = reading.unit === 'A' ? 1 : 1.2 * dictionary.supplyVolts;
  const isHot = reading.unit === 'A' && value > dictionary.mostAmperes;
  // What came to no answer explains anything but too much current.
  if (expected === null) return (isHot ? SLIP : 1) / range;
  // A limited supply, a fuse or a meter at its end shows less than the board would draw.
  const shown = isHot ? Math.min(expected, value) : expected;
  const deviation = deviationOf(dictionary, reading, shown);
  const z = (value - shown) / deviation;
  return (1 - SLIP) * (Math.exp(-0.5 * z * z) / (deviation * Math.sqrt(2 * Math.PI))) + SLIP / range;
}

const OPTIONS: Readonly<Record<string, number>> = { pitch: 6, sweep: 5, start: 2 };

function earLikelihood(key: string, said: string, would: string): number {
  const options = OPTIONS[key.split(' ')[0] ?? ''] ?? 2;
  return said === would ? 1 - EAR_WRONG : EAR_WRONG / (options - 1);
}

/** Ranks the faults of a dictionary. */
export function rank(dictionary: Dictionary, findings: Findings): Ranking {
  const readings = readingsTaken(dictionary, findings);
  const logs = dictionary.entries.map((entry) => {
    let log = Math.log(entry.fault.prior);
    const would = earOf(entry);
    for (const [key, said] of Object.entries(findings.ear)) {
      const expected = would[key];
      if (expected !== undefined) log += Math.log(earLikelihood(key, said, expected));
    }
    for (const [reading, value] of readings)
      log += Math.log(readingLikelihood(dictionary, reading, entry, value));
    return log;
  });
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const candidates = dictionary.entries
    .map(({ fault }, i) => ({ fault, share: weights[i]! / total }))
    .toSorted((a, b) => b.share - a.share);
  const leader = dictionary.entries.find(({ fault }) => fault === candidates[0]!.fault)!;
  const contradictions = contradictionsOf(dictionary, findings, leader);
  const said = Object.keys(findings.ear).length + readings.length;
  return {
    candidates,
    left: Math.exp(entropyOf(candidates.map(({ share }) => share))),
    confidence: candidates[0]!.share * (1 - Math.min(1, (2 * contradictions.length) / Math.max(2, said))),
    contradictions,
    cutPower: readings.some(([{ unit }, value]) => unit === 'A' && value > dictionary.mostAmperes),
  };
}

function readingsTaken(dictionary: Dictionary, findings: Findings): readonly (readonly [Reading, number])[] {
  return dictionary.readings.flatMap((reading) => {
    const value = findings.meter[reading.id];
    return value === undefined ? [] : [[reading, value] as const];
  });
}

function contradictionsOf(dictionary: Dictionary, findings: Findings, leader: Entry): readonly string[] {
  const would = earOf(leader);
  const heard = Object.entries(findings.ear).flatMap(([key, said]) =>
    would[key] !== undefined && would[key] !== said ? [key] : [],
  );
  const measured = readingsTaken(dictionary, findings).flatMap(([reading, value]) => {
    const expected = leader.observed.meter.get(reading.id) ?? null;
    if (expected === null) return [];
    const z = Math.abs(value - expected) / deviationOf(dictionary, reading, expected);
    return z > UNEXPLAINED ? [reading.id] : [];
  });
  return [...heard, ...measured];
}

function entropyOf(shares: readonly Fraction[]): number {
  return shares.reduce((sum, share) => (share > 0 ? sum - share * Math.log(share) : sum), 0);
}

/** Belief that a board draws too much at which its current is measured before all else. */
const HOT_BELIEF: Fraction = 0.05;
/** Faults taken as the truth in turn when a reading is weighed: with the rest nothing changes. */
const WEIGHED = 14;

/** A reading that leaves more than this of the doubt is not worth a helper's time. */
const WORTH: Fraction = 0.94;

/** The reading to take next; null when nothing more can be told apart. Over-current comes first. */
export function nextReading(
  dictionary: Dictionary,
  ranking: Ranking,
  findings: Findings,
): NextReading | null {
  return wholeOf(nextReadingSteps(dictionary, ranking, findings));
}

/** The same in steps, one for each reading. */
export function* nextReadingSteps(
  dictionary: Dictionary,
  ranking: Ranking,
  findings: Findings,
): Steps<NextReading | null> {
  const { entries } = dictionary;
  const placeOf = new Map(entries.map(({ fault }, place) => [fault, place]));
  const share = ranking.candidates.map((candidate) => candidate.share);
  const places = ranking.candidates.map(({ fault }) => placeOf.get(fault)!);
  const open = dictionary.readings.filter(({ id }) => findings.meter[id] === undefined);
  const weighed: NextReading[] = [];
  for (const reading of open) {
    weighed.push({
      reading,
      healthy: entries[0]!.observed.meter.get(reading.id) ?? null,
      leftAfter: leftAfter(dictionary, reading, places, share),
    });
    yield;
  }
  const first = weighed.find(({ reading }) => reading.point === 'current' && reading.light === 'lit');
  const hot = places.reduce((sum, place, i) => {
    const amperes = entries[place]!.observed.meter.get('current, lit') ?? 0;
    return amperes > dictionary.mostAmperes ? sum + share[i]! : sum;
  }, 0);
  if (first !== undefined && hot > HOT_BELIEF) return first;
  const best = weighed.reduce<NextReading | null>(
    (least, each) => (least === null || each.leftAfter < least.leftAfter ? each : least),
    null,
  );
  return best !== null && best.leftAfter < WORTH * ranking.left ? best : null;
}

/** By dictionary and reading: chance of each entry's own value (rows) under each entry (columns); null = no value. */
const WEIGHTS = new WeakMap<Dictionary, Map<string, readonly (Float64Array | null)[]>>();

function weightsOf(dictionary: Dictionary, reading: Reading): readonly (Float64Array | null)[] {
  const all = WEIGHTS.get(dictionary) ?? new Map<string, readonly (Float64Array | null)[]>();
  WEIGHTS.set(dictionary, all);
  const known = all.get(reading.id);
  if (known !== undefined) return known;
  const { entries } = dictionary;
  const made = entries.map(({ observed }) => {
    const value = observed.meter.get(reading.id) ?? null;
    return value === null
      ? null
      : Float64Array.from(entries, (entry) => readingLikelihood(dictionary, reading, entry, value));
  });
  all.set(reading.id, made);
  return made;
}

/** Candidates left on average after a reading: e to the expected entropy, each likely fault the truth in turn. */
function leftAfter(
  dictionary: Dictionary,
  reading: Reading,
  places: readonly number[],
  shares: readonly Fraction[],
): number {
  const weights = weightsOf(dictionary, reading);
  let entropy = 0;
  let weight = 0;
  const most = Math.min(WEIGHED, places.length);
  const before = entropyOf(shares);
  for (let truth = 0; truth < most; truth++) {
    const share = shares[truth]!;
    const row = weights[places[truth]!]!;
    weight += share;
    // Nothing is learned where nothing is known.
    if (row === null) {
      entropy += share * before;
      continue;
    }
    let [total, sum] = [0, 0];
    for (let i = 0; i < places.length && shares[i]! > 1e-6; i++) {
      const after = shares[i]! * row[places[i]!]!;
      total += after;
      sum += after * Math.log(after);
    }
    // −Σ p·ln p of p = after/total.
    entropy += share * (Math.log(total) - sum / total);
  }
  return Math.exp(entropy / Math.max(1e-12, weight));
}
