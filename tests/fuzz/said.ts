/** What is said of something found: whole sentences in both languages, fit to be shown. */
import { germanLists } from '../../src/words/de.ts';
import { speak } from '../../src/words/spoken.ts';

/** Longer than a word, and no longer than a notice has room for. */
const LENGTHS = { least: 10, most: 700 };
/** Letters cut in two, and what a program says where it has nothing to say. */
const UNSAID = /\p{Surrogate}|undefined|\[object|NaN|Infinity|∞/u;

/** Says it in German and in English; throws what is not fit to be shown. */
export function said(sentence: () => string): void {
  for (const [language, lists] of [['de', germanLists], ['en']] as const) {
    speak(language, lists);
    const text = sentence();
    if (text.length < LENGTHS.least || text.length > LENGTHS.most || UNSAID.test(text))
      throw new Error(`${text.length} letters: ${text.slice(0, LENGTHS.most)}`);
  }
}
