/**
 * Runs inside a module page: the real worklet behind Tone's gain, rendered by the browser faster than real time.
 */
import { workletUrl } from 'virtual:voice-worklet';
import { Gain, OfflineContext } from 'tone/build/esm/classes.js';
import { setContext } from 'tone/build/esm/core/Global.js';
import type { EngineMessage, WorkletStart } from '../../../src/sound/settings.ts';

export interface OfflineWish {
  readonly start: WorkletStart;
  /** Posted to the worklet, in this order, once `afterSamples` samples (a multiple of 128) are made. */
  readonly messages: readonly EngineMessage[];
  readonly afterSamples: number;
  readonly seconds: number;
  readonly sampleRate: number;
  /** Linear gain behind the worklet. */
  readonly gain: number;
  /** Seconds of real time after which a rendering that does not end is given up. */
  readonly patience: number;
}

export interface OfflineTake {
  readonly samples: Float32Array;
  /** What the worklet told the page meanwhile. */
  readonly frames: readonly Float64Array[];
  /** The processor threw. */
  readonly failed: boolean;
}

/** Renders a stretch of sound; throws when the audio thread does not come to an end. */
export async function renderOffline(wish: OfflineWish): Promise<OfflineTake> {
  const native = new OfflineAudioContext(1, Math.round(wish.seconds * wish.sampleRate), wish.sampleRate);
  await native.audioWorklet.addModule(workletUrl);
  // Tone takes a native context; its type asks for the wrapped one.
  const context = new OfflineContext(native as never);
  // Without one that it knows, Tone makes a context of its own, and a worker that the page's policy forbids.
  setContext(context);
  const node = new AudioWorkletNode(native, 'lampnote-instrument', {
    numberOfInputs: 0,
    numberOfOutputs: 1,
    outputChannelCount: [1],
    processorOptions: wish.start,
  });
  const frames: Float64Array[] = [];
  let failed = false;
  node.port.onmessage = ({ data }: MessageEvent<Float64Array>) => frames.push(data);
  node.onprocessorerror = () => {
    failed = true;
  };
  const gain = new Gain({ context, gain: wish.gain });
  node.connect(gain.input as unknown as AudioNode);
  gain.toDestination();
  await native.audioWorklet.addModule(new URL('./echo.worklet.ts', import.meta.url));
  const echo = new AudioWorkletNode(native, 'echo', { numberOfInputs: 0 });
  // Messages reach a processor only in a pause: the browser renders on without looking up.
  const pause = native.suspend(wish.afterSamples / wish.sampleRate).then(async () => {
    for (const message of wish.messages) node.port.postMessage(message);
    await answerOf(echo);
    await native.resume();
  });
  const [buffer] = await inTime(Promise.all([context.render(true), pause]), wish.patience);
  const samples = buffer.getChannelData(0);
  // The last frame is posted before the last samples are made, but it takes its own way here.
  await until(() => failed || (frames.at(-1)?.[0] ?? 0) > wish.seconds - 0.05, wish.patience);
  return { samples, frames, failed };
}

/** Asks twice, because the first question may overtake what another port was told. */
async function answerOf(echo: AudioWorkletNode): Promise<void> {
  for (const question of [1, 2]) {
    await new Promise((resolve) => {
      echo.port.onmessage = resolve;
      echo.port.postMessage(question);
    });
  }
}

function inTime<T>(work: Promise<T>, seconds: number): Promise<T> {
  const late = new Promise<never>((_, reject) => {
    setTimeout(
      () => reject(new Error(`The audio thread did not finish within ${seconds} s.`)),
      seconds * 1000,
    );
  });
  return Promise.race([work, late]);
}

async function until(condition: () => boolean, seconds: number): Promise<void> {
  const end = performance.now() + seconds * 1000;
  while (!condition()) {
    if (performance.now() > end) throw new Error(`No frame from the end of the sound within ${seconds} s.`);
    await new Promise((next) => setTimeout(next));
  }
}
