/** What is said about a link that carries a design. */
import { spoken } from './spoken.ts';

/** Every sentence about a refused link begins here: what was open stays open. */
export const linkWords = spoken('link', {
  refused: 'The design in this link was not opened; your design is as it was.',
  place: (place: string) =>
    `The link names “${place.length > 24 ? `${place.slice(0, 23)}…` : place}”, which is no place of this page.`,
  damaged:
    'The link is damaged or cut off: its checksum does not match. Copy it whole, from the # to the last letter, and try again.',
  empty: 'The link carries no design after “d=”. Copy it whole and try again.',
  later: 'The link was made by a later Lampnote. Open it there, or get the later one.',
  tooLarge: 'The link holds far more than a design. It was not opened.',
  notDesign: 'The link holds something else than a design that this version knows.',
  cannotPack: 'This browser cannot pack or unpack links. Save the design as a file instead.',
} as const);
