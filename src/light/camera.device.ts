/**
 * The webcam: asks for it, holds its exposure where the browser can, and hands over one small picture per
 * frame. Pictures live in one reused canvas of 160 × 120 and are neither stored nor sent. Never asks for sound.
 *
 * Order of use: open, wait until the exposure has settled (`settlingOf`), `lock`, then take the calibration.
 * The caller stops the session when its place is left, also when that happens while the question is open.
 */
import type { Seconds } from '../quantity/units.ts';
import type { CameraExposure } from './camera.ts';
import { type DeviceRefusal, deviceRefusal } from './device-refusal.ts';

export type RefusalKind = DeviceRefusal | 'insecure';

/** No camera, and why. `detail` holds the browser's own words, for a report rather than for the screen. */
export interface CameraRefusal {
  readonly kind: RefusalKind;
  readonly detail: string;
}

/** Read back from the camera, not hoped for: 'unknown' where the browser tells nothing. */
export type LockState = 'locked' | 'automatic' | 'unknown';

export interface CameraLocks {
  readonly exposure: LockState;
  readonly whiteBalance: LockState;
}

export interface CameraFrame {
  /** When the camera took it, on the clock given to `openCamera`; never earlier than the frame before. */
  readonly seconds: Seconds;
  readonly picture: ImageData;
}

/** 'unplugged' = the device is gone; 'withdrawn' = it is there, the browser or a person took it back. */
export type CameraEnd = 'unplugged' | 'withdrawn';

export interface CameraSession {
  readonly kind: 'open';
  readonly stream: MediaStream;
  /** Muted and inline, already playing; put it on the page to show the picture. */
  readonly video: HTMLVideoElement;
  readonly locked: CameraLocks;
  /** Blanked by the system or by a switch on the camera. */
  readonly isMuted: boolean;
  /** Exposure as the camera tells it now. */
  readonly exposure: CameraExposure;
  /** Holds exposure and white balance where they are, and tells what the camera then says it does. */
  lock(): Promise<CameraLocks>;
  /** Back to automatic, so that a new level can be taken in new light. */
  unlock(): Promise<CameraLocks>;
  /** Each new frame; none while the page is hidden. Returns the way to leave. */
  onFrame(callback: (frame: CameraFrame) => void): () => void;
  /** Once, when the camera ends by itself; the session is stopped by then. */
  onEnded(callback: (cause: CameraEnd) => void): () => void;
  /** When `isMuted` changes. */
  onMuted(callback: (isMuted: boolean) => void): () => void;
  /** When the picture has other sides than before: the device was turned. */
  onTurned(callback: () => void): () => void;
  /** Switches the camera off for good. */
  stop(): void;
}

export interface CameraOptions {
  /** Another source of the stream, such as a canvas in a test. */
  readonly getUserMedia?: (constraints: MediaStreamConstraints) => Promise<MediaStream>;
  /** Seconds on the clock that frames are stamped with; the page's own unless given. */
  readonly now?: () => Seconds;
}

const WANTED: MediaStreamConstraints = {
  audio: false,
  video: { width: 320, height: 240, frameRate: 30 },
};

const PICTURE = { width: 160, height: 120 } as const;

/** Asks for the camera. Resolves to a refusal rather than throwing. */
export async function openCamera(options: CameraOptions = {}): Promise<CameraSession | CameraRefusal> {
  const now = options.now ?? (() => performance.now() / 1000);
  const getUserMedia = options.getUserMedia ?? browserCamera();
  if (typeof getUserMedia !== 'function') return getUserMedia;
  let stream: MediaStream | null = null;
  try {
    stream = await getUserMedia(WANTED);
    const [track] = stream.getVideoTracks();
    if (track === undefined) throw new DOMException('The stream holds no picture.', 'NotFoundError');
    return startSession(stream, track, now);
  } catch (error) {
    for (const track of stream?.getTracks() ?? []) track.stop();
    return refusalOf(error);
  }
}

function browserCamera(): NonNullable<CameraOptions['getUserMedia']> | CameraRefusal {
  // The types promise mediaDevices; pages without a secure address and old browsers lack it.
  const devices: MediaDevices | undefined = globalThis.navigator?.mediaDevices;
  if (devices?.getUserMedia !== undefined) return (wanted) => devices.getUserMedia(wanted);
  return globalThis.isSecureContext === false
    ? { kind: 'insecure', detail: 'This page is not in a secure context.' }
    : { kind: 'unsupported', detail: 'navigator.mediaDevices is missing.' };
}

