/** What is said about a link that carries a design. */
import { excerpt } from './excerpt.ts';
import { spoken } from './spoken.ts';

/** Every sentence about a refused link begins here: what was open stays open. */
export const linkWords = spoken('link', {
  refused: 'The design in this link was not opened; your design is as it was.',
  place: (place: string) => `The link names “${excerpt(place, 24)}”, which is no place of this page.`,
  damaged:
    'The link is damaged or cut off: its checksum does not match. Copy it whole, from the # to the last letter, and try again.',
  empty: 'The link carries no design after “d=”. Copy it whole and try again.',
  later: 'The link was made by a later Lampnote. Open it there, or get the later one.',
  tooLarge: 'The link holds far more than a design. It was not opened.',
  tooLong:
    'This design with its bench log is too much for a link. Save it as a file instead; the log alone can be saved in Kit.',
  notDesign: 'The link holds something else than a design that this version knows.',
  cannotPack: 'This browser cannot pack or unpack links. Save the design as a file instead.',
} as const);
