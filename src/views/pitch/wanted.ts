/** The wish in a heading and one line beneath it. */
import type { Pitch, Target } from '../../design/pitch.ts';
import { INTERVAL_NAMES } from '../../design/pitch.ts';
import { centsBetween, intervalCents } from '../../plan/notes.ts';
import { targetsOf } from '../../plan/wish.ts';
import { type Hertz, type Pair, VOICES, type VoiceId } from '../../quantity/units.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import { noteText } from './bars.ts';

const words = pitchWords.wanted;
/** A named interval is one within this many cents. */
const NAMED_CENTS = 1;

export function wantedHeading({ wish }: Pitch): string {
  const wanted = targetsOf(wish);
  if (!wanted.ok) return words.none;
  const { a4Hertz } = wish;
  if (wish.way !== 'sweep') {
    const [a, b] = VOICES.map((id) => noteText(wanted.targets[id].lowHertz, a4Hertz));
    return words.notes(a!, b!);
  }
  const [a, b] = VOICES.map((id) => sweepText(id, wanted.targets[id], a4Hertz));
  return words.sweeps(a!, b!);
}

const sweepText = (voice: VoiceId, { lowHertz, highHertz }: Target, a4: Hertz): string =>
  words.sweep(voice, noteText(lowHertz, a4), noteText(highHertz, a4));

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
