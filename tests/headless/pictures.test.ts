/** The README's pictures: there, and small. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PLACES } from '../../src/app/address.ts';

const root = new URL('../../', import.meta.url);

test('the README shows every place, each picture no larger than 120 kB', () => {
  const shown = [...readFileSync(new URL('README.md', root), 'utf8').matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(
    ([, file]) => file!,
  );
  expect(shown.toSorted()).toEqual(
    PLACES.filter((place) => place !== 'about')
      .map((place) => `tests/pictures/${place}-light.webp`)
      .toSorted(),
  );
  for (const file of shown) expect(readFileSync(new URL(file, root)).length, file).toBeLessThan(120_000);
});
