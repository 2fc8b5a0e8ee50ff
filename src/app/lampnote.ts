/**
 * The application behind the views: the document, the sitting, the light, the sound, and how a change of one
 * reaches the others. Views read its stores and call its methods; they do no arithmetic of their own.
 */
import { type Command, replaceWith, turnThreshold } from '../design/commands.ts';
import { type Complaint, decodeText, encodeText } from '../design/decode.ts';
import type { Design } from '../design/design.ts';
import type { LightProgram } from '../light/program.ts';
import { type Stage, stageLux } from '../light/stage.ts';
import { frequencyOfNote } from '../plan/notes.ts';
import { type JustOn, justOn, trimmersOf } from '../plan/threshold.ts';
import type { Lux, Pair, Seconds, VoiceId } from '../quantity/units.ts';
import type { Player, SoundTrouble } from '../sound/player.device.ts';
import { type EngineSettings, settingsOf } from '../sound/settings.ts';
import { CameraLight } from './camera-light.ts';
import { derivedInstrument } from './derived.ts';
import { Live } from './live.ts';
import { Rest } from './rest.ts';
import type { Session } from './session.ts';
import { keepDesign, keepSession } from './storage.device.ts';
import { DocumentStore, Store } from './store.ts';

export interface SoundState {
  readonly kind: 'off' | 'starting' | 'on';
  /** Why nothing is heard although it should be. */
  readonly trouble: SoundTrouble | null;
  /** Faded after a while without a change. */
  readonly faded: boolean;
}

/** A notice under the bar: what happened to a file, or to the keeping of the design. */
export type Notice =
  | { readonly kind: 'refused file'; readonly name: string; readonly complaints: readonly Complaint[] }
  | { readonly kind: 'not kept' }
  | { readonly kind: 'opened'; readonly name: string };

/** A hand or slider is followed this smoothly: no step of light is sharper. */
const AIM_SECONDS: Seconds = 0.02;
const FADE_SECONDS: Seconds = 2;
const SILENCE_DB = -100;

