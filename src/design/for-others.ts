/** A design as it is handed to whoever builds from it. */
import { DEFAULT_DESIGN } from './defaults.ts';
import type { Design } from './design.ts';

/**
 * All that sounds, and the board as it was wished; without what only the organiser needs or should see: stock and
 * prices, the log, drawer and shortlist, readings of rooms.
 */
export function forOthers(design: Design): Design {
  const { pitch, room, batch } = design;
  return {
    ...design,
    pitch: { ...pitch, drawer: DEFAULT_DESIGN.pitch.drawer, shortlist: [] },
    room: { ...room, readings: [] },
    batch: { ...batch, lines: [], log: [] },
  };
}
