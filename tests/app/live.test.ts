import { describe, expect, it } from 'vitest';
import { Live, type LiveFrame } from '../../src/app/live.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { FRAME, FRAME_LENGTH, settingsOf } from '../../src/sound/settings.ts';

const settings = settingsOf(DEFAULT_DESIGN, instrumentOf(DEFAULT_DESIGN));
const bright = { A: 300, B: 300 };

function following(seconds: number, act?: (live: Live, now: number) => void) {
  const live = new Live(settings, { kind: 'steady', lux: bright });
  const frames: LiveFrame[] = [];
  live.subscribe((frame) => frames.push(frame));
  for (let frame = 0; frame <= seconds * 60; frame++) {
    act?.(live, frame / 60);
    live.advance(frame / 60);
  }
  return frames;
}

describe('the page follows the gates without sound', () => {
  it('both voices sound in the light they are set for', () => {
    expect(following(0.5).at(-1)!.sounding).toEqual({ A: true, B: true });
  });

  it('a hand over sensor B silences B alone, after the cell’s lag', () => {
    const frames = following(2, (live, now) => now === 1 && live.aim({ A: 300, B: 10 }, 0.02));
    const fell = frames.find((f) => !f.sounding.B)!;
    expect(fell.time).toBeGreaterThan(1);
    expect(fell.time).toBeLessThan(1.2);
    expect(frames.every((f) => f.sounding.A)).toBe(true);
    expect(fell.changed).toBe(true);
    expect(frames.at(-1)!.shown.B.kind).toBe('silent');
  });

  it('a page that slept for an hour goes on at once, without living the hour through', () => {
    const live = new Live(settings, { kind: 'steady', lux: bright });
    live.advance(0);
    live.advance(3600);
    live.aim({ A: 1, B: 300 }, 0.02);
    for (let i = 1; i <= 60; i++) live.advance(3600 + i / 60);
    expect(live.latest!.sounding).toEqual({ A: false, B: true });
  });

  it('a frame of the audio thread is told as it came', () => {
    const live = new Live(settings, { kind: 'steady', lux: bright });
    const frame = new Float64Array(FRAME_LENGTH);
    frame[FRAME.luxA] = 42;
    frame[FRAME.nodeB] = 2.5;
    frame[FRAME.soundingB] = 1;
    frame[FRAME.changesB] = 3;
    frame[FRAME.peak] = 0.4;
    live.take(10, frame);
    expect(live.latest).toMatchObject({
      time: 10,
      lux: { A: 42, B: 0 },
      node: { A: 0, B: 2.5 },
      sounding: { A: false, B: true },
      changed: true,
      peak: 0.4,
    });
  });
});
