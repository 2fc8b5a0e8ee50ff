/**
 * The live side of the page: the latest light, node voltages and gates, thirty times a second. They come from
 * the audio thread while sound is on, and from the same gating model on the page while it is off.
 */
import type { LightProgram } from '../light/program.ts';
import { type Lux, type Pair, pairOf, type Seconds, type VoiceId, type Volts } from '../quantity/units.ts';
import { Gating } from '../sound/gating.ts';
import { type EngineSettings, FRAME } from '../sound/settings.ts';
import { GateWatch, type ShownGate } from './shown.ts';

export interface LiveFrame {
  /** On the page's own clock. */
  readonly time: Seconds;
  readonly lux: Pair<Lux>;
  readonly node: Pair<Volts>;
  readonly sounding: Pair<boolean>;
  /** What to say of each gate, steady enough for the eye. */
  readonly shown: Pair<ShownGate>;
  /** A gate changed since the frame before. */
  readonly changed: boolean;
  /** Largest |volts| at the jack since the frame before; 0 while the sound is off. */
  readonly peak: Volts;
}

/** A page that slept is not caught up further than this. */
const CATCH_UP: Seconds = 0.25;

export class Live {
  #gating: Gating;
  #settings: EngineSettings;
  readonly #changes: Record<VoiceId, number> = { A: 0, B: 0 };
  readonly #watch = { A: new GateWatch(), B: new GateWatch() };
  readonly #listeners = new Set<(frame: LiveFrame) => void>();
  /** Page time that corresponds to the model's time 0. */
  #origin: Seconds | null = null;
  #latest: LiveFrame | null = null;

  constructor(settings: EngineSettings, program: LightProgram) {
    this.#settings = settings;
    this.#gating = new Gating(settings, program);
  }

  get latest(): LiveFrame | null {
    return this.#latest;
  }

  subscribe(listener: (frame: LiveFrame) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  setSettings(settings: EngineSettings): void {
    this.#settings = settings;
    this.#gating.setSettings(settings);
  }

  aim(lux: Pair<Lux>, seconds: Seconds): void {
    this.#gating.aim(lux, seconds);
  }

  /** Plays a program from now on, `place` seconds into it. */
  play(program: LightProgram, place: Seconds): void {
    this.#gating.play(program, place);
  }

  /** Starts the page's own model anew, settled in a light (after the sound was switched off). */
  restart(program: LightProgram): void {
    this.#gating = new Gating(this.#settings, program);
    this.#origin = null;
  }

  /** Moves the page's own model up to `now` and tells it. */
  advance(now: Seconds): void {
    if (this.#origin === null || now - this.#origin - this.#gating.time > CATCH_UP)
      this.#origin = now - this.#gating.time;
    const until = now - this.#origin;
    while (this.#gating.time < until) this.#gating.advance((voice) => this.#changes[voice]++);
    this.#tell(now, {
      lux: pairOf((voice) => this.#gating.lux(voice)),
      node: pairOf((voice) => this.#gating.node(voice)),
      sounding: pairOf((voice) => this.#gating.released(voice)),
      changes: { ...this.#changes },
      peak: 0,
    });
    this.#changes.A = this.#changes.B = 0;
  }

  /** A frame from the audio thread. */
  take(now: Seconds, frame: Float64Array): void {
    const at = (a: number, b: number) => ({ A: frame[a]!, B: frame[b]! });
    this.#tell(now, {
      lux: at(FRAME.luxA, FRAME.luxB),
      node: at(FRAME.nodeA, FRAME.nodeB),
      sounding: { A: frame[FRAME.soundingA] === 1, B: frame[FRAME.soundingB] === 1 },
      changes: at(FRAME.changesA, FRAME.changesB),
      peak: frame[FRAME.peak]!,
    });
  }

  #tell(
    time: Seconds,
    { changes, ...rest }: Omit<LiveFrame, 'time' | 'shown' | 'changed'> & { changes: Pair<number> },
  ): void {
    const frame: LiveFrame = {
      ...rest,
      time,
      shown: pairOf((voice) => this.#watch[voice].take(time, rest.sounding[voice], changes[voice])),
      changed: changes.A + changes.B > 0,
    };
    this.#latest = frame;
    for (const listener of this.#listeners) listener(frame);
  }
}
