/**
 * Live sound: one worklet with the whole instrument, on a native context, behind Tone's gain and meter.
 * Started only from a press, ramped in and out, never louder than the volume allows.
 */

import { workletUrl } from 'virtual:voice-worklet';
import type { IAudioContext } from 'standardized-audio-context';
import { Context, Gain, Meter, Oscillator } from 'tone/build/esm/classes.js';
import { setContext } from 'tone/build/esm/core/Global.js';
import type { Hertz, Seconds } from '../quantity/units.ts';
import type { Stereo } from './chorus.ts';
import { type EngineMessage, FRAME_LENGTH, type WorkletStart } from './settings.ts';

/** Sound comes and goes over this long, at least. */
const RAMP: Seconds = 0.05;
/** A clock that stands still this long while it should run counts as stalled. */
const STALL: Seconds = 0.5;
/** A browser that holds the sound back may leave the question open; it is not waited for longer. */
const PATIENCE: Seconds = 1;
/** Peak of the reference note beside the voices' own full scale. */
const REFERENCE_LEVEL = 0.5;
const SILENT_DB = Number.NEGATIVE_INFINITY;

/** Why there is no sound, when there is none. */
export type SoundTrouble =
  | 'unsupported'
  | 'insecure'
  | 'no device'
  | 'module'
  | 'processor'
  | 'suspended'
  | 'interrupted'
  | 'closed'
  | 'stalled';

export interface PlayerEvents {
  readonly onFrame: (frame: Float64Array) => void;
  /** Told when it changes. Null: all is well again. */
  readonly onTrouble: (trouble: SoundTrouble | null) => void;
}

export class Player {
  readonly #native: AudioContext;
  readonly #events: PlayerEvents;
  #context: Context | null = null;
  #node: AudioWorkletNode | null = null;
  #gain: Gain | null = null;
  #meter: Meter | null = null;
  /** A steady note to compare by ear; made when first wanted. */
  #reference: { oscillator: Oscillator; gain: Gain } | null = null;
  #stereo: { source: AudioBufferSourceNode; gain: Gain } | null = null;
  #watch = 0;
  #volumeDb = SILENT_DB;
  #failed = false;
  #stalled = false;
  /** What was told last. */
  #trouble: SoundTrouble | null = null;

  /** The context must have been made inside the press that asked for sound. */
  constructor(native: AudioContext, events: PlayerEvents) {
    this.#native = native;
    this.#events = events;
  }

