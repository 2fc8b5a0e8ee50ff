/** The wish in a heading and one line beneath it. */
import type { Pitch, Target } from '../../design/pitch.ts';
import { INTERVAL_NAMES } from '../../design/pitch.ts';
import { centsBetween, intervalCents } from '../../plan/notes.ts';
import { targetsOf } from '../../plan/wish.ts';
import type { Pair, VoiceId } from '../../quantity/units.ts';
import { hertzText, pitchWords } from '../../words/en-pitch.ts';
import { noteText } from './bars.ts';

const words = pitchWords.wanted;
/** A named interval is one within this many cents. */
const NAMED_CENTS = 1;

export function wantedHeading({ wish }: Pitch): string {
  const wanted = targetsOf(wish);
  if (!wanted.ok) return words.none;
  const { a4Hertz, way } = wish;
  const textOf = (voice: VoiceId): string => {
    const { lowHertz, highHertz } = wanted.targets[voice];
    if (way === 'sweep') return words.sweep(voice, hertzText(lowHertz), hertzText(highHertz));
    return way === 'frequencies' ? hertzText(lowHertz) : noteText(lowHertz, a4Hertz);
  };
  return way === 'sweep' ? words.sweeps(textOf('A'), textOf('B')) : words.notes(textOf('A'), textOf('B'));
}

/** What else the wish says, piece by piece. */
export function wantedPieces({ wish, drawer }: Pitch): readonly string[] {
  const wanted = targetsOf(wish);
  const { order, use } = drawer;
  const series = [order.resistors?.series, order.capacitors?.series].filter((one) => one !== undefined);
  return [
    ...(wanted.ok && wish.way !== 'sweep' ? [intervalText(wanted.targets, wish.temperament)] : []),
    words.a4(wish.a4Hertz),
    ...(wish.duty ? [words.duty(wish.duty.least, wish.duty.most)] : []),
    words.kits(wish.kits),
    use === 'have' ? words.have : words.order([...new Set(series)]),
  ];
}

function intervalText(targets: Pair<Target>, temperament: 'equal' | 'just'): string {
  const apart = Math.abs(centsBetween(targets.A.lowHertz, targets.B.lowHertz));
  const name = INTERVAL_NAMES.find((one) => Math.abs(intervalCents(one, temperament) - apart) < NAMED_CENTS);
  return words.between(apart, name ?? null, temperament);
}
