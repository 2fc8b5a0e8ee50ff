/**
 * Note names as German has them: H where English has B, B where English has B flat; -is for sharp, -es (-s after A
 * and E) for flat. Octaves are numbered as in English.
 */

import { SHARPS } from '../quantity/note-signs.ts';

/** `F♯3` → `Fis3`, `A♯3` → `B3`, `B3` → `H3`, `Bb3 +12 c` → `B3 +12 c`. What does not begin with an English note stays as it is. */
export function germanNote(english: string): string {
  const match = /^\s*([A-Ga-g])(##|♯♯|bb|♭♭|[#♯b♭♮x]?)(?![A-Za-z])(.*)$/s.exec(english);
  if (!match) return english;
  const [, letter = '', sign = '', rest = ''] = match;
  const stem = letter.toUpperCase();
  return `${germanName(stem, SHARPS[sign] ?? 0)}${rest}`;
}

function germanName(letter: string, sharps: number): string {
  const stem = letter === 'B' ? 'H' : letter;
  // A sharp and B flat are one key here, and B is the name it goes by.
  if (letter === 'A' && sharps === 1) return 'B';
  if (sharps >= 0) return `${stem}${'is'.repeat(sharps)}`;
  if (letter === 'B') return sharps === -1 ? 'B' : 'Heses';
  if (letter === 'A' || letter === 'E') return `${stem}s${'es'.repeat(-sharps - 1)}`;
  return `${stem}${'es'.repeat(-sharps)}`;
}

const SUFFIXES: Readonly<Record<string, string>> = {
  '': '',
  is: '♯',
  isis: '♯♯',
  es: '♭',
  s: '♭',
  eses: '♭♭',
  ses: '♭♭',
};

/**
 * `H3` → `B3`, `B3` → `B♭3`, `Fis3 +5 Cent` → `F♯3 +5 cents`: as the reader of notes takes it. Signs (♯, ♭) may
 * be typed, too. What is no German note stays as it is.
 */
export function englishNote(german: string): string {
  const text = german.replace(/\bcent\b/i, 'cents');
  const match =
    /^\s*(?:([CDFGHcdfgh])(isis|is|eses|es)?|([AEae])(isis|is|ses|eses|es|s)?|([Bb]))(?![A-Za-z])(.*)$/s.exec(
      text,
    );
  if (!match) return text;
  const [, plain, plainSuffix = '', open, openSuffix = '', flat, rest = ''] = match;
  // B with a sign is the international way of writing.
  if (flat !== undefined) return /^\s*[#♯♭♮]/.test(rest) ? `B${rest}` : `B♭${rest}`;
  const letter = (plain ?? open ?? '').toUpperCase();
  return `${letter === 'H' ? 'B' : letter}${SUFFIXES[plainSuffix || openSuffix] ?? ''}${rest}`;
}