export class Lampnote {
  readonly design: DocumentStore<Design>;
  readonly session: Store<Session>;
  readonly sound = new Store<SoundState>({ kind: 'off', trouble: null, faded: false });
  readonly notice = new Store<Notice | null>(null);
  readonly live: Live;
  readonly camera = new CameraLight((lux, every) => this.#aim(lux, every));

  #player: Player | null = null;
  readonly #rest = new Rest(seconds());
  #lux: Pair<Lux>;
  #frameRequest = 0;

  constructor(design: Design, session: Session) {
    this.design = new DocumentStore(design);
    this.session = new Store(session);
    this.#lux = stageLux(session.stage);
    this.live = new Live(this.#settings(), this.#steady());
    this.design.subscribe(() => this.#designChanged());
    this.session.subscribe(() => keepSession(this.session.current));
  }

  /** Begins to follow the light on the page, frame by frame. */
  run(): void {
    const step = () => {
      if (!this.#player) this.live.advance(seconds());
      this.#frameRequest = requestAnimationFrame(step);
    };
    this.#frameRequest = requestAnimationFrame(step);
  }

  /** Stops following, and lets sound and camera go. */
  async leave(): Promise<void> {
    cancelAnimationFrame(this.#frameRequest);
    this.camera.stop();
    await this.soundOff();
  }

  // --- the document -------------------------------------------------------------------------------------

  /** Changes the design as one step; the same `gesture` keeps a drag one step. */
  change(label: string, command: Command, gesture: unknown = null): void {
    this.#touch();
    this.design.change(label, command, gesture);
  }

  /** Opens a file's text. A file that does not read leaves the design as it is and says why. */
  openText(name: string, text: string, label: string): boolean {
    const decoded = decodeText(text);
    if (decoded.ok) this.design.change(label, replaceWith(decoded.design));
    this.notice.dispatch(() =>
      decoded.ok
        ? { kind: 'opened', name: decoded.design.name }
        : { kind: 'refused file', name, complaints: decoded.complaints },
    );
    return decoded.ok;
  }

  /** The design as a file's text. */
  fileText(): string {
    return encodeText(this.design.current);
  }

  // --- light --------------------------------------------------------------------------------------------

  /** Moves lamp, room light or hands. */
  setStage(change: Partial<Stage>): void {
    this.#touch();
    this.session.dispatch((session) => ({ ...session, stage: { ...session.stage, ...change } }));
    if (this.session.current.light === 'stage') this.#aim(stageLux(this.session.current.stage), AIM_SECONDS);
  }

  setSession(change: Partial<Omit<Session, 'stage' | 'light'>>): void {
    this.#touch();
    this.session.dispatch((session) => ({ ...session, ...change }));
    if (change.volumeDb !== undefined) this.#player?.setVolume(change.volumeDb);
  }

  /** Light from the stage or from the webcam. Leaving the camera switches it off. */
  chooseLight(light: Session['light']): void {
    this.#touch();
    if (light === 'stage') {
      this.camera.stop();
      this.#aim(stageLux(this.session.current.stage), AIM_SECONDS);
    }
    this.session.dispatch((session) => (session.light === light ? session : { ...session, light }));
  }

  /**
   * Turns every threshold trimmer until its voices just sound in the present light: one step to take back.
   * Trimmers that cannot are left alone and told.
   */
  turnToJustOn(label: string): Pair<JustOn | null> {
    const found: Record<VoiceId, JustOn | null> = { A: null, B: null };
    this.change(label, (design) => {
      let turned = design;
      for (const id of trimmersOf(design)) {
        const answer = justOn(design, id, this.#lux);
        found[id] = answer;
        if (answer.kind === 'turn') turned = turnThreshold(id, answer.rotation)(turned);
      }
      return turned;
    });
    return found;
  }

  // --- sound --------------------------------------------------------------------------------------------

  /** From a press only. */
  async soundOn(): Promise<void> {
    if (this.sound.current.kind !== 'off') return this.wake();
    this.#setSound({ kind: 'starting', trouble: null, faded: false });
    const AudioContextHere = globalThis.AudioContext as typeof AudioContext | undefined;
    if (!AudioContextHere) return this.#setSound({ kind: 'off', trouble: 'unsupported' });
    // Made and woken inside the press: some browsers let sound start only there.
    const native = new AudioContextHere({ latencyHint: 'interactive' });
    void native.resume();
    // Tone greets in the console otherwise.
    Object.assign(globalThis, { TONE_SILENCE_LOGGING: true });
    try {
      const { Player: PlayerClass } = await import('../sound/player.device.ts');
      const player = new PlayerClass(native, {
        onFrame: (frame) => this.#heard(frame),
        onTrouble: (trouble) => this.#setSound({ trouble }),
      });
      const start = { settings: this.#settings(), program: this.#steady() };
      const trouble = await player.start(start, this.session.current.volumeDb);
      if (trouble && trouble !== 'suspended' && trouble !== 'interrupted') {
        await player.stop();
        return this.#setSound({ kind: 'off', trouble });
      }
      this.#player = player;
      // What changed while the module was loading.
      player.send({ kind: 'settings', settings: this.#settings() });
      this.#aim(this.#lux, AIM_SECONDS);
      this.#sendReference();
      this.#touch();
      this.#setSound({ kind: 'on', trouble });
    } catch {
      await native.close().catch(() => undefined);
      this.#setSound({ kind: 'off', trouble: 'module' });
    }
  }

  /** A note to compare by ear; heard while the sound is on. */
  setReference(change: Partial<Session['reference']>): void {
    this.#touch();
    this.session.dispatch((session) => ({ ...session, reference: { ...session.reference, ...change } }));
    this.#sendReference();
  }

  #sendReference(): void {
    const { note, sounds } = this.session.current.reference;
    this.#player?.setReference(sounds ? frequencyOfNote(note) : null);
  }

  /** Ramps down and lets the audio go; the page's own model takes over. */
  async soundOff(): Promise<void> {
    const player = this.#player;
    if (!player) return;
    this.#player = null;
    this.live.restart(this.#steady());
    this.#setSound({ kind: 'off', trouble: null, faded: false });
    await player.stop();
  }

  /** Any press brings a faded or sleeping sound back. */
  wake(): void {
    if (!this.#player) return;
    this.#touch();
    if (this.sound.current.trouble) void this.#player.resume();
  }

  get levelDb(): number {
    return this.#player?.levelDb ?? Number.NEGATIVE_INFINITY;
  }

  // --- how one thing reaches the others --------------------------------------------------------------------

  #settings(): EngineSettings {
    const design = this.design.current;
    return settingsOf(design, derivedInstrument(design));
  }

  #steady(): LightProgram {
    return { kind: 'steady', lux: this.#lux };
  }

  #designChanged(): void {
    const settings = this.#settings();
    this.live.setSettings(settings);
    this.#player?.send({ kind: 'settings', settings });
    if (!keepDesign(this.design.current)) this.notice.dispatch(() => ({ kind: 'not kept' }));
  }

  #aim(lux: Pair<Lux>, over: Seconds): void {
    this.#lux = lux;
    this.live.aim(lux, over);
    this.#player?.send({ kind: 'aim', lux, seconds: over });
  }

  #heard(frame: Float64Array): void {
    if (!this.#player) return;
    const now = seconds();
    this.live.take(now, frame);
    const { lux, changed } = this.live.latest!;
    if (this.#rest.see(now, lux, changed)) this.#unfade();
    else if (!this.session.current.exhibition && !this.sound.current.faded && this.#rest.isDue(now)) {
      this.#player.setVolume(SILENCE_DB, FADE_SECONDS);
      this.#setSound({ faded: true });
    }
  }

  #touch(): void {
    this.#rest.touch(seconds());
    this.#unfade();
  }

  #unfade(): void {
    if (!this.sound.current.faded) return;
    this.#player?.setVolume(this.session.current.volumeDb, 0.2);
    this.#setSound({ faded: false });
  }

  #setSound(change: Partial<SoundState>): void {
    this.sound.dispatch((sound) => {
      const next = { ...sound, ...change };
      return next.kind === sound.kind && next.trouble === sound.trouble && next.faded === sound.faded
        ? sound
        : next;
    });
  }
}

/** The page's clock, seconds. */
function seconds(): Seconds {
  return performance.now() / 1000;
}
