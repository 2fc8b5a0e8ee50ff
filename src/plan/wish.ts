/**
 * From a wish to what each voice is to reach, or to the demands that cannot be met, each with the nearest that can.
 * Nothing is thrown and nothing typed is changed.
 */
import type { Pitch, Target, Wish } from '../design/pitch.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { type Hertz, type Pair, pairOf, VOICES, type VoiceId } from '../quantity/units.ts';
import { frequencyOfNote, intervalCents, type NoteProblem, parseNote, stepsCents } from './notes.ts';

/** What a wish may ask of a voice: what is heard as a tone, and far below where the timer's formula ends. */
export const TONE_HERTZ: { readonly min: Hertz; readonly max: Hertz } = { min: 20, max: 20_000 };

/** One demand that is not met. `voice` null = of both. */
export type WishProblem =
  | { readonly kind: 'note'; readonly voice: VoiceId; readonly problem: NoteProblem }
  /** Too low or too high for a tone; `nearestHertz` is the end of what there is. */
  | {
      readonly kind: 'not a tone';
      readonly voice: VoiceId;
      readonly hertz: Hertz;
      readonly nearestHertz: Hertz;
    }
  /** A sweep whose low end is not below its high end; the nearest is the two exchanged, or an octave from the low. */
  | {
      readonly kind: 'empty sweep';
      readonly voice: VoiceId;
      readonly lowHertz: Hertz;
      readonly highHertz: Hertz;
      readonly nearest: Target;
    }
  /** The least duty lies above the most. */
  | {
      readonly kind: 'duty crossed';
      readonly least: number;
      readonly most: number;
      readonly nearest: { readonly least: number; readonly most: number };
    }
  /** Nothing of this kind is at hand or may be ordered. */
  | { readonly kind: 'empty drawer'; readonly missing: 'resistors' | 'trimmers' | 'capacitors' }
  /** Nothing but polarised capacitors, and they are refused. */
  | { readonly kind: 'only polarised' };

export type Wanted =
  | { readonly ok: true; readonly targets: Pair<Target> }
  | { readonly ok: false; readonly problems: readonly WishProblem[] };

/** What each voice is to reach. */
export function targetsOf(wish: Wish): Wanted {
  const problems: WishProblem[] = [];
  const targets =
    wish.way === 'sweep' ? sweepTargets(wish, problems) : noteTargets(hertzWanted(wish, problems));
  if (targets)
    for (const voice of VOICES) {
      const outside = outsideTone(targets[voice]);
      if (outside !== null)
        problems.push({
          kind: 'not a tone',
          voice,
          hertz: outside,
          nearestHertz: Math.min(TONE_HERTZ.max, Math.max(TONE_HERTZ.min, outside)),
        });
    }
  problems.push(...dutyProblems(wish.duty));
  return targets && problems.length === 0 ? { ok: true, targets } : { ok: false, problems };
}

/** Everything that keeps a search from beginning: of the wish, and of the drawer. */
export function wishProblems({ wish, drawer }: Pick<Pitch, 'wish' | 'drawer'>): readonly WishProblem[] {
  const wanted = targetsOf(wish);
  const problems: WishProblem[] = wanted.ok ? [] : [...wanted.problems];
  const orders = drawer.use === 'order';
  for (const missing of ['resistors', 'trimmers', 'capacitors'] as const) {
    const some = drawer[missing].some(({ quantity }) => orders || quantity === null || quantity > 0);
    if (!some && !(orders && drawer.order[missing] !== null))
      problems.push({ kind: 'empty drawer', missing });
  }
  const ordered = orders ? drawer.order.capacitors : null;
  const dielectrics = [...drawer.capacitors, ...(ordered ? [ordered] : [])];
  if (
    !wish.polarised &&
    dielectrics.length > 0 &&
    dielectrics.every(({ dielectric }) => DIELECTRICS[dielectric].polarised)
  )
    problems.push({ kind: 'only polarised' });
  return problems;
}

/** The two frequencies of every way but the sweep; null where a note is not read. */
function hertzWanted(wish: Wish, problems: WishProblem[]): Pair<Hertz> | null {
  const { way, a4Hertz, temperament, interval, notes } = wish;
  if (way === 'frequencies') return wish.hertz;
  const numberOf = (voice: VoiceId): number | null => {
    const reading = parseNote(notes[voice]);
    if (reading.ok) return reading.noteNumber;
    problems.push({ kind: 'note', voice, problem: reading.problem });
    return null;
  };
  if (way === 'interval') {
    const { from, name, direction, cents } = interval;
    const number = numberOf(from);
    if (number === null) return null;
    const given = frequencyOfNote(number, a4Hertz);
    const width = intervalCents(name, temperament) + cents;
    const other = given * 2 ** ((direction === 'up' ? width : -width) / 1200);
    return pairOf((voice) => (voice === from ? given : other));
  }
  const [a, b] = [numberOf('A'), numberOf('B')];
  if (a === null || b === null) return null;
  const hertzA = frequencyOfNote(a, a4Hertz);
  if (temperament === 'equal') return { A: hertzA, B: frequencyOfNote(b, a4Hertz) };
  // Just: whole semitones become a ratio to A's note; cents typed with the notes stay cents.
  const semitones = Math.round(b) - Math.round(a);
  const cents = stepsCents(semitones, 'just') + 100 * (b - a - semitones);
  return { A: hertzA, B: hertzA * 2 ** (cents / 1200) };
}

function noteTargets(hertz: Pair<Hertz> | null): Pair<Target> | null {
  return hertz && pairOf((voice) => ({ lowHertz: hertz[voice], highHertz: hertz[voice] }));
}

function sweepTargets({ sweep }: Wish, problems: WishProblem[]): Pair<Target> {
  for (const voice of VOICES) {
    const { lowHertz, highHertz } = sweep[voice];
    if (lowHertz < highHertz) continue;
    const nearest =
      lowHertz > highHertz
        ? { lowHertz: highHertz, highHertz: lowHertz }
        : { lowHertz, highHertz: 2 * lowHertz };
    problems.push({ kind: 'empty sweep', voice, lowHertz, highHertz, nearest });
  }
  return sweep;
}

/** The first end of a target that is no tone; null when both are. */
function outsideTone({ lowHertz, highHertz }: Target): Hertz | null {
  return [lowHertz, highHertz].find((f) => !(f >= TONE_HERTZ.min && f <= TONE_HERTZ.max)) ?? null;
}

function dutyProblems(duty: Wish['duty']): readonly WishProblem[] {
  if (duty === null) return [];
  const { least, most } = duty;
  return least > most ? [{ kind: 'duty crossed', least, most, nearest: { least: most, most: least } }] : [];
}
