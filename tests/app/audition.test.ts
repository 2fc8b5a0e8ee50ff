/** What is heard instead of the design at hand: begun, followed through, and given back. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Audition, type AuditionSink, type Piece } from '../../src/app/audition.ts';
import { pairOf } from '../../src/quantity/units.ts';
import type { Stereo } from '../../src/sound/chorus.ts';
import type { EngineSettings } from '../../src/sound/settings.ts';
import { designWith, pitchTurned } from '../circuit/building.ts';
import { settingsFrom } from '../sound/playing.ts';

const turned = (rotation: number) => designWith({ A: pitchTurned('A', rotation) });
const steady: Piece = { kind: 'steady', design: turned(0.2) };

function heard(allowed = true) {
  const settings: (EngineSettings | null)[] = [];
  const stereo: (Stereo | null)[] = [];
  const sink: AuditionSink = {
    on: () => Promise.resolve(allowed),
    settings: (one) => void settings.push(one),
    stereo: (one) => void stereo.push(one),
    missing: () => expect.unreachable(),
  };
  return { audition: new Audition(sink), settings, stereo };
}

/** Charging resistance of voice A: tells which design it is. */
const ohms = (settings: EngineSettings | null | undefined) => settings?.astables.A.chargeOhms ?? null;

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('a recording is heard in place of the live instrument, and ends by itself', async () => {
  const { audition, settings, stereo } = heard();
  const channel = new Float32Array(8);
  const sound = { left: channel, right: channel, sampleRate: 48_000 };
  await audition.play('mistake', { kind: 'recorded', design: turned(0.2), sound, seconds: 8 });
  expect(pairOf((voice) => settings[0]!.gates[voice].releases)).toEqual({ A: false, B: false });
  expect(stereo).toEqual([sound]);
  vi.advanceTimersByTime(7999);
  expect(audition.playing.current?.id).toBe('mistake');
  vi.advanceTimersByTime(1);
  expect(audition.playing.current).toBeNull();
  expect([settings.at(-1), stereo.at(-1)]).toEqual([null, null]);
});

describe('one design', () => {
  test('sounds whatever the light, until it is stopped: then the design at hand is back', async () => {
    const { audition, settings } = heard();
    await audition.play('candidate', steady);
    expect(audition.playing.current).toMatchObject({ id: 'candidate', piece: steady });
    expect(pairOf((voice) => settings[0]!.gates[voice].releases)).toEqual({ A: true, B: true });
    expect(pairOf((voice) => settings[0]!.gates[voice].silences)).toEqual({ A: false, B: false });
    expect(ohms(settings[0])).toBe(ohms(settingsFrom(turned(0.2))));
    audition.stop();
    expect(audition.playing.current).toBeNull();
    expect(settings.at(-1)).toBeNull();
    audition.stop();
    expect(settings).toHaveLength(2);
  });

  test('with one voice wanted leaves the other silent', async () => {
    const { audition, settings } = heard();
    await audition.play('one', { ...steady, only: 'B' });
    expect(pairOf((voice) => settings[0]!.gates[voice].releases)).toEqual({ A: false, B: true });
  });

  test('is not there when the sound cannot be switched on', async () => {
    const { audition, settings } = heard(false);
    await audition.play('candidate', steady);
    expect(audition.playing.current).toBeNull();
    expect(settings).toEqual([null]);
  });

  test('stopped while the sound was still starting does not come', async () => {
    const { audition, settings } = heard();
    const coming = audition.play('candidate', steady);
    audition.stop();
    await coming;
    expect(settings).toEqual([null]);
  });

  test('gives way to the next', async () => {
    const { audition, settings } = heard();
    await audition.play('first', steady);
    await audition.play('second', { kind: 'steady', design: turned(0.8) });
    expect(audition.playing.current?.id).toBe('second');
    expect(ohms(settings.at(-1))).toBe(ohms(settingsFrom(turned(0.8))));
  });
});

describe('several in turn', () => {
  const rotations = [0, 0.5, 1];
  const turns: Piece = {
    kind: 'turns',
    steps: rotations.map((rotation) => ({ design: turned(rotation), seconds: 0.5 })),
  };

  test('are heard for as long as each is given, then the design at hand is back', async () => {
    const { audition, settings } = heard();
    await audition.play('sweep', turns);
    const steps: (number | undefined)[] = [];
    for (let half = 0; half < rotations.length; half++) {
      steps.push(audition.playing.current?.step);
      await vi.advanceTimersByTimeAsync(500);
    }
    expect(steps).toEqual([1, 2, 3]);
    expect(settings.map(ohms)).toEqual([
      ...rotations.map((rotation) => ohms(settingsFrom(turned(rotation)))),
      null,
    ]);
    expect(audition.playing.current).toBeNull();
  });

  test('keep to the clock where timers come late, as in a page that is not looked at', async () => {
    const { audition, settings } = heard();
    const { setTimeout: whole } = globalThis;
    vi.stubGlobal('setTimeout', (go: () => void, milliseconds: number) =>
      whole(go, Math.max(1000, milliseconds)),
    );
    await audition.play('sweep', turns);
    await vi.advanceTimersByTimeAsync(1000);
    expect(audition.playing.current?.step).toBe(3);
    await vi.advanceTimersByTimeAsync(1000);
    expect(audition.playing.current).toBeNull();
    expect(settings.map(ohms)).toEqual([ohms(settingsFrom(turned(0))), ohms(settingsFrom(turned(1))), null]);
  });

  test('stopped half way do not go on', async () => {
    const { audition, settings } = heard();
    await audition.play('sweep', turns);
    audition.stop();
    await vi.advanceTimersByTimeAsync(5000);
    expect(settings).toHaveLength(2);
  });
});

describe('many at once', () => {
  const designs = [turned(0.1), turned(0.5), turned(0.9)];
  const together: Piece = { kind: 'together', designs, seconds: 1 };

  test('are made ready one by one while the live voices rest, played, and gone when they are over', async () => {
    const { audition, settings, stereo } = heard();
    const playing = audition.play('bench', together);
    await vi.dynamicImportSettled();
    await vi.runAllTimersAsync();
    await playing;
    expect(pairOf((voice) => settings[0]!.gates[voice].releases)).toEqual({ A: false, B: false });
    expect(stereo[0]!.left).toHaveLength(48_000);
    expect(audition.playing.current).toBeNull();
    expect(stereo.at(-1)).toBeNull();
    expect(settings.at(-1)).toBeNull();
  });

  test('stopped while they are made are never played', async () => {
    const { audition, stereo } = heard();
    const playing = audition.play('bench', together);
    await Promise.resolve();
    audition.stop();
    await vi.runAllTimersAsync();
    await playing;
    expect(stereo.filter((one) => one !== null)).toEqual([]);
  });
});
