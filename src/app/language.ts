/** The languages' words, loaded when they are first wanted; English is there from the start. */
import type { Language, Lists } from '../words/spoken.ts';

const LOADS: Readonly<Record<Language, (() => Promise<Lists>) | null>> = {
  en: null,
  de: async () => (await import('../words/de.ts')).germanLists,
};

export type LoadedWords = { readonly ok: true; readonly lists: Lists | undefined } | { readonly ok: false };

/** What `speak` is to be given with a language. Never rejects; not ok where its words did not come. */
export async function wordsOf(language: Language): Promise<LoadedWords> {
  const load = LOADS[language];
  if (load === null) return { ok: true, lists: undefined };
  return load().then(
    (lists) => ({ ok: true, lists }),
    () => ({ ok: false }),
  );
}
