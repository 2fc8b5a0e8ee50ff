/**
 * A recording through both gates, far faster than it is played and with the same result: the moments at which each
 * voice starts and stops. Seconds on the recording's clock.
 *
 * A cell's conductance can pass a trip point only while, or after, the light has been past the light that holds the
 * cell there: until then the rows need only be compared with two numbers. Where the light does pass, the cell's rate
 * equation is followed from some 25 of its time constants before, when it has long forgotten how it began, to the
 * crossing. Without noise. Under a lamp that ripples the cell's lag of some milliseconds is left out, and a light in
 * which the ripple tips the gate to and fro counts as chatter.
 */
import { cellSpeed, steadyConductance } from '../circuit/cell.ts';
import { type Gate, type GateState, gatesOf, nodeVolts, overdriveVolts } from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import type { LogPoints } from '../light/log-file.ts';
import type { Ripple } from '../light/ripple.ts';
import { type Lux, type Pair, pairOf, type Seconds, VOICES, type VoiceId } from '../quantity/units.ts';
import { isPast, type Tip, Tracker } from './cell-tracker.ts';
import { settingsFor } from './setting.ts';
import { tripLuxAt } from './trip-lux.ts';

export interface Change {
  readonly voice: VoiceId;
  readonly time: Seconds;
  readonly sounding: boolean;
}

export interface Replayed {
  /** In order of time. */
  readonly changes: readonly Change[];
  /** At the first row. */
  readonly soundingAtFirst: Pair<boolean>;
  /** Time each voice spends in light in which a lamp's ripple tips it to and fro. */
  readonly chatterSeconds: Pair<Seconds>;
}

export function replayLog(design: Design, points: LogPoints, ripple: Ripple | null = null): Replayed {
  return ripple === null || ripple.depth === 0
    ? replaySteady(design, points)
    : replayRippled(design, points, ripple);
}

function replaySteady(design: Design, { times, lux }: LogPoints): Replayed {
  const gates = gatesOf(design, railVolts(design.supply));
  const cells = pairOf((voice) => new Tracker(cellSpeed(design.voices[voice].cell), times, lux[voice]));
  const tips = pairOf((voice) => tipsOf(design, voice, gates[voice]));
  const high = { A: false, B: false };
  const tipNow = (voice: VoiceId): Tip => tips[voice][(high.A ? 1 : 0) + (high.B ? 2 : 0)]!;
  const reads = (voice: VoiceId) => (high[voice] ? gates[voice].releases : !gates[voice].silences);
  const first = times[0] ?? 0;
  settle(high, (voice) =>
    isPast(tipNow(voice), steadyConductance(design.voices[voice].cell.gamma, lux[voice][0] ?? 0)),
  );
  const soundingAtFirst = pairOf(reads);
  const changes: Change[] = [];
  let now = first;
  let row = 1;
  while (row < times.length) {
    // No change before the first row in which either light is past its tip.
    const [a, b] = [tipNow('A'), tipNow('B')];
    row = firstPast(lux.A, a, lux.B, b, row);
    if (row >= times.length) break;
    const end = times[row]!;
    let best: { voice: VoiceId; time: Seconds } | null = null;
    for (const voice of VOICES) {
      cells[voice].mark();
      const time = cells[voice].crossing(voice === 'A' ? a : b, now, row);
      if (time !== null && time <= end && (best === null || time < best.time)) best = { voice, time };
    }
    if (best === null) {
      now = end;
      row++;
      continue;
    }
    // The other cell may have been followed further than this change, which can move its tip.
    cells[best.voice === 'A' ? 'B' : 'A'].backToMark();
    const before = reads(best.voice);
    high[best.voice] = !high[best.voice];
    now = best.time;
    if (reads(best.voice) !== before) changes.push({ voice: best.voice, time: best.time, sounding: !before });
  }
  return { changes, soundingAtFirst, chatterSeconds: { A: 0, B: 0 } };
}

