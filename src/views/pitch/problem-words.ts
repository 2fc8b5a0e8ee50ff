/** Sentences for what stands in the way of a search, and the change that would take it out of the way. */
import type { Command } from '../../design/commands.ts';
import type { Pitch } from '../../design/pitch.ts';
import { changeWish } from '../../design/pitch-commands.ts';
import type { NoteProblem } from '../../plan/notes.ts';
import type { WishProblem } from '../../plan/wish.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { pitchWords } from '../../words/en-pitch.ts';

const words = pitchWords.problem;

export function noteSentence(voice: VoiceId, problem: NoteProblem): string {
  switch (problem.kind) {
    case 'nothing typed':
      return words.noteEmpty(voice);
    case 'no note':
      return words.noNote(voice, problem.read, problem.nearest);
    case 'no octave':
      return words.noOctave(voice, problem.read, problem.nearest);
  }
}

export function problemSentence(problem: WishProblem, { drawer }: Pitch): string {
  switch (problem.kind) {
    case 'note':
      return noteSentence(problem.voice, problem.problem);
    case 'not a tone':
      return words.notTone(problem.voice, problem.hertz, problem.nearestHertz);
    case 'empty sweep': {
      const { voice, lowHertz, highHertz, nearest } = problem;
      return words.emptySweep(voice, lowHertz, highHertz, nearest.lowHertz, nearest.highHertz);
    }
    case 'duty crossed':
      return words.dutyCrossed(problem.least, problem.most);
    case 'empty drawer':
      return words.emptyDrawer(problem.missing, drawer.use);
    case 'only polarised':
      return words.onlyPolarised;
  }
}

/** The nearest demand that would work, as a change of the wish; null where only the person can say. */
export function remedy(problem: WishProblem, { wish }: Pitch): Command | null {
  switch (problem.kind) {
    case 'note': {
      const { voice, problem: read } = problem;
      const nearest = read.kind === 'nothing typed' ? null : read.nearest;
      return nearest === null ? null : changeWish({ notes: { ...wish.notes, [voice]: nearest } });
    }
    case 'not a tone': {
      const { voice, hertz, nearestHertz } = problem;
      if (wish.way === 'frequencies') return changeWish({ hertz: { ...wish.hertz, [voice]: nearestHertz } });
      if (wish.way !== 'sweep') return null;
      const { lowHertz, highHertz } = wish.sweep[voice];
      const end = lowHertz === hertz ? { lowHertz: nearestHertz } : { highHertz: nearestHertz };
      return changeWish({ sweep: { ...wish.sweep, [voice]: { lowHertz, highHertz, ...end } } });
    }
    case 'empty sweep':
      return changeWish({ sweep: { ...wish.sweep, [problem.voice]: problem.nearest } });
    case 'duty crossed':
      return changeWish({ duty: problem.nearest });
    case 'only polarised':
      return changeWish({ polarised: true });
    case 'empty drawer':
      return null;
  }
}
