/** The words of the place Class by language. English shows the way; every other language has the same shape. */
import type { Language } from './amounts.ts';
import { type Caution, type CautionPlace, cautionsAt, LOCAL_RULES } from './cautions.ts';
import { germanCautions, germanLocalRules } from './de-cautions.ts';
import { germanLessons } from './de-lessons.ts';
import { englishLessons } from './en-lessons.ts';
import type { LessonText, Translated } from './lesson-words.ts';

export type ClassWords = Translated<typeof englishLessons>;

export const CLASS_WORDS: Readonly<Record<Language, ClassWords>> = { en: englishLessons, de: germanLessons };

/** A lesson's words; null when the language has none of that name. */
export function lessonText(language: Language, lesson: string): LessonText | null {
  const texts: Readonly<Record<string, LessonText>> = CLASS_WORDS[language].lessons;
  return Object.hasOwn(texts, lesson) ? (texts[lesson] ?? null) : null;
}

/** The cautions for a place, in a language. */
export function cautionsIn(language: Language, places: readonly CautionPlace[]): readonly Caution[] {
  const cautions = cautionsAt(...places);
  if (language === 'en') return cautions;
  return cautions.map((caution) => ({
    ...caution,
    ...germanCautions[`${caution.place}: ${caution.hazard}`],
  }));
}

export function localRulesIn(language: Language): string {
  return language === 'en' ? LOCAL_RULES : germanLocalRules;
}
