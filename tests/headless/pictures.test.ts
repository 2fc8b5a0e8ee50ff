/** The README's pictures: there, small, and written as PNG says. */
import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { PLACES } from '../../src/app/address.ts';
import { smallPng } from '../../src/headless/png.ts';

const root = new URL('../../', import.meta.url);

test('the README shows every place, each picture no larger than 120 kB', () => {
  const shown = [...readFileSync(new URL('README.md', root), 'utf8').matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(
    ([, file]) => file!,
  );
  expect(shown.toSorted()).toEqual(
    PLACES.filter((place) => place !== 'about')
      .map((place) => `tests/pictures/${place}-light.png`)
      .toSorted(),
  );
  for (const file of shown) expect(readFileSync(new URL(file, root)).length, file).toBeLessThan(120_000);
});

/** The chunks of a PNG by name. */
function chunksOf(png: Buffer): ReadonlyMap<string, Buffer> {
  const found = new Map<string, Buffer>();
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at);
    found.set(png.toString('latin1', at + 4, at + 8), png.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  return found;
}

test('a picture of few colours keeps each; of many, the commonest 256, and the others come to the nearest', () => {
  const width = 300;
  // Every grey, the second row white but for one pixel that is nearly so; 44 blues past the greys.
  const rgba = Buffer.alloc(2 * width * 4, 255);
  for (let x = 0; x < width; x += 1) rgba.set(x < 256 ? [x, x, x] : [0, 0, x - 44], 4 * x);
  rgba.set([255, 255, 254], 4 * (width + 7));
  const chunks = chunksOf(smallPng({ width, height: 2, rgba }));
  const head = chunks.get('IHDR')!;
  expect([head.readUInt32BE(0), head.readUInt32BE(4), head[8], head[9]]).toEqual([300, 2, 8, 3]);
  const palette = chunks.get('PLTE')!;
  const rows = inflateSync(chunks.get('IDAT')!);
  expect(rows.length).toBe(2 * (width + 1));
  const at = (x: number, y: number) => {
    const place = rows[y * (width + 1) + 1 + x]!;
    return [...palette.subarray(3 * place, 3 * place + 3)];
  };
  expect(palette.length).toBe(3 * 256);
  expect(at(100, 0)).toEqual([100, 100, 100]);
  expect(at(7, 1)).toEqual([255, 255, 255]);
  expect(at(299, 1)).toEqual([255, 255, 255]);
});