  /** Loads the worklet and lets the sound in. Resolves to the trouble, or null when it plays. */
  async start(start: WorkletStart, volumeDb: number): Promise<SoundTrouble | null> {
    const native = this.#native;
    if (!native.audioWorklet) return 'unsupported';
    try {
      await native.audioWorklet.addModule(workletUrl);
    } catch {
      return 'module';
    }
    // Tone takes a native context; its type asks for the wrapped one.
    const context = new Context({
      context: native as unknown as IAudioContext as never,
      clockSource: 'timeout',
      lookAhead: 0,
    });
    this.#context = context;
    setContext(context);
    try {
      this.#node = new AudioWorkletNode(native, 'lampnote-instrument', {
        numberOfInputs: 0,
        numberOfOutputs: 1,
        outputChannelCount: [1],
        processorOptions: start,
      });
    } catch {
      return 'processor';
    }
    this.#gain = new Gain({ context, gain: 0 });
    this.#meter = new Meter({ context, smoothing: 0.6 });
    this.#node.connect(this.#gain.input as unknown as AudioNode);
    this.#gain.connect(this.#meter);
    this.#gain.toDestination();
    this.#node.onprocessorerror = () => {
      this.#failed = true;
      this.#check();
    };
    this.#node.port.onmessage = ({ data }: MessageEvent<Float64Array>) => {
      if (data.length === FRAME_LENGTH) this.#events.onFrame(data);
    };
    this.setVolume(volumeDb);
    native.onstatechange = () => this.#check();
    void this.resume();
    await until(() => native.state === 'running', PATIENCE);
    this.#check();
    this.#watchClock();
    return this.#trouble;
  }

  send(message: EngineMessage): void {
    this.#node?.port.postMessage(message);
  }

  /** Loudest peak of both voices together, dB below full scale; −Infinity is silence. */
  setVolume(db: number, ramp: Seconds = RAMP): void {
    this.#volumeDb = db;
    // What comes back after a trouble comes back in a ramp of its own.
    if (this.#trouble !== null) return;
    // A straight ramp of the amplitude: a ramp of the decibels would do most of its way in the end.
    this.#gain?.gain.linearRampTo(10 ** (db / 20), ramp);
  }

  /** Sounds a steady note beside the voices; null takes it away. */
  setReference(frequency: Hertz | null): void {
    if (frequency === null) {
      this.#reference?.gain.gain.rampTo(0, RAMP);
      return;
    }
    if (!this.#gain) return;
    if (!this.#reference) {
      const { context } = this.#gain;
      const gain = new Gain({ context, gain: 0 });
      // A triangle: few harmonics, so that beats with a voice's fundamental stand out.
      const oscillator = new Oscillator({ context, type: 'triangle', frequency });
      oscillator.connect(gain);
      gain.connect(this.#gain);
      oscillator.start();
      this.#reference = { oscillator, gain };
    }
    this.#reference.oscillator.frequency.value = frequency;
    this.#reference.gain.gain.rampTo(REFERENCE_LEVEL, RAMP);
  }

  /** Plays two channels once beside what sounds; null takes them away. */
  setStereo(sound: Stereo | null): void {
    if (this.#stereo) {
      const { source, gain } = this.#stereo;
      this.#stereo = null;
      gain.gain.rampTo(0, RAMP);
      source.onended = () => gain.dispose();
      source.stop(this.#native.currentTime + 2 * RAMP);
    }
    if (sound === null || !this.#gain) return;
    const buffer = this.#native.createBuffer(2, sound.left.length, sound.sampleRate);
    buffer.copyToChannel(sound.left, 0);
    buffer.copyToChannel(sound.right, 1);
    const source = new AudioBufferSourceNode(this.#native, { buffer });
    const gain = new Gain({ context: this.#gain.context, gain: 0 });
    source.connect(gain.input as unknown as AudioNode);
    gain.connect(this.#gain);
    gain.gain.linearRampTo(1, RAMP);
    source.start();
    this.#stereo = { source, gain };
  }

  /** Level after the volume, dB below full scale, smoothed. */
  get levelDb(): number {
    const value = this.#meter?.getValue();
    return typeof value === 'number' ? value : SILENT_DB;
  }

  /** Asks a sleeping context to go on; call again from any press. */
  async resume(): Promise<void> {
    if (this.#native.state !== 'running') await this.#native.resume().catch(() => undefined);
    this.#check();
  }

  /** Ramps down, then lets everything go. */
  async stop(): Promise<void> {
    if (this.#gain && this.#native.state === 'running') {
      this.#isLeft();
      this.setVolume(SILENT_DB);
      const end = this.#native.currentTime + 2 * RAMP;
      await until(() => this.#native.currentTime >= end || this.#native.state !== 'running', 5 * RAMP);
    }
    await this.cut();
  }

  /** Lets everything go; the context is closed before this returns, its promise waits for the rest. */
  async cut(): Promise<void> {
    this.#isLeft();
    this.#reference?.oscillator.dispose();
    this.#reference?.gain.dispose();
    this.#stereo?.source.disconnect();
    this.#stereo?.gain.dispose();
    if (this.#node) {
      this.#node.disconnect();
      // An open port would keep its node, and all behind it, for as long as the page is there.
      this.#node.port.onmessage = null;
      this.#node.port.close();
      this.#node.onprocessorerror = null;
    }
    this.#gain?.dispose();
    this.#meter?.dispose();
    await this.#native.close().catch(() => undefined);
    // Its clock would tick on.
    this.#context?.dispose();
  }

  /** Whatever becomes of the context from now on is no trouble. */
  #isLeft(): void {
    clearTimeout(this.#watch);
    this.#native.onstatechange = null;
  }

  /** Shuts the sound while there is a trouble, since it may come back at any moment, and lets it in again after. */
  #check(): void {
    const before = this.#trouble;
    this.#trouble = this.#presentTrouble();
    if (this.#trouble === before) return;
    if (this.#trouble === null) this.setVolume(this.#volumeDb);
    else if (before === null) this.#shut();
    this.#events.onTrouble(this.#trouble);
  }

  #shut(): void {
    const now = this.#native.currentTime;
    this.#gain?.gain.cancelScheduledValues(now).setValueAtTime(0, now);
  }

  #presentTrouble(): SoundTrouble | null {
    if (this.#failed) return 'processor';
    const state: string = this.#native.state;
    if (state === 'closed' || state === 'interrupted') return state;
    if (state !== 'running') return 'suspended';
    return this.#stalled ? 'stalled' : null;
  }

  #watchClock(): void {
    let last = this.#native.currentTime;
    const look = () => {
      const now = this.#native.currentTime;
      this.#stalled = this.#native.state === 'running' && now === last;
      this.#check();
      last = now;
      this.#watch = window.setTimeout(look, STALL * 1000);
    };
    this.#watch = window.setTimeout(look, STALL * 1000);
  }
}

/** Waits for a condition, at most `seconds`. */
function until(condition: () => boolean, seconds: Seconds): Promise<void> {
  const deadline = performance.now() + seconds * 1000;
  return new Promise((resolve) => {
    const look = () => (condition() || performance.now() > deadline ? resolve() : void setTimeout(look, 10));
    look();
  });
}
