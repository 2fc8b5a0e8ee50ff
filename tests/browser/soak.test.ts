/**
 * An hour at the page, one action a second, as fast as they can be done: turning, choosing, going about and taking back
 * leave no memory, no elements and no listeners behind.
 */
import { expect, inject, test } from 'vitest';
import { PLACES } from '../../src/app/address.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { countOf, seedOf } from '../fuzz/count.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { act, prepareUser, settle } from './support/random-user.ts';

const house = inject('house');
const browser = oneBrowser();

const LOOKS = 72;
const ACTIONS = 3600 / LOOKS;
/** The same actions so many times over. */
const ROUNDS = 8;
/** A short stretch says nothing of a slow leak: the whole hour or none of it. */
const isWhole = countOf(LOOKS) === LOOKS;

/**
 * What the page may have more of after each round. What is drawn for the first time, whenever it comes, stays: one step
 * that the median of all rounds does not see, as it sees what grows from round to round. A listener for each time the
 * sound is switched on is too many. The heap grows by what the engine compiles on, nine tenths of it by its snapshots.
 */
const ALLOWED = { JSHeapUsedSize: 375_000, Nodes: 22, JSEventListeners: 1 } as const;
const MEASURED = Object.keys(ALLOWED) as (keyof typeof ALLOWED)[];
type Measured = Readonly<Record<keyof typeof ALLOWED, number>>;

const medianOf = (numbers: readonly number[]): number =>
  numbers.toSorted((one, other) => one - other)[Math.floor(numbers.length / 2)]!;

test.runIf(isWhole)(
  'an hour at the page leaves nothing behind',
  async () => {
    const { page, close } = await openPage(browser(), house.site, { prepare: prepareUser });
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Performance.enable');
    const measure = async (): Promise<Measured> => {
      await settle(page);
      await devtools.send('HeapProfiler.collectGarbage');
      const { metrics } = await devtools.send('Performance.getMetrics');
      const value = (wanted: string) => metrics.find(({ name }) => name === wanted)!.value;
      return Object.fromEntries(MEASURED.map((name) => [name, value(name)])) as Measured;
    };
    // What is loaded or drawn for the first time stays.
    for (const place of PLACES) {
      await page.evaluate((name) => {
        location.hash = `#/${name}`;
      }, place);
      await page.locator('main h2').first().waitFor();
    }
    const uniform = uniformFrom(seedOf(1));
    const seeds = Array.from({ length: LOOKS / ROUNDS }, () => Math.floor(uniform() * 2 ** 31));
    const looks: Measured[] = [];
    for (let look = 0; look < LOOKS; look += 1) {
      await act(page, seeds[look % seeds.length]!, ACTIONS, 'calm');
      looks.push(await measure());
    }
    for (const name of MEASURED) {
      const usual = Array.from({ length: ROUNDS }, (_, round) =>
        medianOf(looks.slice(round * seeds.length, (round + 1) * seeds.length).map((one) => one[name])),
      );
      const grown = usual.slice(1).map((value, i) => value - usual[i]!);
      expect(medianOf(grown), `more ${name} from round to round, seed ${seedOf(1)}`).toBeLessThan(
        ALLOWED[name],
      );
    }
    await close();
  },
  1_200_000,
);
