/**
 * The application behind the views: the document, the sitting, the light, the sound, and how a change of one
 * reaches the others. Views read its stores and call its methods; they do no arithmetic of their own.
 */

import { type Command, replaceWith, turnThreshold } from '../design/commands.ts';
import { type Complaint, decodeText, encodeText } from '../design/decode.ts';
import { type Design, trimmersOf } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';
import { NAME_LENGTH } from '../design/limits.ts';
import { type JustOn, justOn } from '../plan/threshold.ts';
import type { Lux, Pair, Seconds, VoiceId } from '../quantity/units.ts';
import { type EngineSettings, FRAMES_PER_SECOND, settingsOf } from '../sound/settings.ts';
import { excerpt } from '../words/excerpt.ts';
import type { LogRefusal } from '../words/light-log.ts';
import { type Language, speak, spokenLanguage } from '../words/spoken.ts';
import {
  languageIn,
  lessonIn,
  linkFor,
  linkSentence,
  type Place,
  placeIn,
  readLink,
  soundIn,
  withLanguage,
  without,
} from './address.ts';
import { loadAnew } from './anew.device.ts';
import { Audition } from './audition.ts';
import { seconds } from './clock.ts';
import { derivedInstrument } from './derived.ts';
import { Keeping } from './keeping.ts';
import { comingWords, type LoadedWords } from './language.ts';
import { LightDesk } from './light-desk.ts';
import { LightRecorder } from './light-recorder.ts';
import { Live, type LiveFrame } from './live.ts';
import { isReady } from './presets.ts';
import type { Session } from './session.ts';
import { SoundDesk } from './sound-desk.ts';
import { keepSession } from './storage.device.ts';
import { DocumentStore, Store } from './store.ts';

/** A notice under the bar: what happened to a file, a link or the language. */
export type Notice =
  | { readonly kind: 'refused file'; readonly name: string; readonly complaints: readonly Complaint[] }
  | { readonly kind: 'unread file'; readonly name: string }
  | { readonly kind: 'refused log'; readonly name: string; readonly refusal: LogRefusal }
  | { readonly kind: 'log in lesson'; readonly name: string }
  | { readonly kind: 'refused link'; readonly sentence: string }
  | { readonly kind: 'copied'; readonly link: string | null }
  | { readonly kind: 'no words'; readonly language: Language }
  | { readonly kind: 'part missing' }
  | { readonly kind: 'opened'; readonly name: string; readonly leftLesson?: boolean };

/** Notices of a file that was not opened: over when the next one is. */
const REFUSED_FILE: readonly Notice['kind'][] = [
  'refused file',
  'unread file',
  'refused log',
  'log in lesson',
];

/** A change of any of these is heard. */
const ENTRIES_HEARD = [
  'timer',
  'comparator',
  'supply',
  'voices',
  'threshold',
  'output',
  'noise',
] as const satisfies readonly (keyof Design)[];

/** Who has the page's bench for a while: lessons. Nobody, until their place is first gone to. */
export interface Guest {
  /** Whether a change of the design is one it lets through. */
  mayChange(before: Design, after: Design): boolean;
  /** Told of every frame. */
  look(frame: LiveFrame): void;
  /** Gives the maker's own bench back, if it has it. */
  leave(): void;
}

export class Lampnote {
  readonly design: DocumentStore<Design>;
  readonly session: Store<Session>;
  readonly notice = new Store<Notice | null>(null);
  /** The page was to be loaded anew, but is not served. */
  readonly notServed = new Store(false);
  readonly keeping: Keeping;
  readonly live: Live;
  readonly light: LightDesk;
  readonly sound: SoundDesk;
  readonly audition: Audition;
  /** The light being written down, and the last one that was. */
  readonly recording = new Store<{ readonly running: boolean; readonly seconds: Seconds }>({
    running: false,
    seconds: 0,
  });

  #recorder: LightRecorder | null = null;
  #keptSession: Session;
  /** The language last asked for. */
  #asked: Language;
  #following = 0;
  /** Addresses gone to so far. */
  #addresses = 0;
  #designHeard: Design;
  #guest: Guest | null = null;
  /** The page is being loaded anew, the work carried in its address. */
  #isGoing = false;
  /** What is heard instead of the design, while there is such a thing. */
  #heard: EngineSettings | null = null;

