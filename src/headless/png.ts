/**
 * A drawing as a small PNG: of its colours the 256 that cover most, every other as the nearest of them (PNG, third
 * edition, W3C 2025: one byte a pixel, colour type 3, no filter).
 */
import { crc32, deflateSync } from 'node:zlib';

/** Red, green, blue and opacity of each pixel, row by row; opacity is left out of account. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

const MOST = 256;
const INDEXED = 3;

export function smallPng({ width, height, rgba }: Pixels): Buffer {
  const counts = new Map<number, number>();
  const colours = Array.from({ length: width * height }, (_, i) => {
    const colour = (rgba[4 * i]! << 16) | (rgba[4 * i + 1]! << 8) | rgba[4 * i + 2]!;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
    return colour;
  });
  const palette = [...counts]
    .sort(([, a], [, b]) => b - a)
    .slice(0, MOST)
    .map(([colour]) => colour);
  const places = new Map(palette.map((colour, place) => [colour, place]));
  const rows = Buffer.alloc(height * (width + 1));
  colours.forEach((colour, i) => {
    const place = places.get(colour) ?? nearest(palette, colour);
    places.set(colour, place);
    rows[i + Math.floor(i / width) + 1] = place;
  });
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, INDEXED], 8);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', head),
    chunk('PLTE', Buffer.from(palette.flatMap(channels))),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

const channels = (colour: number): [number, number, number] => [
  colour >> 16,
  (colour >> 8) & 255,
  colour & 255,
];

function nearest(palette: readonly number[], colour: number): number {
  const [r, g, b] = channels(colour);
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  palette.forEach((one, place) => {
    const [r1, g1, b1] = channels(one);
    const away = (r - r1) ** 2 + (g - g1) ** 2 + (b - b1) ** 2;
    if (away >= least) return;
    least = away;
    best = place;
  });
  return best;
}

function chunk(kind: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(data.length, 0);
  frame.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([frame.subarray(0, 4), named, frame.subarray(4)]);
}
