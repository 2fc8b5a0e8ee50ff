/** What a stretch of sound is made of. */

/** Amplitude |c| of one frequency: the sum over the samples, each turned back by that frequency, over their number. */
export function lineAt(samples: ArrayLike<number>, cyclesPerSample: number): number {
  let re = 0;
  let im = 0;
  for (let i = 0; i < samples.length; i++) {
    const angle = 2 * Math.PI * ((cyclesPerSample * i) % 1);
    re += samples[i]! * Math.cos(angle);
    im -= samples[i]! * Math.sin(angle);
  }
  return Math.hypot(re, im) / samples.length;
}

/** Blackman–Harris window of four terms (Harris 1978, −92 dB side lobes), then |FFT|; half the bins. */
export function windowedSpectrum(samples: ArrayLike<number>): Float64Array {
  const n = samples.length;
  const re = Float64Array.from(samples, (value, i) => {
    const x = (2 * Math.PI * i) / n;
    const window = 0.35875 - 0.48829 * Math.cos(x) + 0.14128 * Math.cos(2 * x) - 0.01168 * Math.cos(3 * x);
    return value * window;
  });
  const im = new Float64Array(n);
  transform(re, im);
  return Float64Array.from({ length: n / 2 }, (_, i) => Math.hypot(re[i]!, im[i]!));
}

/** Fourier transform in place; the length is a power of two. */
function transform(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j]!, re[i]!];
      [im[i], im[j]] = [im[j]!, im[i]!];
    }
  }
  for (let size = 2; size <= n; size *= 2) {
    for (let k = 0; k < size / 2; k++) {
      const c = Math.cos((2 * Math.PI * k) / size);
      const s = -Math.sin((2 * Math.PI * k) / size);
      for (let a = k; a < n; a += size) {
        const b = a + size / 2;
        const r = re[b]! * c - im[b]! * s;
        const q = re[b]! * s + im[b]! * c;
        re[b] = re[a]! - r;
        im[b] = im[a]! - q;
        re[a]! += r;
        im[a]! += q;
      }
    }
  }
}
