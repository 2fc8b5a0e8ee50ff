/** How fast parts are found and kits are drawn, each against a plain loop in the same run. */
import { astableFrom, cycleOf } from '../circuit/astable.ts';
import { DEFAULT_DESIGN } from '../design/defaults.ts';
import { type Candidate, DEFAULT_PITCH, type Pitch, type Target, type VoiceParts } from '../design/pitch.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms } from '../parts/trimmers.ts';
import { drawKits, kitPlan, roomFor } from '../plan/draws.ts';
import { firstOrderReachOf } from '../plan/reach.ts';
import { MOST_RANKED, search } from '../plan/search.ts';
import { codesOf, placesOf, voiceParts } from '../plan/search-voice.ts';
import { partsOf } from '../plan/stock.ts';
import { type Chip, chipOf, lawOf } from '../plan/timing.ts';
import { uniformFrom } from '../quantity/random.ts';
import { type Hertz, type Pair, VOICES } from '../quantity/units.ts';
import { fastest, timesLonger } from './bench-clock.ts';

const TURNS = 5;
/** Kits of one timed draw. */
const KITS = 200_000;
/** The plain loops are timed on a share of the work: so many pairs and kits. */
const PLAIN_PAIRS = 200_000;
const PLAIN_KITS = 20_000;

const { drawer } = DEFAULT_PITCH;
const FULL_E12: Pick<Pitch, 'wish' | 'drawer'> = {
  wish: DEFAULT_PITCH.wish,
  drawer: {
    ...drawer,
    order: { ...drawer.order, capacitors: { series: 'E12', dielectric: 'polyester', tolerance: 0.05 } },
  },
};

export function pitchSpeeds(): Readonly<Record<string, number>> {
  const chip = chipOf(DEFAULT_DESIGN);
  const found = finished(chip);
  const seconds = fastest(() => finished(chip));
  const asPlainPairs = timesLonger(
    () => plainSearch(chip, found.targets, PLAIN_PAIRS),
    () => finished(chip),
    TURNS,
  );
  const vsPlainLoop = (asPlainPairs * found.combinations) / PLAIN_PAIRS;

  const { candidate } = found.ranked[0]!;
  const plan = kitPlan(chip, candidate, 'uniform')!;
  const room = roomFor(KITS);
  const draw = () => drawKits(plan, 1, room);
  const asPlainKits = timesLonger(() => plainDraw(chip, candidate, PLAIN_KITS), draw, TURNS);
  return {
    pitchCombinationsPerSecond: found.combinations / seconds,
    pitchCombinationsVsPlainLoop: vsPlainLoop,
    pitchSearchMs: 1000 * seconds,
    pitchSearchVsPlainLoop: vsPlainLoop,
    batchKitsPerSecond: KITS / fastest(draw),
    batchKitsVsPlainLoop: (asPlainKits * KITS) / PLAIN_KITS,
  };
}

function finished(chip: Chip) {
  const steps = search({ chip, pitch: FULL_E12 });
  let step = steps.next();
  while (!step.done) step = steps.next();
  if (step.value.kind !== 'found') throw new Error('The full drawer is refused.');
  return step.value;
}

/** The nested loop: whole kits one after another, each looked at by itself, the best five hundred kept. */
function plainSearch(chip: Chip, targets: Pair<Target>, pairs: number): readonly number[] {
  const parts = partsOf(FULL_E12.drawer);
  const n = codesOf(parts);
  const all = n.resistors ** 2 * n.trimmers * n.capacitors;
  const best: number[] = [];
  // A stride spreads the pairs looked at over the whole drawer.
  for (let i = 0; i < pairs; i++) {
    const codes = [(i * 7919) % all, (i * 104_729) % all];
    let missed = 0;
    for (const [v, code] of codes.entries()) {
      const own = voiceParts(parts, placesOf(code, n));
      const law = lawOf(chip, null, own.ra.ohms);
      const target = targets[VOICES[v]!];
      missed += law ? 1 - firstOrderReachOf(chip.timer, law, own, target, 'uniform') : 1;
    }
    if (best.length === MOST_RANKED && missed >= best[MOST_RANKED - 1]!) continue;
    let at = best.length;
    while (at > 0 && best[at - 1]! > missed) at--;
    best.splice(at, 0, missed);
    if (best.length > MOST_RANKED) best.pop();
  }
  return best;
}

/** Kits as whole sets of parts, each with a timing network of its own. */
function plainDraw(chip: Chip, candidate: Candidate, kits: number): number {
  const uniform = uniformFrom(1);
  const off = (value: number, tolerance: number) => value * (1 + tolerance * (2 * uniform() - 1));
  const timer = TIMERS[chip.timer];
  let reached = 0;
  for (let kit = 0; kit < kits; kit++) {
    const all = VOICES.every((voice) => {
      const nominal = candidate.parts[voice];
      const drawn: VoiceParts = {
        ra: { ...nominal.ra, ohms: off(nominal.ra.ohms, nominal.ra.tolerance) },
        rbFixed: { ...nominal.rbFixed, ohms: off(nominal.rbFixed.ohms, nominal.rbFixed.tolerance) },
        trimmer: { ...nominal.trimmer, ohms: off(nominal.trimmer.ohms, nominal.trimmer.tolerance) },
        capacitor: {
          ...nominal.capacitor,
          farads: off(off(nominal.capacitor.farads, nominal.capacitor.tolerance), timer.accuracy.typical),
        },
      };
      const end = endOhms(nominal.trimmer.part, nominal.trimmer.ohms) * uniform();
      const hertzAt = (rotation: number): Hertz =>
        cycleOf(
          astableFrom({
            raOhms: drawn.ra.ohms,
            rbOhms: drawn.rbFixed.ohms + end + rotation * (drawn.trimmer.ohms - end),
            farads: drawn.capacitor.farads,
            railVolts: chip.railVolts,
            controlVolts: null,
            discharge: timer.discharge,
          }),
        ).frequency;
      const ends = [hertzAt(0), hertzAt(1), hertzAt(0.1), hertzAt(0.9), hertzAt(0.5)];
      const { lowHertz, highHertz } = candidate.targets[voice];
      return ends[2]! >= highHertz && ends[3]! <= lowHertz;
    });
    reached += Number(all);
  }
  return reached;
}
