/**
 * The sound: switched on by a press, kept at its volume, faded when nothing changes, brought back when it was put
 * to sleep, built anew when it broke.
 */
import { frequencyOfNote } from '../plan/notes.ts';
import type { Lux, Pair, Seconds } from '../quantity/units.ts';
import type { Stereo } from '../sound/chorus.ts';
import type { Player, SoundTrouble } from '../sound/player.device.ts';
import type { EngineMessage, EngineSettings } from '../sound/settings.ts';
import { seconds } from './clock.ts';
import type { LightDesk } from './light-desk.ts';
import type { Live } from './live.ts';
import { Rest } from './rest.ts';
import type { Session } from './session.ts';
import { Store } from './store.ts';

export interface SoundState {
  readonly kind: 'off' | 'starting' | 'on';
  /** Why nothing is heard although it should be. */
  readonly trouble: SoundTrouble | null;
  /** Faded after a while without a change. */
  readonly faded: boolean;
}

const FADE_SECONDS: Seconds = 2;
/** The code of the sound and its worklet come within this, or not at all: a server may hang without refusing. */
const PATIENCE: Seconds = 15;
const SILENCE_DB = Number.NEGATIVE_INFINITY;
/** Where the address keeps the sound away, that is told before anybody presses in vain. */
const OFF: SoundState = {
  kind: 'off',
  trouble: globalThis.isSecureContext === false ? 'insecure' : null,
  faded: false,
};

/** Troubles that pass by themselves or with a press; the others need a new start. */
const WAITING: readonly SoundTrouble[] = ['suspended', 'interrupted'];

export class SoundDesk {
  readonly state = new Store<SoundState>(OFF);
  readonly #session: Store<Session>;
  readonly #settings: () => EngineSettings;
  readonly #light: LightDesk;
  readonly #live: Live;
  readonly #rest = new Rest(seconds());
  #player: Player | null = null;
  /** A start under way: what it will play on, and how to wait for it no longer. */
  #starting: { readonly native: AudioContext; readonly abandon: () => void } | null = null;
  /** Rises with every switching on and off: a start that was overtaken is let go. */
  #attempt = 0;

  constructor(parts: {
    session: Store<Session>;
    settings: () => EngineSettings;
    light: LightDesk;
    live: Live;
  }) {
    this.#session = parts.session;
    this.#settings = parts.settings;
    this.#light = parts.light;
    this.#live = parts.live;
  }

  /** Whether the audio thread plays, and the page's own model rests. */
  get isPlaying(): boolean {
    return this.#player !== null && this.state.current.trouble === null;
  }

  /** Level after the volume, dB below full scale. */
  get levelDb(): number {
    return this.#player?.levelDb ?? SILENCE_DB;
  }

