import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type CameraFrame, type CameraSession, openCamera } from '../../src/light/camera.device.ts';

type Settings = Record<string, string | number>;

/** A camera track that keeps what it is told as far as it is able, and forgets a wish when the next one comes. */
class Track extends EventTarget {
  readonly kind = 'video';
  muted = false;
  isStopped = false;
  readonly wishes: Settings[] = [];
  readonly able: Record<string, string[]>;
  readonly takes: (wish: Settings) => boolean;
  settings: Settings;
  constructor(
    able: Record<string, string[]>,
    settings: Settings,
    takes: (wish: Settings) => boolean = () => true,
  ) {
    super();
    this.able = able;
    this.settings = settings;
    this.takes = takes;
  }
  getCapabilities() {
    return this.able;
  }
  getSettings() {
    return this.settings;
  }
  async applyConstraints({ advanced }: { advanced: Settings[] }) {
    const [wish] = advanced;
    if (wish === undefined) throw new Error('an empty wish');
    this.wishes.push(wish);
    if (!this.takes(wish)) throw new DOMException('', 'OverconstrainedError');
    this.settings = { ...this.settings, ...wish };
  }
  stop() {
    this.isStopped = true;
  }
}

type NewFrame = (now: number, metadata: { captureTime?: number }) => void;

/** Stands in for the picture element: a frame comes when the test says so. */
class Video extends EventTarget {
  plays = 0;
  asked: NewFrame | null = null;
  srcObject: unknown = null;
  async play() {
    this.plays += 1;
  }
  requestVideoFrameCallback(callback: NewFrame) {
    this.asked = callback;
    return 1;
  }
  cancelVideoFrameCallback() {
    this.asked = null;
  }
  frame(metadata: { captureTime?: number } = {}) {
    const { asked } = this;
    this.asked = null;
    asked?.(performance.now(), metadata);
  }
}

let video: Video;
let listed: { kind: string; deviceId: string }[];
let devices: EventTarget;

beforeEach(() => {
  video = new Video();
  const context = {
    drawImage: () => {},
    getImageData: (_x: number, _y: number, width: number, height: number) => ({ width, height }),
  };
  const canvas = { getContext: () => context };
  vi.stubGlobal('document', { createElement: (name: string) => (name === 'video' ? video : canvas) });
  listed = [{ kind: 'videoinput', deviceId: 'one' }];
  devices = Object.assign(new EventTarget(), { enumerateDevices: async () => listed });
  vi.stubGlobal('navigator', { mediaDevices: devices });
});

afterEach(() => {
  vi.unstubAllGlobals();
});

async function opened(track: Track, now?: () => number): Promise<CameraSession> {
  const stream = { getTracks: () => [track], getVideoTracks: () => [track] } as unknown as MediaStream;
  const session = await openCamera({ getUserMedia: async () => stream, ...(now ? { now } : {}) });
  if (session.kind !== 'open') throw new Error(session.detail);
  return session;
}

const BOTH = { exposureMode: ['manual', 'continuous'], whiteBalanceMode: ['manual', 'continuous'] };
const AUTOMATIC = { deviceId: 'one', exposureMode: 'continuous', whiteBalanceMode: 'continuous' };

describe('holding the exposure', () => {
  test('keeps the values the automatic found, and unlocks again', async () => {
    const track = new Track(BOTH, { ...AUTOMATIC, exposureTime: 156, colorTemperature: 4100 });
    const session = await opened(track);
    expect(session.locked).toEqual({ exposure: 'automatic', whiteBalance: 'automatic' });
    expect(await session.lock()).toEqual({ exposure: 'locked', whiteBalance: 'locked' });
    expect(track.wishes).toEqual([
      { exposureMode: 'manual', whiteBalanceMode: 'manual', exposureTime: 156, colorTemperature: 4100 },
    ]);
    expect(session.exposure).toEqual({ time: 156, iso: null });
    expect(await session.unlock()).toEqual({ exposure: 'automatic', whiteBalance: 'automatic' });
  });

  test('asks for the modes alone where the camera refuses its own values', async () => {
    const track = new Track(BOTH, { ...AUTOMATIC, exposureTime: 157 }, (wish) => !('exposureTime' in wish));
    expect((await (await opened(track)).lock()).exposure).toBe('locked');
    expect(track.wishes.at(-1)).toEqual({ exposureMode: 'manual', whiteBalanceMode: 'manual' });
  });

  test('says automatic when the camera nods and does nothing', async () => {
    const track = new Track(BOTH, AUTOMATIC);
    track.applyConstraints = async () => {};
    expect(await (await opened(track)).lock()).toEqual({ exposure: 'automatic', whiteBalance: 'automatic' });
  });

  test('says unknown, and asks for nothing, where the browser tells nothing', async () => {
    const track = new Track({}, { deviceId: 'one' });
    expect(await (await opened(track)).lock()).toEqual({ exposure: 'unknown', whiteBalance: 'unknown' });
    expect(track.wishes).toEqual([]);
  });

  test('holds the one of the two that can be held', async () => {
    const track = new Track({ exposureMode: ['manual'], whiteBalanceMode: ['continuous'] }, AUTOMATIC);
    expect(await (await opened(track)).lock()).toEqual({ exposure: 'locked', whiteBalance: 'automatic' });
  });
});

