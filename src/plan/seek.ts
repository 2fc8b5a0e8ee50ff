/** Searching along a trimmer: where a value is 0, and where it is highest. */

/**
 * Where a function that runs one way is 0, by the rule of Illinois, halved while it is steep. Where it has one sign
 * alone: the end at which it is nearer to 0.
 */
export function zeroOf(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa * fb >= 0) return Math.abs(fa) < Math.abs(fb) ? a : b;
  let side = 0;
  for (let turn = 0; turn < 60 && Math.abs(b - a) > 1e-7; turn++) {
    const steep = Math.abs(fa - fb) > 30;
    const x = steep ? (a + b) / 2 : (fa * b - fb * a) / (fa - fb);
    const fx = f(x);
    if (Math.abs(fx) < 1e-6) return x;
    if (fx * fb > 0) {
      b = x;
      fb = fx;
      if (side === -1) fa /= 2;
      side = -1;
    } else {
      a = x;
      fa = fx;
      if (side === 1) fb /= 2;
      side = 1;
    }
  }
  return (a + b) / 2;
}

/** Where a function with one hill is highest, by the golden section, to 1e-5. */
export function highest(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [x, y] = [b - golden * (b - a), a + golden * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  while (b - a > 1e-5) {
    if (fx < fy) {
      a = x;
      x = y;
      fx = fy;
      y = a + golden * (b - a);
      fy = f(y);
    } else {
      b = y;
      y = x;
      fy = fx;
      x = b - golden * (b - a);
      fx = f(x);
    }
  }
  return (a + b) / 2;
}
