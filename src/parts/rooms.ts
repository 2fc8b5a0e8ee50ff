/**
 * Typical light of rooms, maintained lux on the task or the floor, and kinds of lamps. A row says where it is from;
 * those marked so are from memory, as the standard's own table was not at hand. New lamps give about 1.25 times as
 * much (maintenance factor 0.8).
 */
import type { Lux } from '../quantity/units.ts';

interface RoomRow {
  readonly lux: Lux;
  /** Where the table gives a second, higher value for difficult tasks. */
  readonly modifiedLux: Lux | null;
  readonly fromMemory: boolean;
  readonly source: string;
}

const EN = 'EN 12464-1:2021';

export const ROOM_TYPES = {
  'entrance-hall': row(200, 300, EN),
  corridor: row(100, 150, EN),
  stairs: row(150, 200, EN),
  'lecture-hall': row(500, null, 'EN 12464-1'),
  canteen: row(200, null, 'EN 12464-1'),
  cloakroom: row(200, null, 'EN 12464-1'),
  classroom: remembered(500, 1000, EN),
  'art-room': remembered(500, null, 'EN 12464-1'),
  workshop: remembered(500, null, 'EN 12464-1'),
  'technical-drawing': remembered(750, null, 'EN 12464-1'),
  'electronics-assembly': remembered(1500, null, 'EN 12464-1'),
  'dressing-room': remembered(300, null, 'EN 12464-1'),
  'rehearsal-room': remembered(300, null, 'EN 12464-1'),
  foyer: remembered(200, null, 'EN 12464-1'),
  'gallery-sensitive': row(50, null, 'museum practice, highly sensitive objects'),
  'gallery-moderate': row(200, null, 'Thomson, The Museum Environment'),
  'living-room-evening': row(50, null, 'common encyclopaedic figure; 50 to 150 lx is common practice'),
  'escape-lighting': remembered(1, null, 'EN 1838, least on the centre line'),
} as const satisfies Record<string, RoomRow>;

export type RoomTypeId = keyof typeof ROOM_TYPES;

/** Lamps that can hang in a room; their ripple is told in `light/mains-lamp.ts`. */
export const ROOM_LAMPS = [
  'incandescent',
  'halogen',
  'fluorescent-magnetic',
  'compact-magnetic',
  'compact-electronic',
  'metal-halide',
  'sodium-high-pressure',
  'led-smooth',
  'led-poor',
  'led-rectified',
] as const;
export type RoomLampId = (typeof ROOM_LAMPS)[number];

function row(lux: Lux, modifiedLux: Lux | null, source: string): RoomRow {
  return { lux, modifiedLux, fromMemory: false, source };
}

function remembered(lux: Lux, modifiedLux: Lux | null, source: string): RoomRow {
  return { lux, modifiedLux, fromMemory: true, source };
}
