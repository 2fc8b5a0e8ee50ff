/**
 * The application behind the views: the document, the sitting, the light, the sound, and how a change of one
 * reaches the others. Views read its stores and call its methods; they do no arithmetic of their own.
 */

import type { Jack } from '../circuit/output.ts';
import { type Command, replaceWith, turnThreshold } from '../design/commands.ts';
import { type Complaint, decodeText, encodeText } from '../design/decode.ts';
import type { Design } from '../design/design.ts';
import { frequencyOfNote } from '../plan/notes.ts';
import { type JustOn, justOn, trimmersOf } from '../plan/threshold.ts';
import type { Lux, Pair, Seconds, VoiceId, Volts } from '../quantity/units.ts';
import type { Player, SoundTrouble } from '../sound/player.device.ts';
import { renderTake } from '../sound/render.ts';
import { type EngineSettings, settingsOf } from '../sound/settings.ts';
import { fullScaleVolts, wavOf } from '../sound/wav.ts';
import { linkFor, linkSentence, readLink } from './address.ts';
import { seconds } from './clock.ts';
import { derivedInstrument } from './derived.ts';
import { LightDesk } from './light-desk.ts';
import { LightRecorder } from './light-recorder.ts';
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
  | { readonly kind: 'refused link'; readonly sentence: string }
  | { readonly kind: 'copied'; readonly link: string | null }
  | { readonly kind: 'not kept' }
  | { readonly kind: 'opened'; readonly name: string };

const FADE_SECONDS: Seconds = 2;
const SILENCE_DB = -100;

export class Lampnote {
  readonly design: DocumentStore<Design>;
  readonly session: Store<Session>;
  readonly sound = new Store<SoundState>({ kind: 'off', trouble: null, faded: false });
  readonly notice = new Store<Notice | null>(null);
  readonly live: Live;
  readonly light: LightDesk;
  /** The light being written down, and the last one that was. */
  readonly recording = new Store<{ readonly running: boolean; readonly seconds: Seconds }>({
    running: false,
    seconds: 0,
  });

  #player: Player | null = null;
  readonly #rest = new Rest(seconds());
  #recorder: LightRecorder | null = null;
  #frameRequest = 0;

  constructor(design: Design, session: Session) {
    this.design = new DocumentStore(design);
    this.session = new Store(session);
    this.light = new LightDesk(this.session, {
      aim: (lux, over) => {
        this.live.aim(lux, over);
        this.#player?.send({ kind: 'aim', lux, seconds: over });
      },
      play: (program, place) => {
        this.live.play(program, place);
        this.#player?.send({ kind: 'play', program, place });
      },
    });
    this.live = new Live(this.#settings(), this.light.program);
    this.live.subscribe(({ time, lux }) => this.#writeDown(time, lux));
    this.design.subscribe(() => this.#designChanged());
    this.session.subscribe(() => {
      keepSession(this.session.current);
      this.#touch();
    });
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
    this.light.camera.stop();
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

  /** Opens the design that a link carries, if it carries one. A damaged link opens nothing and says why. */
  async openLink(hash: string, label: string): Promise<void> {
    const read = await readLink(hash);
    if (read.ok) this.design.change(label, replaceWith(read.design));
    const sentence = read.ok ? null : linkSentence(read.reason);
    if (read.ok || sentence)
      this.notice.dispatch(() =>
        read.ok ? { kind: 'opened', name: read.design.name } : { kind: 'refused link', sentence: sentence! },
      );
  }

  /** The part of an address from # on that opens this design. */
  link(): Promise<string> {
    return linkFor(this.design.current);
  }

  /** A file dropped or chosen: a design, or else a light log. */
  openFile(name: string, text: string, label: string): void {
    if (/\.json$/i.test(name) || text.trimStart().startsWith('{')) this.openText(name, text, label);
    else this.light.openLog(name, text);
  }

  /** The design as a file's text. */
  fileText(): string {
    return encodeText(this.design.current);
  }

  // --- light --------------------------------------------------------------------------------------------

  /** Begins to write the light down, or ends it. */
  record(running: boolean): void {
    this.#touch();
    if (running) this.#recorder = new LightRecorder();
    this.recording.dispatch((recording) => ({ ...recording, running }));
  }

  /** The light last written down; null before there is any. */
  get recorded(): LightRecorder['rows'] | null {
    return this.#recorder && this.#recorder.seconds > 0 ? this.#recorder.rows : null;
  }

  /** The sound the present design makes of the recorded light, as a WAV file; null before there is any. */
  renderRecorded(): Uint8Array<ArrayBuffer> | null {
    const program = this.recorded;
    if (!program) return null;
    const settings = this.#settings();
    const { samples, sampleRate } = renderTake(settings, program, program.times.at(-1) ?? 0);
    const scale = 1 / fullScaleVolts(settings.jack);
    return wavOf(
      samples.map((volts) => volts * scale),
      sampleRate,
    );
  }

  /** Volts at the jack that are full scale in a WAV file. */
  fullScaleVolts(jack: Jack): Volts {
    return fullScaleVolts(jack);
  }

  #writeDown(time: Seconds, lux: Pair<Lux>): void {
    if (!this.recording.current.running || !this.#recorder) return;
    const running = this.#recorder.take(time, lux);
    this.recording.dispatch(() => ({ running, seconds: this.#recorder!.seconds }));
  }

  setSession(change: Partial<Pick<Session, 'look' | 'volumeDb' | 'cameraLux' | 'exhibition'>>): void {
    this.session.dispatch((session) => ({ ...session, ...change }));
    if (change.volumeDb !== undefined) this.#player?.setVolume(change.volumeDb);
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
        const answer = justOn(design, id, this.live.latest!.lux);
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
      const start = { settings: this.#settings(), program: this.light.program };
      const trouble = await player.start(start, this.session.current.volumeDb);
      if (trouble && trouble !== 'suspended' && trouble !== 'interrupted') {
        await player.stop();
        return this.#setSound({ kind: 'off', trouble });
      }
      this.#player = player;
      // What changed while the module was loading.
      player.send({ kind: 'settings', settings: this.#settings() });
      player.send({ kind: 'play', ...this.light.playing });
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
    this.live.restart(this.light.program);
    this.#setSound({ kind: 'off', trouble: null, faded: false });
    await player.stop();
  }

  /** Any press brings a faded or sleeping sound back. */
  wake(): void {
    if (!this.#player) return;
    this.#touch();
    const { trouble } = this.sound.current;
    // A device that stands still, or a module that failed, is not woken: it is built anew, inside the press.
    if (trouble === 'stalled' || trouble === 'processor') void this.#rebuild();
    else if (trouble) void this.#player.resume();
  }

  async #rebuild(): Promise<void> {
    const off = this.soundOff();
    const on = this.soundOn();
    await Promise.all([off, on]);
  }

  /** The page is looked at again: a sound that was put to sleep meanwhile goes on. */
  shown(): void {
    if (this.#player && this.sound.current.trouble) void this.#player.resume();
  }

  get levelDb(): number {
    return this.#player?.levelDb ?? Number.NEGATIVE_INFINITY;
  }

  // --- how one thing reaches the others --------------------------------------------------------------------

  #settings(): EngineSettings {
    const design = this.design.current;
    return settingsOf(design, derivedInstrument(design));
  }

  #designChanged(): void {
    const settings = this.#settings();
    this.live.setSettings(settings);
    this.#player?.send({ kind: 'settings', settings });
    if (!keepDesign(this.design.current)) this.notice.dispatch(() => ({ kind: 'not kept' }));
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