  constructor(design: Design, session: Session, keeping = new Keeping()) {
    this.keeping = keeping;
    this.design = new DocumentStore(design);
    this.session = new Store(session);
    this.#keptSession = session;
    this.#asked = session.language;
    this.#designHeard = design;
    this.light = new LightDesk(this.session, {
      aim: (lux, over) => {
        this.live.aim(lux, over);
        this.sound.send({ kind: 'aim', lux, seconds: over });
      },
      play: (program, place) => {
        this.live.play(program, place);
        this.sound.send({ kind: 'play', program, place });
      },
    });
    this.live = new Live(this.#settings(), this.light.program);
    this.sound = new SoundDesk({
      session: this.session,
      settings: () => this.#heard ?? this.#settings(),
      light: this.light,
      live: this.live,
    });
    this.audition = new Audition({
      on: async () => {
        await this.sound.on();
        return this.sound.isPlaying;
      },
      settings: (settings) => {
        this.#heard = settings;
        this.sound.touch();
        this.sound.send({ kind: 'settings', settings: settings ?? this.#settings() });
      },
      stereo: (sound) => this.sound.playStereo(sound),
      missing: () => this.notice.dispatch(() => ({ kind: 'part missing' })),
    });
    this.sound.state.subscribe(() => {
      if (this.sound.state.current.kind === 'off') this.audition.stop();
    });
    this.live.subscribe((frame) => this.#guest?.look(frame));
    this.live.subscribe(({ time, lux }) => this.#writeDown(time, lux));
    this.design.subscribe(() => this.#designChanged());
    this.session.subscribe(() => {
      this.#keepSession();
      this.sound.touch();
    });
  }

  /** Begins to follow the light on the page, as often as the audio thread tells of it. */
  run(): void {
    // Not tied to the screen's frames: where nothing changes, the browser need not draw.
    this.#following = window.setInterval(() => {
      if (!this.sound.isPlaying) this.live.advance(seconds());
    }, 1000 / FRAMES_PER_SECOND);
  }

  /** Follows again in a page that was put by and taken out as it was: other tabs may have gone on meanwhile. */
  comeBack(): void {
    this.run();
    this.keeping.look();
  }

  /** Stops following, and lets sound and camera go. */
  leave(): void {
    clearInterval(this.#following);
    this.keeping.flush();
    this.light.camera.stop();
    this.sound.leave();
  }

  /** Goes to another place of the page. What was heard or watched there only stays behind. */
  goTo(place: Place): void {
    if (place === this.session.current.place) return;
    this.audition.stop();
    this.light.endProgram();
    this.#guest?.leave();
    if (this.session.current.light === 'camera') this.light.choose('stage');
    this.session.dispatch((session) => ({ ...session, place }));
  }

  /** One guest for each page. */
  receive(guest: Guest): void {
    this.#guest = guest;
  }

  // --- the document -------------------------------------------------------------------------------------

  /** Changes the design as one step; the same `gesture` keeps a drag one step. */
  change(label: string, command: Command, gesture: unknown = null): void {
    this.sound.touch();
    this.design.change(label, (before) => this.#allowed(before, command(before)), gesture);
  }

  /** In a lesson only what the step lets the class touch. */
  #allowed(before: Design, after: Design): Design {
    return this.#guest?.mayChange(before, after) === false ? before : after;
  }

  /** The design as another tab has kept it, as one step; where that is gone, this one is kept. */
  takeTheirs(label: string): void {
    const theirs = this.keeping.takeTheirs();
    if (theirs) this.#takeUp(theirs, label);
    else this.keeping.keepMine();
  }

  /** Opens the design that was laid aside, as one step. */
  openAside(label: string): void {
    const { aside } = this.keeping.state.current;
    if (!aside?.holds.ok) return;
    this.#takeUp(aside.holds.design, label);
    this.keeping.letGo();
  }

  /** The maker's own from now on: a lesson is left first. */
  #takeUp(design: Design, label: string): void {
    this.#guest?.leave();
    const before = this.design.current;
    if (!equalValues(before, design) && !isReady(before)) this.keeping.layBefore(before);
    this.design.change(label, replaceWith(design));
  }

  /** Opens a file's text. A file that does not read leaves the design as it is and says why. */
  openText(name: string, text: string, label: string): boolean {
    const decoded = decodeText(text);
    const leftLesson = this.design.isLent;
    if (decoded.ok) this.#takeUp(decoded.design, label);
    this.notice.dispatch(() =>
      decoded.ok
        ? { kind: 'opened', name: excerpt(decoded.design.name, NAME_LENGTH), leftLesson }
        : { kind: 'refused file', name, complaints: decoded.complaints },
    );
    return decoded.ok;
  }

  /**
   * Goes to the place an address names, and opens the design it carries, if it carries one. A damaged link opens nothing
   * and says why.
   */
  async openLink(hash: string, label: string): Promise<void> {
    const asked = ++this.#addresses;
    const language = languageIn(hash);
    if (language) await this.speak(language);
    const place = placeIn(hash);
    // Whoever has gone on while the words were on their way is not called back.
    if (place && asked === this.#addresses) this.goTo(place);
    const [sound, lesson] = [soundIn(hash), lessonIn(hash)];
    if (sound) this.setSession({ soundByLink: sound });
    if (lesson) this.setSession({ lessonByLink: lesson });
    const read = await readLink(hash);
    if (read.ok) this.#takeUp(read.design, label);
    // A reload goes on with what is kept from now on, not with the link once more.
    if (read.ok && !this.keeping.isRefused) history.replaceState(null, '', without(location.hash, 'd'));
    const sentence = read.ok ? null : linkSentence(read.reason);
    if (read.ok || sentence)
      this.notice.dispatch(() =>
        read.ok
          ? { kind: 'opened', name: excerpt(read.design.name, NAME_LENGTH) }
          : { kind: 'refused link', sentence: sentence! },
      );
  }

  /**
   * Speaks a language from now on, as soon as its words are there. Where they do not come, all stays as it is: false.
   * Words that come late are spoken then, if nobody has chosen another language.
   */
  async speak(language: Language): Promise<boolean> {
    this.#asked = language;
    const { words, inTime } = comingWords(language);
    const loaded = await inTime;
    if (loaded === null) void words.then((late) => this.#speakNow(language, late));
    return this.#speakNow(language, loaded ?? { ok: false });
  }

  #speakNow(language: Language, words: LoadedWords): boolean {
    if (this.#asked !== language) return false;
    if (!words.ok) {
      this.notice.dispatch(() => ({ kind: 'no words', language }));
      // A page that was to begin in another language says which one it speaks.
      const spoken = spokenLanguage();
      this.session.dispatch((session) =>
        session.language === spoken ? session : { ...session, language: spoken },
      );
      return false;
    }
    speak(language, words.lists);
    this.session.dispatch((session) => ({ ...session, language }));
    this.notice.dispatch((notice) => (notice?.kind === 'no words' ? null : notice));
    return true;
  }

  /** The language chosen by hand counts from now on, whatever the address asked for. */
  async choose(language: Language): Promise<void> {
    if (languageIn(location.hash) !== null) history.replaceState(null, '', without(location.hash, 'lang'));
    await this.speak(language);
  }

  /** Loads the page anew, with the work and the language last asked for, if it is served now. */
  async anew(): Promise<void> {
    this.notServed.dispatch(() => false);
    const going = loadAnew(async () => {
      this.#guest?.leave();
      const here = without(location.hash, 'd') || `#/${this.session.current.place}`;
      const hash = this.keeping.isRefused ? await this.link() : here;
      this.#isGoing = true;
      return this.#asked === this.session.current.language ? hash : withLanguage(hash, this.#asked);
    });
    await going.then(
      (isGoing) => this.notServed.dispatch(() => !isGoing),
      // Work that is kept nowhere, and that no link holds, must not go with the page.
      (reason) => this.tellNoLink(reason),
    );
  }

  /** The part of an address from # on that opens a design. Rejects with a sentence where there can be none. */
  link(design: Design = this.design.current): Promise<string> {
    return linkFor(design, this.session.current.place);
  }

  /** Says why there is no link. */
  tellNoLink({ message }: Error): void {
    this.notice.dispatch(() => ({ kind: 'refused link', sentence: message }));
  }

  /** A file dropped or chosen: a design, or else a light log. */
  openFile(name: string, text: string, label: string): void {
    if (/\.json$/i.test(name) || text.trimStart().startsWith('{')) this.openText(name, text, label);
    else this.openLog(name, text);
  }

  /** Opens a light log and plays it. One that does not read, or that comes in a lesson, leaves the light as it is and is told. */
  openLog(name: string, text: string): void {
    // The bench is the lesson's, and a recording no light of it.
    const inLesson = this.design.isLent;
    const refusal = inLesson ? null : this.light.openLog(name, text);
    this.notice.dispatch((notice) => {
      if (inLesson) return { kind: 'log in lesson', name };
      if (refusal) return { kind: 'refused log', name, refusal };
      return notice && REFUSED_FILE.includes(notice.kind) ? null : notice;
    });
  }

  /** The design as a file's text. */
  fileText(design: Design = this.design.current): string {
    return encodeText(design);
  }

  /** Whether what was done would go with the page: this browser keeps nothing, and no link carries it on. */
  get wouldLose(): boolean {
    const { history, isLent } = this.design;
    return this.keeping.isRefused && (history.undo !== null || isLent) && !this.#isGoing;
  }

  // --- light --------------------------------------------------------------------------------------------

  /** Begins to write the light down, or ends it. */
  record(running: boolean): void {
    this.sound.touch();
    if (running) this.#recorder = new LightRecorder();
    this.recording.dispatch((recording) => ({ ...recording, running }));
  }

  /** The light last written down; null before there is any. */
  get recorded(): LightRecorder['rows'] | null {
    return this.#recorder && this.#recorder.seconds > 0 ? this.#recorder.rows : null;
  }

  #writeDown(time: Seconds, lux: Pair<Lux>): void {
    if (!this.recording.current.running || !this.#recorder) return;
    const running = this.#recorder.take(time, lux);
    this.recording.dispatch(() => ({ running, seconds: this.#recorder!.seconds }));
  }

  setSession(
    change: Partial<
      Pick<
        Session,
        | 'look'
        | 'volumeDb'
        | 'cameraLux'
        | 'exhibition'
        | 'soundByLink'
        | 'lessonByLink'
        | 'hosted'
        | 'classWord'
        | 'presenterKeys'
        | 'vibrates'
      >
    >,
  ): void {
    this.session.dispatch((session) => ({ ...session, ...change }));
    if (change.volumeDb !== undefined) this.sound.setVolume(change.volumeDb);
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

  /** A note to compare by ear; heard while the sound is on. */
  setReference(change: Partial<Session['reference']>): void {
    this.session.dispatch((session) => ({ ...session, reference: { ...session.reference, ...change } }));
    this.sound.sendReference();
  }

  // --- how one thing reaches the others --------------------------------------------------------------------

  #settings(): EngineSettings {
    const design = this.design.current;
    return settingsOf(design, derivedInstrument(design));
  }

  /** Stage and scene move many times a second; what is kept seldom does. */
  #keepSession(): void {
    // A language whose words did not come is the one to begin with next time all the same.
    const session = { ...this.session.current, language: this.#asked };
    const isKept = keepSession(session, this.#keptSession);
    if (isKept !== null) this.keeping.told('settings', isKept);
    this.#keptSession = session;
  }

  #designChanged(): void {
    const { current } = this.design;
    const isHeard = ENTRIES_HEARD.some((entry) => current[entry] !== this.#designHeard[entry]);
    this.#designHeard = current;
    if (isHeard) {
      this.audition.stop();
      const settings = this.#settings();
      this.live.setSettings(settings);
      this.sound.send({ kind: 'settings', settings });
    }
    if (!this.design.isLent) this.keeping.keep(current, this.design.isMoving);
  }
}