function firstPast(luxA: Float64Array, a: Tip, luxB: Float64Array, b: Tip, from: number): number {
  // A light before the row counts too: it may be past already, and the cell on its way.
  const [la, ua, lb, ub] = [a.lux, a.upwards, b.lux, b.upwards];
  for (let i = from; i < luxA.length; i++) {
    const [a0, a1, b0, b1] = [luxA[i - 1]!, luxA[i]!, luxB[i - 1]!, luxB[i]!];
    if (ua ? a0 > la || a1 > la : a0 < la || a1 < la) return i;
    if (ub ? b0 > lb || b1 > lb : b0 < lb || b1 < lb) return i;
  }
  return luxA.length;
}

function settle(high: { A: boolean; B: boolean }, past: (voice: VoiceId) => boolean): void {
  for (let turn = 0; turn < 4; turn++) {
    let changed = false;
    for (const voice of VOICES)
      if (past(voice)) {
        high[voice] = !high[voice];
        changed = true;
      }
    if (!changed) return;
  }
}

/** The tip of a voice in each of the four states of both outputs. */
function tipsOf(design: Design, voice: VoiceId, gate: Gate): readonly Tip[] {
  const { gamma } = design.voices[voice].cell;
  return gate.states.map((state, index) => {
    const isHigh = ((index >> (voice === 'A' ? 0 : 1)) & 1) === 1;
    // Wrong where it stands: an output that is low while its overdrive is above 0, or high while it is not.
    const wrongAt = (siemens: number) => overdriveVolts(state, nodeVolts(state, siemens)) > 0 !== isHigh;
    const [inDark, inLight] = [wrongAt(gate.darkSiemens), wrongAt(1e3)];
    if (inDark === inLight)
      return { upwards: true, lux: inDark ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY, y: 0 };
    const y = tipSiemens(state) * gate.r10Ohms;
    return { upwards: inLight, lux: 10 * y ** (1 / gamma), y };
  });
}

function tipSiemens({ n0, n1, d0, tripVolts }: GateState): number {
  return (n0 - tripVolts * d0) / (tripVolts - n1);
}

/** Mean light against the levels past which ripple leaves no doubt. */
function replayRippled(design: Design, { times, lux }: LogPoints, ripple: Ripple): Replayed {
  const changes: Change[] = [];
  const chatterSeconds = { A: 0, B: 0 };
  const soundingAtFirst = pairOf((voice) => {
    const setting = settingsFor(design)[voice];
    const { rotation } = thresholdFor(design, voice).trimmer;
    const demands = { ripple, noiseVolts: 0 };
    const { upper, lower } = tripLuxAt(setting, rotation, demands);
    const smooth = tripLuxAt(setting, rotation, { ripple: null, noiseVolts: 0 });
    // Ripple widens what lies between: more than the hysteresis leaves, and the gate goes to and fro in it.
    const chatters = upper / lower > (smooth.upper / smooth.lower) * (1 + 1e-9) && upper > smooth.upper;
    const values = lux[voice];
    let isLit = values[0]! >= Math.sqrt(upper * lower);
    const first = isLit;
    for (let i = 1; i < times.length; i++) {
      const [e0, e1] = [values[i - 1]!, values[i]!];
      const [t0, length] = [times[i - 1]!, times[i]! - times[i - 1]!];
      const at = (level: Lux) => t0 + ((level - e0) / (e1 - e0)) * length;
      if (isLit ? e1 < lower : e1 > upper) {
        isLit = !isLit;
        const level = isLit ? upper : lower;
        const time = (isLit ? e0 > upper : e0 < lower) ? t0 : at(level);
        changes.push({ voice, time, sounding: isLit === setting.soundsInLight });
      }
      if (chatters) chatterSeconds[voice] += shareBetween(e0, e1, lower, upper) * length;
    }
    return first === setting.soundsInLight;
  });
  changes.sort((a, b) => a.time - b.time);
  return { changes, soundingAtFirst, chatterSeconds };
}

/** Share of a straight way from one value to another that lies between two levels. */
function shareBetween(from: number, to: number, low: number, high: number): number {
  if (from === to) return from > low && from < high ? 1 : 0;
  const [least, most] = [Math.min(from, to), Math.max(from, to)];
  return Math.max(0, Math.min(most, high) - Math.max(least, low)) / (most - least);
}