describe('frames', () => {
  test('come small, stamped with the time of capture where it is told, and never backwards', async () => {
    let now = 10;
    const session = await opened(new Track({}, {}), () => now);
    const frames: CameraFrame[] = [];
    session.onFrame((frame) => frames.push(frame));
    video.frame();
    now = 10.05;
    video.frame({ captureTime: performance.now() - 20 });
    video.frame({ captureTime: performance.now() - 900 });
    expect(frames.map(({ picture }) => [picture.width, picture.height])).toEqual(Array(3).fill([160, 120]));
    expect(frames[0]?.seconds).toBe(10);
    expect(frames[1]?.seconds).toBeGreaterThanOrEqual(10);
    expect(frames[1]?.seconds).toBeLessThanOrEqual(10.03);
    expect(frames[2]?.seconds).toBe(frames[1]?.seconds);
  });

  test('stop for who has left, and for all when the camera is switched off', async () => {
    const track = new Track({}, {});
    const session = await opened(track);
    const one = vi.fn<() => void>();
    const other = vi.fn<() => void>();
    const leave = session.onFrame(one);
    session.onFrame(other);
    video.frame();
    leave();
    video.frame();
    session.stop();
    video.frame();
    expect(one).toHaveBeenCalledTimes(1);
    expect(other).toHaveBeenCalledTimes(2);
    expect(track.isStopped).toBe(true);
    expect(video.srcObject).toBeNull();
  });

  test('go on when the picture is taken off the page, but not after the camera is switched off', async () => {
    const session = await opened(new Track({}, {}));
    expect(video.plays).toBe(1);
    video.dispatchEvent(new Event('pause'));
    expect(video.plays).toBe(2);
    session.stop();
    video.dispatchEvent(new Event('pause'));
    expect(video.plays).toBe(2);
  });
});

describe('a camera that goes away', () => {
  /** Resolves with the cause, so that no test has to wait a fixed time. */
  const endOf = (session: CameraSession) => new Promise((resolve) => session.onEnded(resolve));

  test('is unplugged when its track ends and the device is gone', async () => {
    const track = new Track({}, { deviceId: 'one' });
    const end = endOf(await opened(track));
    listed = [{ kind: 'videoinput', deviceId: 'two' }];
    track.dispatchEvent(new Event('ended'));
    expect(await end).toBe('unplugged');
    expect(track.isStopped).toBe(true);
  });

  test.each([['one'], ['']])(
    'is withdrawn when its track ends and the list still shows “%s”',
    async (deviceId) => {
      const track = new Track({}, { deviceId: 'one' });
      const end = endOf(await opened(track));
      listed = [{ kind: 'videoinput', deviceId }];
      track.dispatchEvent(new Event('ended'));
      expect(await end).toBe('withdrawn');
    },
  );

  test('is noticed by the list of devices alone', async () => {
    const watching = vi.spyOn(devices, 'addEventListener');
    const end = endOf(await opened(new Track({}, { deviceId: 'one' })));
    await vi.waitFor(() => expect(watching).toHaveBeenCalled());
    listed = [];
    devices.dispatchEvent(new Event('devicechange'));
    expect(await end).toBe('unplugged');
  });

  test('tells when it is blanked and when the picture is back', async () => {
    const track = new Track({}, {});
    const session = await opened(track);
    const told: boolean[] = [];
    session.onMuted((isMuted) => told.push(isMuted));
    track.muted = true;
    track.dispatchEvent(new Event('mute'));
    expect(session.isMuted).toBe(true);
    track.dispatchEvent(new Event('unmute'));
    expect(told).toEqual([true, false]);
  });
});
