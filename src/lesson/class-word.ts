/**
 * A class's own word, from which its sheets are drawn: the same word gives the same sheets on any device, and another
 * word others. Capitals and spaces around it do not count, as nobody remembers them.
 */

/** No word at all: the same sheets for every class that did not choose one. */
const NO_WORD = 1;

/** The seed of a class's sheets: its word's 32-bit FNV-1a hash (Fowler, Noll, Vo), letter by letter, lowest byte first. */
export function wordSeed(word: string): number {
  const plain = word.normalize('NFC').trim().toLowerCase();
  if (plain === '') return NO_WORD;
  let hash = 0x811c9dc5;
  for (const letter of plain) {
    let rest = letter.codePointAt(0)!;
    do {
      hash = Math.imul(hash ^ (rest & 0xff), 0x01000193);
      rest >>>= 8;
    } while (rest > 0);
  }
  return hash >>> 0;
}
