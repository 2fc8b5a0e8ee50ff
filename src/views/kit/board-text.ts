/** How large the words on a board are on screen, px: as the small words beside it, and as the browser's letters are set. */
import type { Look } from '../../app/session.ts';

/** Of the page's own text; as `--text-small`. */
const SMALL = 13 / 16;

export const boardText = (look: Look, pageText: number): number =>
  look === 'projector' ? 24 : Math.max(12, SMALL * pageText);
