/**
 * What was read, as a sentence may show it: not too long, whole letters only, and nothing in it that hides, breaks the
 * line or turns the rest of the sentence round.
 */

/** Letters cut in two, control characters, and those that set the direction of writing. */
const NOT_SHOWN = /[\p{Surrogate}\p{Control}\p{Bidi_Control}\u2028\u2029]/gu;

/** A text out of a file among the words of the page: what would hide, break or turn them is shown as a question mark. */
export const legible = (text: string): string => text.replace(NOT_SHOWN, '\uFFFD');

/** At most so many UTF-16 units, the last a `…` where something was left out. */
export function excerpt(text: string, most = 40): string {
  const shown = text.length > most ? `${text.slice(0, most - 1)}…` : text;
  return legible(shown);
}
