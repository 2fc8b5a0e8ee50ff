import { describe, expect, it } from 'vitest';
import { CameraWatch } from '../../src/light/camera-watch.ts';
import { cameraAlias } from '../../src/light/mains-lamp.ts';

/** Two patches over three seconds at 30 frames a second. */
function watched(a: (t: number) => number, b: (t: number) => number, rate = 30) {
  const watch = new CameraWatch();
  for (let i = 0; i < 3 * rate; i++) {
    const seconds = i / rate;
    watch.take({ seconds, luminance: { A: a(seconds), B: b(seconds) } });
  }
  return watch.findings;
}

const steady = () => 0.2;

describe('what the camera gives away', () => {
  it('says nothing before it has seen enough', () => {
    expect(new CameraWatch().findings).toEqual({ frameRate: null, ripple: 0, drifting: false });
  });

  it('measures the frame rate', () => {
    expect(watched(steady, steady, 25).frameRate).toBeCloseTo(25, 6);
  });

  it('sees a lamp’s ripple as the frames alias it (100 Hz at 30 frames a second is 10 Hz)', () => {
    const alias = cameraAlias(100, 30);
    expect(alias).toBe(10);
    const rippled = (t: number) => 0.2 * (1 + 0.1 * Math.sin(2 * Math.PI * alias * t + 0.4));
    expect(watched(rippled, steady).ripple).toBeGreaterThan(0.05);
    expect(watched(steady, steady).ripple).toBe(0);
  });

  it('takes a hand for a hand, not for ripple or drift', () => {
    const hand = (t: number) => (t > 1 && t < 1.6 ? 0.02 : 0.2);
    const findings = watched(hand, steady);
    expect(findings.ripple).toBeLessThan(0.01);
    expect(findings.drifting).toBe(false);
  });

  it('calls both patches moving slowly and alike a drift of the exposure', () => {
    const slow = (t: number) => 0.2 * Math.exp(0.1 * t);
    expect(watched(slow, (t) => 2 * slow(t)).drifting).toBe(true);
    expect(watched(slow, steady).drifting).toBe(false);
    expect(
      watched(
        (t) => 0.2 * Math.exp(0.02 * t),
        (t) => 0.2 * Math.exp(0.02 * t),
      ).drifting,
    ).toBe(false);
  });
});
