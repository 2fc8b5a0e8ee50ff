/**
 * The language of the page. Every list of words is written in English and told to `spoken`; a translation of the same
 * shape, loaded when it is first wanted, is read in its place from then on. Whoever asks a list gets the words of the
 * language spoken then, so what is kept from an earlier asking stays in that language.
 */
import { setLocale } from '../quantity/format.ts';

export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE' };

/** The same list in another language: every word again, none left out, none added. */
export type Translated<T> = T extends string
  ? string
  : T extends (...given: infer Given) => unknown
    ? (...given: Given) => Translated<ReturnType<T>>
    : T extends number | null | boolean
      ? T
      : { readonly [K in keyof T]: Translated<T[K]> };

/** One language's lists by the names they were told under. */
export type Lists = Readonly<Record<string, object>>;

let language: Language = 'en';
const translations = new Map<Language, Lists>();
const english = new Map<string, object>();

/** A list of words that follows the language. Names are unique. */
export function spoken<T extends object>(name: string, words: T): T {
  english.set(name, words);
  const here = (): T => (translations.get(language)?.[name] ?? words) as T;
  return new Proxy(words, {
    get: (_words, key) => Reflect.get(here(), key),
    // What is asked for its entries must tell those of the language.
    getOwnPropertyDescriptor: (_words, key) => Reflect.getOwnPropertyDescriptor(here(), key),
  });
}

export function spokenLanguage(): Language {
  return language;
}

/** Speaks another language from now on. All but English must have been given before. */
export function speak(next: Language, lists?: Lists): void {
  if (lists) translations.set(next, lists);
  language = next;
  setLocale(LOCALES[next]);
}

/** Every English list told so far, for checking translations against. */
export function englishLists(): ReadonlyMap<string, object> {
  return english;
}
