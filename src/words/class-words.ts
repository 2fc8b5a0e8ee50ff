/** The words of the place Class by language. English shows the way; every other language has the same shape. */

import { type Caution, type CautionPlace, type CautionWords, cautionWords } from './cautions.ts';
import { germanCautions } from './de-cautions.ts';
import { germanLessons } from './de-lessons.ts';
import { englishLessons } from './en-lessons.ts';
import type { LessonText, Translated } from './lesson-words.ts';
import type { Language } from './spoken.ts';

export type ClassWords = Translated<typeof englishLessons>;

export const CLASS_WORDS: Readonly<Record<Language, ClassWords>> = { en: englishLessons, de: germanLessons };

/** A lesson's words; null when the language has none of that name. */
export function lessonText(language: Language, lesson: string): LessonText | null {
  const texts: Readonly<Record<string, LessonText>> = CLASS_WORDS[language].lessons;
  return Object.hasOwn(texts, lesson) ? (texts[lesson] ?? null) : null;
}

const CAUTIONS: Readonly<Record<Language, CautionWords>> = { en: cautionWords, de: germanCautions };

/** The cautions for a place, in a language. */
export function cautionsIn(language: Language, places: readonly CautionPlace[]): readonly Caution[] {
  return CAUTIONS[language].all.filter((caution) => places.includes(caution.place));
}

export function localRulesIn(language: Language): string {
  return CAUTIONS[language].localRules;
}
