/**
 * What is heard instead of the design at hand, while it lasts: another design, several one after another (a trimmer
 * swept from end to end, kit after kit), or many at once across the room. The voices sound whatever the light, at
 * equal loudness. Started from a press only; ends by itself, at `stop`, or when the sound is switched off.
 */
import { instrumentOf } from '../circuit/instrument.ts';
import type { Design } from '../design/design.ts';
import type { LightProgram } from '../light/program.ts';
import { pairOf, type Seconds, type VoiceId } from '../quantity/units.ts';
import { heldSounding, soundsOnly } from '../sound/audible.ts';
import type { Stereo } from '../sound/chorus.ts';
import { type EngineSettings, settingsOf } from '../sound/settings.ts';
import { seconds } from './clock.ts';
import { Store } from './store.ts';

export type Piece =
  /** `only`: one voice alone. */
  | { readonly kind: 'steady'; readonly design: Design; readonly only?: VoiceId }
  | {
      readonly kind: 'turns';
      readonly steps: readonly { readonly design: Design; readonly seconds: Seconds }[];
      readonly only?: VoiceId;
      /** Gated by the light that plays, as the design at hand is. */
      readonly gated?: boolean;
    }
  | { readonly kind: 'together'; readonly designs: readonly Design[]; readonly seconds: Seconds }
  /** Two channels within full scale, in place of a design's own sound. */
  | {
      readonly kind: 'recorded';
      readonly design: Design;
      readonly sound: Stereo;
      readonly seconds: Seconds;
    };

export interface Auditioned {
  /** Whose sound it is, by whoever asked. */
  readonly id: string;
  readonly piece: Piece;
  /** Steps of the piece begun, instruments of it made ready. */
  readonly step: number;
}

/** Who makes it heard. */
export interface AuditionSink {
  /** Switches the sound on if it is off; false when it cannot be. */
  on(): Promise<boolean>;
  /** These settings from now on; null = the design's own again. */
  settings(settings: EngineSettings | null): void;
  /** Plays two channels once, or stops them. */
  stereo(sound: Stereo | null): void;
  /** What mixes many into one did not load. */
  missing(): void;
}

const DARK: LightProgram = { kind: 'steady', lux: { A: 0, B: 0 } };
const SAMPLE_RATE = 48_000;
/** A timer may be called this much before its time. */
const EARLY: Seconds = 0.005;

export class Audition {
  readonly playing = new Store<Auditioned | null>(null);
  readonly #sink: AuditionSink;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(sink: AuditionSink) {
    this.#sink = sink;
  }

  /** From a press only. What was playing before gives way. */
  async play(id: string, piece: Piece): Promise<void> {
    this.#halt();
    const playing: Auditioned = { id, piece, step: 0 };
    this.playing.dispatch(() => playing);
    const here = () => this.playing.current?.piece === piece;
    if (!(await this.#sink.on())) {
      if (here()) this.stop();
      return;
    }
    if (!here()) return;
    if (piece.kind === 'steady') this.#sink.settings(held(piece.design, piece.only));
    else if (piece.kind === 'turns') this.#turn(piece, seconds());
    else if (piece.kind === 'recorded') {
      this.#quiet(piece.design);
      this.#stereo(piece.sound, piece.seconds);
    } else await this.#together(piece, here);
  }

  /** Back to the design at hand. */
  stop(): void {
    if (this.playing.current === null) return;
    this.#halt();
    this.playing.dispatch(() => null);
    this.#sink.settings(null);
  }

  #halt(): void {
    clearTimeout(this.#timer);
    const kind = this.playing.current?.piece.kind;
    if (kind === 'together' || kind === 'recorded') this.#sink.stereo(null);
  }

  /** The step that is due by the clock: a page that was not looked at may be called late. */
  #turn(piece: Extract<Piece, { kind: 'turns' }>, began: Seconds): void {
    const now = seconds() - began;
    let end = 0;
    const due = piece.steps.findIndex((step) => {
      end += step.seconds;
      return end > now + EARLY;
    });
    const next = piece.steps[due];
    if (next === undefined) {
      this.stop();
      return;
    }
    this.#sink.settings(piece.gated ? settings(next.design) : held(next.design, piece.only));
    this.#step(due + 1);
    this.#timer = setTimeout(() => this.#turn(piece, began), (end - now) * 1000);
  }

  async #together(piece: Extract<Piece, { kind: 'together' }>, here: () => boolean): Promise<void> {
    const { designs, seconds: lasts } = piece;
    const [first] = designs;
    if (first === undefined) return this.stop();
    this.#quiet(first);
    const instruments = designs.map((design) => held(design));
    // With the engine that plays them: no part of the first view.
    const chorus = await import('../sound/chorus.ts').catch(() => null);
    if (!here()) return;
    if (chorus === null) {
      this.stop();
      this.#sink.missing();
      return;
    }
    const making = chorus.chorusOf(instruments, DARK, lasts, SAMPLE_RATE);
    for (;;) {
      const made = making.next();
      if (made.done) {
        this.#stereo(made.value, lasts);
        return;
      }
      this.#step(made.value);
      // The page answers between one instrument and the next.
      await new Promise((resolve) => setTimeout(resolve));
      if (!here()) return;
    }
  }

  /** The live instrument is silent meanwhile. */
  #quiet(design: Design): void {
    const none = pairOf(() => false);
    this.#sink.settings(heldSounding(settings(design), none));
  }

  #stereo(sound: Stereo, seconds: Seconds): void {
    this.#sink.stereo(sound);
    this.#timer = setTimeout(() => this.stop(), seconds * 1000);
  }

  #step(step: number): void {
    this.playing.dispatch((playing) => playing && { ...playing, step });
  }
}

function settings(design: Design): EngineSettings {
  return settingsOf(design, instrumentOf(design));
}

function held(design: Design, only: VoiceId | null = null): EngineSettings {
  return heldSounding(settings(design), soundsOnly(only));
}