  /** From a press only. */
  async on(): Promise<void> {
    if (this.state.current.kind !== 'off') return this.wake();
    if (this.#session.current.soundByLink === 'off' || OFF.trouble !== null) return;
    const attempt = ++this.#attempt;
    this.#set({ ...OFF, kind: 'starting' });
    const AudioContextHere = globalThis.AudioContext as typeof AudioContext | undefined;
    if (!AudioContextHere) return this.#set({ ...OFF, trouble: 'unsupported' });
    let native: AudioContext;
    try {
      // Made and woken inside the press: some browsers let sound start only there.
      native = new AudioContextHere({ latencyHint: 'interactive' });
    } catch {
      return this.#set({ ...OFF, trouble: 'no device' });
    }
    native.resume().catch(() => undefined);
    const abandoned = new Promise<void>((abandon) => {
      this.#starting = { native, abandon };
    });
    const patience = setTimeout(() => {
      this.#letGo();
      this.#set({ ...OFF, trouble: 'module' });
    }, PATIENCE * 1000);
    // Whoever asked for it waits no longer than there is something to wait for.
    await Promise.race([this.#begin(native, attempt), abandoned]);
    clearTimeout(patience);
  }

  /** What it waits for may come when the start was long given up: then nothing begins. */
  async #begin(native: AudioContext, attempt: number): Promise<void> {
    // Tone greets in the console otherwise.
    Object.assign(globalThis, { TONE_SILENCE_LOGGING: true });
    let begun: Player | null = null;
    try {
      const { Player: PlayerClass } = await import('../sound/player.device.ts');
      const player = new PlayerClass(native, {
        onFrame: (frame) => this.#heard(frame),
        onTrouble: (trouble) => player === this.#player && this.#told(trouble),
      });
      begun = player;
      const start = { settings: this.#settings(), program: this.#light.program };
      const trouble = await player.start(start, this.#session.current.volumeDb);
      if (attempt !== this.#attempt) return await player.stop();
      this.#starting = null;
      if (trouble && !WAITING.includes(trouble)) {
        await player.stop();
        return this.#set({ ...OFF, trouble });
      }
      this.#player = player;
      // What changed while the module was loading.
      player.send({ kind: 'settings', settings: this.#settings() });
      player.send({ kind: 'play', ...this.#light.playing });
      this.sendReference();
      this.touch();
      this.#set({ kind: 'on', trouble });
    } catch {
      await (begun ? begun.stop() : native.close()).catch(() => undefined);
      if (attempt !== this.#attempt) return;
      this.#starting = null;
      this.#set({ ...OFF, trouble: 'module' });
    }
  }

  /** Ramps down and lets the audio go; the page's own model takes over. */
  async off(): Promise<void> {
    await this.#letGo()?.stop();
  }

  /**
   * The page is left: the audio goes at once. A browser may hang for ever when it takes a page down while a worklet
   * still renders (Chromium 147 on a busy machine, once in some hundred reloads: the page waits for the audio thread,
   * that for the worklet's, which is gone), so no context may be open then.
   */
  leave(): void {
    void this.#letGo()?.cut();
  }

  #letGo(): Player | null {
    this.#attempt++;
    this.#starting?.native.close().catch(() => undefined);
    this.#starting?.abandon();
    this.#starting = null;
    const player = this.#player;
    this.#player = null;
    this.#set(OFF);
    if (player) this.#live.restart(this.#light.program);
    return player;
  }

  /** Any press brings a faded or sleeping sound back, and a broken one anew. */
  wake(): void {
    if (this.state.current.kind === 'starting') this.#starting?.native.resume().catch(() => undefined);
    if (!this.#player) return;
    this.touch();
    const { trouble } = this.state.current;
    if (trouble === null) return;
    if (WAITING.includes(trouble)) void this.#player.resume();
    else void this.#rebuild();
  }

  /** The page is looked at again: a sound that was put to sleep meanwhile goes on. */
  shown(): void {
    const { trouble } = this.state.current;
    if (trouble && WAITING.includes(trouble)) void this.#player?.resume();
  }

  /** Something was done: the tone need not fade. */
  touch(): void {
    this.#rest.touch(seconds());
    this.#unfade();
  }

  send(message: EngineMessage): void {
    this.#player?.send(message);
  }

  /** Plays two channels once, beside the voices; null takes them away. */
  playStereo(sound: Stereo | null): void {
    this.#player?.setStereo(sound);
  }

  setVolume(db: number): void {
    this.#player?.setVolume(db);
  }

  /** The note to compare by ear, as the session has it. */
  sendReference(): void {
    const { note, sounds } = this.#session.current.reference;
    this.#player?.setReference(sounds ? frequencyOfNote(note) : null);
  }

  async #rebuild(): Promise<void> {
    // Both begin inside the press.
    await Promise.all([this.off(), this.on()]);
  }

  /** Without the audio thread the page's own model goes on from here; the thread comes back to where that is then. */
  #told(trouble: SoundTrouble | null): void {
    if (this.isPlaying) this.#live.restart(this.#light.program);
    if (trouble === null) this.send({ kind: 'play', ...this.#light.playing });
    this.#set({ trouble });
  }

  #heard(frame: Float64Array): void {
    if (!this.isPlaying) return;
    const now = seconds();
    this.#live.take(now, frame);
    const { lux, changed } = this.#live.latest!;
    this.#followRest(now, lux, changed);
  }

  #followRest(now: Seconds, lux: Pair<Lux>, changed: boolean): void {
    if (this.#rest.see(now, lux, changed)) this.#unfade();
    else if (!this.#session.current.exhibition && !this.state.current.faded && this.#rest.isDue(now)) {
      this.#player?.setVolume(SILENCE_DB, FADE_SECONDS);
      this.#set({ faded: true });
    }
  }

  #unfade(): void {
    if (!this.state.current.faded) return;
    this.#player?.setVolume(this.#session.current.volumeDb, 0.2);
    this.#set({ faded: false });
  }

  #set(change: Partial<SoundState>): void {
    this.state.dispatch((state) => {
      const next = { ...state, ...change };
      const same = next.kind === state.kind && next.trouble === state.trouble && next.faded === state.faded;
      return same ? state : next;
    });
  }
}
