/**
 * A person who tries everything, by a seed: nothing is complained of, nothing asked for outside the build, nothing kept
 * that does not read, nothing louder than set; everything can be taken back, and a reload goes on where it was.
 * A seed that fails is in the test's name; again: npx vitest run --mode soak-SEED tests/browser/random-user.test.ts, or
 * to be watched, by its address: npm run dev, then tests/browser/support/random-user.html?seed=SEED there.
 */
import { expect, inject, test } from 'vitest';
import { decodeText } from '../../src/design/decode.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { countOf, seedOf } from '../fuzz/count.ts';
import { oneBrowser, openPage, tapSound } from './support/browser.ts';
import {
  act,
  backAndForth,
  batchSeed,
  begin,
  designText,
  isThere,
  prepareUser,
  SINGLE_PRECISION,
  VISIT,
} from './support/random-user.ts';

const house = inject('house');
const browser = oneBrowser();

const sittings = countOf(20_000 / (VISIT.actions * VISIT.batches));
/** A seed that was named is tried alone. */
const isAlone = seedOf(0) === seedOf(1);
const visits = isAlone ? 1 : Math.ceil(sittings / VISIT.sittings);
const seeds = Array.from({ length: visits }, (_, i) => seedOf(1) + i);

test.each(seeds)(
  'whatever a person does, seed %i',
  async (seed) => {
    const uniform = uniformFrom(seed);
    const { page, complaints, requests, close } = await openPage(browser(), house.site, {
      prepare: async (unopened) => {
        await tapSound(unopened);
        await prepareUser(unopened);
      },
    });
    const asked = () => requests.filter((one) => !one.startsWith(house.site) && !/^(blob|data):/.test(one));
    for (let sitting = 0; sitting < Math.min(sittings, VISIT.sittings); sitting += 1) {
      await begin(page);
      for (let batch = 0; batch < VISIT.batches; batch += 1) {
        const { done, texts, loudest } = await act(page, batchSeed(uniform), VISIT.actions);
        const trail = `seed ${seed}, sitting ${sitting}, batch ${batch}:\n${done.join('\n')}`;
        expect(complaints, trail).toEqual([]);
        expect(asked(), trail).toEqual([]);
        for (const text of texts) expect(decodeText(text), trail).toMatchObject({ ok: true });
        expect(loudest, `loudest as a share of what is set, ${trail}`).toBeLessThanOrEqual(
          1 + SINGLE_PRECISION,
        );
      }
      const { same, steps } = await backAndForth(page);
      expect(same, `first and last design, ${steps} steps apart`).toEqual([true, true]);
      expect(steps).toBeGreaterThan(0);
      const before = await designText(page);
      await page.reload();
      await isThere(page);
      expect(JSON.parse(await designText(page)), 'after a reload').toEqual(JSON.parse(before));
    }
    await close();
  },
  600_000,
);

test('a visit is played again by its address', async () => {
  const address = `${house.sources}tests/browser/support/random-user.html?seed=1&sitting=${VISIT.sittings - 1}`;
  const { page, close } = await openPage(browser(), address, { allow: [/Lit is in dev mode/] });
  await page.waitForFunction(() => document.title === 'The visit is over');
  const told = await page.locator('pre').allTextContents();
  expect(told.map((batch) => batch.split('\n').length)).toEqual(Array(VISIT.batches).fill(1 + VISIT.actions));
  await close();
});
