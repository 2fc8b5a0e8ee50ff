/** The languages' words, loaded when they are first wanted; English is there from the start. */
import type { Seconds } from '../quantity/units.ts';
import type { Language, Lists } from '../words/spoken.ts';
import { within } from './within.ts';

const LOADS: Readonly<Record<Language, (() => Promise<Lists>) | null>> = {
  en: null,
  de: async () => (await import('../words/de.ts')).germanLists,
};

/** Words that have not come after this are waited for no longer: the page goes on in the language it has. */
const PATIENCE: Seconds = 4;

export type LoadedWords = { readonly ok: true; readonly lists: Lists | undefined } | { readonly ok: false };

interface Coming {
  readonly words: Promise<LoadedWords>;
  /** The same, or null once it has taken too long. */
  readonly inTime: Promise<LoadedWords | null>;
}

/** Words on their way: who asks a second time does not wait as long again. */
const onTheirWay = new Map<Language, Coming>();

/** The words of a language, and how long the page waits for them. */
export function comingWords(language: Language): Coming {
  const known = onTheirWay.get(language);
  if (known) return known;
  const words = wordsOf(language);
  const coming = { words, inTime: within(words, PATIENCE) };
  onTheirWay.set(language, coming);
  void words.then(() => onTheirWay.delete(language));
  return coming;
}

/** What `speak` is to be given with a language. Never rejects; not ok where its words did not come. */
async function wordsOf(language: Language): Promise<LoadedWords> {
  const load = LOADS[language];
  if (load === null) return { ok: true, lists: undefined };
  return load().then(
    (lists) => ({ ok: true, lists }),
    () => ({ ok: false }),
  );
}
