/** A lesson's words with the model's numbers in them, in the language of the class. */
import { memoized } from '../../app/derived.ts';
import type { Bench } from '../../lesson/bench.ts';
import { amountsOf } from '../../lesson/figures.ts';
import { type Lesson, type Step, startBench } from '../../lesson/lesson.ts';
import { LESSON_DESIGN } from '../../lesson/lessons.ts';
import type { Answer } from '../../lesson/progress.ts';
import { type Verdict, verdictOn } from '../../lesson/verdict.ts';
import type { Lux } from '../../quantity/units.ts';
import { type Amount, amountIn, filled } from '../../words/amounts.ts';
import { CLASS_WORDS, lessonText } from '../../words/class-words.ts';
import { germanClassPage } from '../../words/de-class.ts';
import { type ClassPageWords, classPage } from '../../words/en-class.ts';
import type { LessonText, StepWords } from '../../words/lesson-words.ts';
import type { Language } from '../../words/spoken.ts';

/** The words around the lessons. */
export const PAGE: Readonly<Record<Language, ClassPageWords>> = { en: classPage, de: germanClassPage };

/** The bench as a step finds it. */
const startOf = memoized((step: Step): Bench => startBench(step, LESSON_DESIGN));

const stepAmounts = memoized((step: Step) => amountsOf(step.figures, startOf(step)));

/** Throws where a lesson has no words in a language; a test holds that each has. */
export function wordsOf(lesson: Lesson, language: Language): LessonText {
  const text = lessonText(language, lesson.id);
  if (text === null) throw new Error(`The lesson ${lesson.id} has no words in ${language}.`);
  return text;
}

/** A step's words, its numbers filled in. */
export function stepWords(lesson: Lesson, step: Step, language: Language): StepWords {
  const text = wordsOf(lesson, language).steps[step.id];
  if (text === undefined) throw new Error(`The step ${step.id} of ${lesson.id} has no words in ${language}.`);
  const amounts = stepAmounts(step);
  const fill = (words: string) => filled(language, words, amounts);
  return {
    title: fill(text.title),
    text: fill(text.text),
    question: text.question && fill(text.question),
    options: Object.fromEntries(Object.entries(text.options).map(([option, words]) => [option, fill(words)])),
    task: fill(text.task),
    reveal: fill(text.reveal),
    algebra: text.algebra && fill(text.algebra),
  };
}

export const luxIn = (language: Language, value: Lux): string => amountIn(language, { kind: 'lux', value });

/** A guess in a few words; null where none was made. */
export function answerWords(answer: Answer | null, words: StepWords, language: Language): string | null {
  switch (answer?.kind) {
    case 'choice':
      return words.options[answer.option] ?? null;
    case 'place':
      return luxIn(language, answer.lux);
    case 'sketch':
      return answer.volts.map((value) => amountIn(language, { kind: 'volts', value })).join(', ');
    default:
      return null;
  }
}

/** What the model says to the guess, in a sentence; null where nothing was asked. */
export function verdictWords(
  step: Step,
  words: StepWords,
  answer: Answer | null,
  language: Language,
): string | null {
  const verdict = verdictOn(step, LESSON_DESIGN, answer);
  if (verdict === null) return null;
  const { verdict: says } = CLASS_WORDS[language];
  if (verdict.kind === 'choice') {
    if (verdict.right) return says.right;
    const plain = words.options[verdict.option] ?? '';
    const said = answer?.kind === 'choice' ? says.other : says.passed;
    return said.replace('{answer}', plain);
  }
  return verdict.kind === 'place' ? placeWords(verdict, answer, language) : sketchWords(verdict, language);
}

/** A sketch says by itself how it lies; in words, how much of it lies near. */
function sketchWords(
  { found, points }: Extract<Verdict, { kind: 'sketch' }>,
  language: Language,
): string | null {
  if (found === null) return null;
  const { verdict: says } = CLASS_WORDS[language];
  return filled(language, says.sketch, {
    found: { kind: 'count', value: found },
    points: { kind: 'count', value: points.length },
  });
}

function placeWords(
  verdict: Extract<Verdict, { kind: 'place' }>,
  answer: Answer | null,
  language: Language,
): string {
  const { verdict: says } = CLASS_WORDS[language];
  const amounts: Record<string, Amount> = { answer: { kind: 'lux', value: verdict.lux } };
  if (answer?.kind !== 'place' || verdict.off === null) return filled(language, says.passedPlace, amounts);
  amounts['guess'] = { kind: 'lux', value: answer.lux };
  amounts['off'] = { kind: 'ratio', value: verdict.off };
  return filled(language, verdict.right ? says.near : says.far, amounts);
}
