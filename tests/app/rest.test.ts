import { describe, expect, it } from 'vitest';
import { FADE_AFTER, Rest } from '../../src/app/rest.ts';

const lux = (value: number) => ({ A: value, B: value });

describe('when a steady tone fades', () => {
  it('is due after twenty seconds in which nothing was done and the light stood still', () => {
    const rest = new Rest(0);
    for (let t = 0; t < FADE_AFTER; t += 1 / 30) rest.see(t, lux(300), false);
    expect(rest.isDue(FADE_AFTER - 0.1)).toBe(false);
    expect(rest.isDue(FADE_AFTER + 0.1)).toBe(true);
  });

  it('waits anew after a touch, a gate that changed, or light that moved', () => {
    const acts: ((rest: Rest) => void)[] = [
      (rest) => rest.touch(15),
      (rest) => rest.see(15, lux(300), true),
      (rest) => rest.see(15, lux(200), false),
    ];
    for (const act of acts) {
      const rest = new Rest(0);
      rest.see(0, lux(300), false);
      act(rest);
      expect(rest.isDue(21)).toBe(false);
      expect(rest.isDue(35.1)).toBe(true);
    }
  });

  it('takes a camera’s small unrest for standing light, but not a slow dusk', () => {
    const rest = new Rest(0);
    for (let t = 0; t <= 25; t += 1 / 30) rest.see(t, lux(300 * (1 + 0.03 * Math.sin(40 * t))), false);
    expect(rest.isDue(25)).toBe(true);
    const dusk = new Rest(0);
    for (let t = 0; t <= 25; t += 1 / 30) dusk.see(t, lux(300 * Math.exp(-t / 20)), false);
    expect(dusk.isDue(25)).toBe(false);
  });
});
