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
/** Peak of the reference note beside the voices' own full scale. */
const REFERENCE_LEVEL = 0.5;
const SILENT_DB = Number.NEGATIVE_INFINITY;

/** Why there is no sound, when there is none. */
export type SoundTrouble =
  | 'unsupported'
  | 'insecure'
  | 'module'
  | 'processor'
  | 'suspended'
  | 'interrupted'
  | 'stalled';

export interface PlayerEvents {
  readonly onFrame: (frame: Float64Array) => void;
  /** Null: all is well again. */
  readonly onTrouble: (trouble: SoundTrouble | null) => void;
}

export class Player {
  readonly #native: AudioContext;
  readonly #events: PlayerEvents;
  #node: AudioWorkletNode | null = null;
  #gain: Gain | null = null;
  #meter: Meter | null = null;
  /** A steady note to compare by ear; made when first wanted. */
  #reference: { oscillator: Oscillator; gain: Gain } | null = null;
  #stereo: { source: AudioBufferSourceNode; gain: Gain } | null = null;
  #watch = 0;

  /** The context must have been made inside the press that asked for sound. */
  constructor(native: AudioContext, events: PlayerEvents) {
    this.#native = native;
    this.#events = events;
  }

  /** Loads the worklet and lets the sound in. Resolves to the trouble, or null when it plays. */
  async start(start: WorkletStart, volumeDb: number): Promise<SoundTrouble | null> {
    const native = this.#native;
    if (!native.audioWorklet) return globalThis.isSecureContext ? 'unsupported' : 'insecure';
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
    this.#node.onprocessorerror = () => this.#events.onTrouble('processor');
    this.#node.port.onmessage = ({ data }: MessageEvent<Float64Array>) => {
      if (data.length === FRAME_LENGTH) this.#events.onFrame(data);
    };
    native.onstatechange = () => this.#check();
    await this.resume();
    this.setVolume(volumeDb);
    this.#watchClock();
    return this.#stateTrouble();
  }

  send(message: EngineMessage): void {
    this.#node?.port.postMessage(message);
  }

  /** Loudest peak of both voices together, dB below full scale; −Infinity is silence. */
  setVolume(db: number, ramp: Seconds = RAMP): void {
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
    clearTimeout(this.#watch);
    this.#native.onstatechange = null;
    if (this.#gain && this.#native.state === 'running') {
      this.setVolume(SILENT_DB);
      const end = this.#native.currentTime + 2 * RAMP;
      await until(() => this.#native.currentTime >= end || this.#native.state !== 'running', 5 * RAMP);
    }
    this.#reference?.oscillator.dispose();
    this.#reference?.gain.dispose();
    this.#stereo?.source.disconnect();
    this.#stereo?.gain.dispose();
    this.#node?.disconnect();
    this.#gain?.dispose();
    this.#meter?.dispose();
    await this.#native.close().catch(() => undefined);
  }

  #check(): void {
    this.#events.onTrouble(this.#stateTrouble());
  }

  #stateTrouble(): SoundTrouble | null {
    const state: string = this.#native.state;
    if (state === 'interrupted') return 'interrupted';
    return state === 'running' ? null : 'suspended';
  }

  #watchClock(): void {
    let last = this.#native.currentTime;
    let stalled = false;
    const look = () => {
      const now = this.#native.currentTime;
      const stands = this.#native.state === 'running' && now === last;
      if (stands !== stalled) {
        stalled = stands;
        this.#events.onTrouble(stands ? 'stalled' : this.#stateTrouble());
      }
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
