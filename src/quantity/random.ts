/** Seeded random numbers: the same seed gives the same sequence everywhere. */

/** A source of uniform numbers in [0, 1). Chris Doty-Humphrey's small fast counter generator (public domain). */
export function uniformFrom(seed: number): () => number {
  // a, b, c and the counter. In an array of whole numbers, as a closure's own variables would be boxed anew at each
  // draw, and draws happen on the audio thread.
  const state = Int32Array.of(seed, 0x9e3779b9, 0x243f6a88, 1);
  const next = () => {
    const b = state[1]!;
    const c = state[2]!;
    const counter = state[3]!;
    const sum = (state[0]! + b + counter) | 0;
    state[3] = counter + 1;
    state[0] = b ^ (b >>> 9);
    state[1] = c + (c << 3);
    state[2] = ((c << 21) | (c >>> 11)) + sum;
    return (sum >>> 0) / 0x1_0000_0000;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}

/** A source of independent Gaussian numbers, mean 0, standard deviation 1 (Box and Muller). */
export function gaussianFrom(seed: number): () => number {
  const uniform = uniformFrom(seed);
  /** The second number of a pair, and NaN once it has been given away. */
  const spare = Float64Array.of(Number.NaN);
  return () => {
    const kept = spare[0]!;
    if (!Number.isNaN(kept)) {
      spare[0] = Number.NaN;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare[0] = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
