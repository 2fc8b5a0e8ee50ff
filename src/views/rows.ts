/** How an element's properties tell that something is new, where plain comparison would redraw for nothing. */
import { equalValues } from '../design/entries.ts';

/** Rows made anew at each rendering: another drawing only when one of them says something else. */
export const rows = {
  attribute: false,
  hasChanged: (now: unknown, before: unknown): boolean => !equalValues(now, before),
};

/** What is asked later and never shown, such as how typed text is read: nothing to redraw. */
export const unseen = { attribute: false, hasChanged: (): boolean => false };
