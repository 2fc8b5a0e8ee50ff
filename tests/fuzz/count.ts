/** How much of a seeded search is done: all of it in `npm run soak`, a hundredth in `npm test`. */

const isSoak = process.env['SOAK'] === '1';

export const countOf = (full: number): number => (isSoak ? full : Math.ceil(full / 100));

/** The seed of a search: the usual one, or the one a failure named (`npm run soak -- --user SEED`). */
export const seedOf = (usual: number): number => Number(process.env['SOAK_SEED'] ?? usual);