function refusalOf(error: unknown): CameraRefusal {
  const detail = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return { kind: deviceRefusal(error), detail };
}

function startSession(stream: MediaStream, track: MediaStreamTrack, now: () => Seconds): CameraSession {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.srcObject = stream;
  const frames = new Set<(frame: CameraFrame) => void>();
  const ends = new Set<(cause: CameraEnd) => void>();
  const mutes = new Set<(isMuted: boolean) => void>();
  const turns = new Set<() => void>();
  const listening = new AbortController();
  const { signal } = listening;
  const play = () => {
    // A refusal to play shows as a picture that stands still; the next event tries again.
    if (!signal.aborted) video.play().catch(() => {});
  };
  const stopFrames = readFrames(video, now, frames);

  const stop = () => {
    if (signal.aborted) return;
    listening.abort();
    stopFrames();
    for (const each of stream.getTracks()) each.stop();
    video.srcObject = null;
  };
  const end = (cause: CameraEnd) => {
    if (signal.aborted) return;
    stop();
    for (const callback of ends) callback(cause);
  };

  let sides: string | null = null;
  video.addEventListener(
    'resize',
    () => {
      const before = sides;
      sides = `${video.videoWidth} × ${video.videoHeight}`;
      if (before === null || before === sides) return;
      for (const callback of turns) callback();
    },
    { signal },
  );
  // Taking the element off the page pauses it, although the camera goes on.
  video.addEventListener('pause', play, { signal });
  track.addEventListener('ended', async () => end((await isListed(track)) ? 'withdrawn' : 'unplugged'), {
    signal,
  });
  for (const [event, isMuted] of [
    ['mute', true],
    ['unmute', false],
  ] as const) {
    track.addEventListener(
      event,
      () => {
        for (const callback of mutes) callback(isMuted);
      },
      { signal },
    );
  }
  void watchDevices(track, signal, () => end('unplugged'));
  play();

  return {
    kind: 'open',
    stream,
    video,
    get locked() {
      return locksOf(track);
    },
    get isMuted() {
      return track.muted;
    },
    get exposure() {
      return exposureOf(track);
    },
    lock: () => lockTrack(track),
    unlock: () => unlockTrack(track),
    onFrame: (callback) => joined(frames, callback),
    onEnded: (callback) => joined(ends, callback),
    onMuted: (callback) => joined(mutes, callback),
    onTurned: (callback) => joined(turns, callback),
    stop,
  };
}

function joined<T>(callbacks: Set<T>, callback: T): () => void {
  callbacks.add(callback);
  return () => callbacks.delete(callback);
}

/** Reads every new frame into the one small canvas. Returns the way to stop. */
function readFrames(
  video: HTMLVideoElement,
  now: () => Seconds,
  callbacks: ReadonlySet<(frame: CameraFrame) => void>,
): () => void {
  const canvas = document.createElement('canvas');
  canvas.width = PICTURE.width;
  canvas.height = PICTURE.height;
  const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  if (context === null) throw new Error('The browser gave no canvas to read the picture with.');
  // Smoothing would average the codes before they are decoded to light; picking pixels does not.
  context.imageSmoothingEnabled = false;
  let last = Number.NEGATIVE_INFINITY;
  const read = (age: Seconds) => {
    if (callbacks.size === 0) return;
    last = Math.max(last, now() - age);
    context.drawImage(video, 0, 0, PICTURE.width, PICTURE.height);
    const frame = { seconds: last, picture: context.getImageData(0, 0, PICTURE.width, PICTURE.height) };
    for (const callback of callbacks) callback(frame);
  };
  return 'requestVideoFrameCallback' in video ? followFrames(video, read) : followRepaints(video, read);
}

function followFrames(video: HTMLVideoElement, read: (age: Seconds) => void): () => void {
  const next: VideoFrameRequestCallback = (_, { captureTime }) => {
    handle = video.requestVideoFrameCallback(next);
    // Where the browser tells no time of capture, or one that cannot be, the frame counts as new.
    const age = captureTime === undefined ? 0 : (performance.now() - captureTime) / 1000;
    read(age > 0 && age < 1 ? age : 0);
  };
  let handle = video.requestVideoFrameCallback(next);
  return () => video.cancelVideoFrameCallback(handle);
}

