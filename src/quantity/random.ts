/** Seeded random numbers: the same seed gives the same sequence everywhere. */

/** A source of uniform numbers in [0, 1). Chris Doty-Humphrey's small fast counter generator (public domain). */
export function uniformFrom(seed: number): () => number {
  let a = seed | 0;
  let b = 0x9e3779b9 | 0;
  let c = 0x243f6a88 | 0;
  let counter = 1;
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return (sum >>> 0) / 0x1_0000_0000;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}

/** A source of independent Gaussian numbers, mean 0, standard deviation 1 (Box and Muller). */
export function gaussianFrom(seed: number): () => number {
  const uniform = uniformFrom(seed);
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
