/**
 * A net's voltage as samples, without aliases to speak of: exact means over eighths of a sample, then a windowed sinc
 * down to the rate. Edges fall where they fall; nothing is rounded to a sample.
 */
import type { Hertz, Seconds, Volts } from '../../quantity/units.ts';
import type { Segment } from './linear.ts';

const PARTS = 8;
/** Samples to either side that the sinc reaches, and its corner as a share of half the rate. */
const REACH = 16;
const CORNER = 0.9;

/** Samples from one time to another, `rate` a second; the first stands `REACH` samples after the beginning. */
export function sampledVolts(
  segments: readonly Segment[],
  node: number,
  from: Seconds,
  until: Seconds,
  rate: Hertz,
): Float32Array<ArrayBuffer> {
  const means = meansOf(segments, node, from, until, rate * PARTS);
  const reach = REACH * PARTS;
  const weights = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => {
    const x = (Math.PI * CORNER * (i - reach)) / PARTS;
    const window =
      0.42 +
      0.5 * Math.cos((Math.PI * (i - reach)) / reach) +
      0.08 * Math.cos((2 * Math.PI * (i - reach)) / reach);
    return (x === 0 ? 1 : Math.sin(x) / x) * window;
  });
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const count = Math.max(0, Math.floor(means.length / PARTS) - 2 * REACH);
  const out = new Float32Array(count);
  for (let n = 0; n < count; n++) {
    let sum = 0;
    for (let i = 0; i < weights.length; i++) sum += weights[i]! * means[n * PARTS + i]!;
    out[n] = sum / whole;
  }
  return out;
}

/** Mean over each step of a net, exactly. */
function meansOf(
  segments: readonly Segment[],
  node: number,
  from: Seconds,
  until: Seconds,
  steps: Hertz,
): Float64Array {
  const count = Math.floor((until - from) * steps);
  const means = new Float64Array(count);
  for (const segment of segments) {
    const end = segment.start + segment.seconds;
    for (let n = Math.max(0, Math.floor((segment.start - from) * steps)); n < count; n++) {
      const [begin, stop] = [from + n / steps, from + (n + 1) / steps];
      if (begin >= end) break;
      const [a, b] = [Math.max(0, begin - segment.start), Math.min(segment.seconds, stop - segment.start)];
      if (b > a) means[n]! += (segment.integral(node, a, b) * steps) as Volts;
    }
  }
  return means;
}
