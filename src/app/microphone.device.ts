/**
 * Sound from outside, on request only: a short stretch from the microphone or the line input, with the browser's own
 * changes to it (echo cancelling, noise suppression, automatic gain) off, or a recording from a file. Nothing is kept.
 */
import { deviceRefusal } from '../light/device-refusal.ts';
import type { Hertz, Seconds } from '../quantity/units.ts';

export interface Listened {
  readonly samples: Float32Array;
  readonly sampleRate: Hertz;
}

export type MicrophoneRefusal = 'denied' | 'absent' | 'busy' | 'insecure' | 'unplugged' | 'failed';

/** The longest stretch an analyser holds: two thirds of a second. */
const STRETCH = 32_768;
const SAMPLE_RATE: Hertz = 48_000;
/** A stretch that has not come by then does not come. */
const PATIENCE: Seconds = 5;

/** Opens the microphone, listens for a moment, and lets it go again; also when asked to stop. */
export async function listen(stop: AbortSignal): Promise<Listened | MicrophoneRefusal> {
  const { mediaDevices } = navigator as { mediaDevices?: MediaDevices };
  if (!mediaDevices) return 'insecure';
  let stream: MediaStream;
  try {
    stream = await mediaDevices.getUserMedia({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 },
    });
  } catch (error) {
    const kind = deviceRefusal(error);
    return kind === 'unsupported' ? 'failed' : kind;
  }
  const tracks = stream.getTracks();
  let context: AudioContext | null = null;
  try {
    context = new AudioContext();
    context.resume().catch(() => undefined);
    const analyser = new AnalyserNode(context, { fftSize: STRETCH });
    new MediaStreamAudioSourceNode(context, { mediaStream: stream }).connect(analyser);
    const until = context.currentTime + 1.3 * (STRETCH / context.sampleRate);
    const latest = performance.now() + PATIENCE * 1000;
    while (context.currentTime < until) {
      if (stop.aborted || performance.now() > latest) return 'failed';
      if (tracks.every(({ readyState }) => readyState === 'ended')) return 'unplugged';
      await new Promise((resolve) => setTimeout(resolve, 60));
    }
    const samples = new Float32Array(STRETCH);
    analyser.getFloatTimeDomainData(samples);
    return { samples, sampleRate: context.sampleRate };
  } catch {
    return 'failed';
  } finally {
    for (const track of tracks) track.stop();
    await context?.close().catch(() => undefined);
  }
}

/** A minute of plain samples, many of packed ones; unpacked, it must still fit the memory. */
const MOST_BYTES = 8_000_000;

/** The first channel of a sound file; or why there is none: more than is ever needed, or no sound this browser can read. */
export async function decodeRecording(file: Blob): Promise<Listened | 'too long' | 'unreadable'> {
  if (file.size > MOST_BYTES) return 'too long';
  try {
    const context = new OfflineAudioContext(1, 1, SAMPLE_RATE);
    const sound = await context.decodeAudioData(await file.arrayBuffer());
    return { samples: sound.getChannelData(0), sampleRate: sound.sampleRate };
  } catch {
    return 'unreadable';
  }
}