/** For browsers without frame callbacks: may read a frame twice, which does no harm to a level. */
function followRepaints(video: HTMLVideoElement, read: (age: Seconds) => void): () => void {
  let shown = -1;
  const next = () => {
    handle = requestAnimationFrame(next);
    if (video.readyState < video.HAVE_CURRENT_DATA || video.currentTime === shown) return;
    shown = video.currentTime;
    read(0);
  };
  let handle = requestAnimationFrame(next);
  return () => cancelAnimationFrame(handle);
}

/** Calls back when the device leaves the browser's list; some browsers never end the track then. */
async function watchDevices(track: MediaStreamTrack, signal: AbortSignal, gone: () => void): Promise<void> {
  // A stream that never came from a listed device, such as a canvas, cannot be unplugged.
  if (!(await isListed(track)) || signal.aborted) return;
  const look = async () => {
    if (!(await isListed(track))) gone();
  };
  navigator.mediaDevices.addEventListener('devicechange', look, { signal });
}

/** Whether the track's device is still in the browser's list, as far as the browser tells. */
async function isListed(track: MediaStreamTrack): Promise<boolean> {
  const { deviceId } = track.getSettings();
  if (deviceId === undefined || globalThis.navigator?.mediaDevices === undefined) return false;
  try {
    const devices = await navigator.mediaDevices.enumerateDevices();
    // Without permission the list comes without names: nobody can say that ours is missing.
    return devices.some(({ kind, deviceId: id }) => kind === 'videoinput' && (id === deviceId || id === ''));
  } catch {
    return true;
  }
}

/** The part of W3C Image Capture used here, which the DOM types leave out. */
interface PhotoSettings extends MediaTrackSettings {
  readonly exposureMode?: string;
  readonly exposureTime?: number;
  readonly iso?: number;
  readonly colorTemperature?: number;
}
interface PhotoCapabilities extends MediaTrackCapabilities {
  readonly exposureMode?: readonly string[];
  readonly whiteBalanceMode?: readonly string[];
}

function photoSettings(track: MediaStreamTrack): PhotoSettings {
  return track.getSettings();
}

function photoCapabilities(track: MediaStreamTrack): PhotoCapabilities {
  // Some browsers lack the method.
  return 'getCapabilities' in track ? track.getCapabilities() : {};
}

function exposureOf(track: MediaStreamTrack): CameraExposure {
  const { exposureTime, iso } = photoSettings(track);
  return { time: exposureTime ?? null, iso: iso ?? null };
}

function locksOf(track: MediaStreamTrack): CameraLocks {
  const { exposureMode, whiteBalanceMode } = photoSettings(track);
  return { exposure: lockOf(exposureMode), whiteBalance: lockOf(whiteBalanceMode) };
}

function lockOf(mode: string | undefined): LockState {
  if (mode === 'manual') return 'locked';
  return mode === 'continuous' || mode === 'single-shot' ? 'automatic' : 'unknown';
}

async function lockTrack(track: MediaStreamTrack): Promise<CameraLocks> {
  const { exposureTime, iso, colorTemperature } = photoSettings(track);
  const modes = modesAllowing(track, 'manual');
  const values = {
    ...(modes.exposureMode && exposureTime !== undefined ? { exposureTime } : {}),
    ...(modes.exposureMode && iso !== undefined ? { iso } : {}),
    ...(modes.whiteBalanceMode && colorTemperature !== undefined ? { colorTemperature } : {}),
  };
  // First with the values the automatic found, or some cameras fall back to their own manual ones.
  for (const wanted of [{ ...modes, ...values }, modes]) {
    await applied(track, wanted);
    const now = photoSettings(track);
    if (Object.entries(modes).every(([name, mode]) => Reflect.get(now, name) === mode)) break;
  }
  return locksOf(track);
}

async function unlockTrack(track: MediaStreamTrack): Promise<CameraLocks> {
  await applied(track, modesAllowing(track, 'continuous'));
  return locksOf(track);
}

function modesAllowing(track: MediaStreamTrack, mode: 'manual' | 'continuous') {
  const can = photoCapabilities(track);
  return {
    ...(can.exposureMode?.includes(mode) ? { exposureMode: mode } : {}),
    ...(can.whiteBalanceMode?.includes(mode) ? { whiteBalanceMode: mode } : {}),
  };
}

/** One wish in one set: a later call replaces an earlier one, and some browsers read the first set only. */
async function applied(track: MediaStreamTrack, wanted: Record<string, string | number>): Promise<void> {
  if (Object.keys(wanted).length === 0) return;
  // What counts is read back afterwards, so a refused wish needs no other answer.
  await track.applyConstraints({ advanced: [wanted] }).catch(() => {});
}
