/**
 * How much of a seeded search is done: all of it in `npm run soak`, a hundredth in `npm test`, or one seed alone
 * (`--mode soak-SEED`; `vite.config.ts` turns the mode into these variables).
 */

export const isSoak = process.env['SOAK'] === '1';

/** The only seed to try, as a failure named it; null = all there are. */
const ONLY = process.env['SOAK_SEED'] === undefined ? null : Number(process.env['SOAK_SEED']);

export const countOf = (full: number): number => (isSoak ? full : Math.ceil(full / 100));

export const seedOf = (usual: number): number => ONLY ?? usual;

/** Tries one seed after another from `first` on; a failure names the seed that makes it alone. */
export async function each(full: number, first: number, one: (seed: number) => unknown): Promise<void> {
  const seeds = ONLY === null ? { from: first, count: countOf(full) } : { from: ONLY, count: 1 };
  for (let seed = seeds.from; seed < seeds.from + seeds.count; seed++) {
    try {
      await one(seed);
    } catch (cause) {
      const why = cause instanceof Error ? cause.message : cause;
      throw new Error(`seed ${seed} (again: --mode soak-${seed}): ${why}`, { cause });
    }
  }
}
