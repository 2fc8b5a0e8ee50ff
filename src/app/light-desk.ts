/**
 * Where the light comes from now, stage, scene, recording or camera, and how a change of it reaches those who
 * play it: the audio thread and the page's own model.
 */
import type { LogChoices } from '../light/log-guess.ts';
import { playedFrom } from '../light/playing.ts';
import { type LightProgram, playhead, scrubbed } from '../light/program.ts';
import { SCENES, type Scene, type SceneKind } from '../light/scene.ts';
import { type Stage, stageLux } from '../light/stage.ts';
import type { Lux, Pair, Seconds } from '../quantity/units.ts';
import type { LogRefusal } from '../words/light-log.ts';
import { CameraLight } from './camera-light.ts';
import { seconds } from './clock.ts';
import {
  logProgram,
  logRefusal,
  type OpenLog,
  openedLog,
  type RoomLamp,
  readAnew,
  sceneProgram,
  steadyProgram,
} from './playing-light.ts';
import type { LightSource, Session } from './session.ts';
import { Store } from './store.ts';

/** Who plays the light. */
export interface LightSink {
  aim(lux: Pair<Lux>, over: Seconds): void;
  play(program: LightProgram, place: Seconds): void;
}

/** A hand or slider is followed this smoothly: no step of light is sharper. */
const AIM_SECONDS: Seconds = 0.02;

/** Real light brings its own ripple. */
const NO_LAMP: RoomLamp = { kind: null, mains: 50 };

export class LightDesk {
  readonly camera = new CameraLight((lux, every) => this.#aim(lux, every));
  /** A program of a place's own, played instead of the chosen source while it lasts. */
  readonly given = new Store<LightProgram | null>(null);
  readonly #session: Store<Session>;
  readonly #sink: LightSink;
  /** Where the stage or the camera last aimed. */
  #lux: Pair<Lux>;
  /** A scene or recording under way, and the page's time at its beginning. */
  #playing: { readonly program: LightProgram; readonly began: Seconds } | null = null;

  constructor(session: Store<Session>, sink: LightSink) {
    this.#session = session;
    this.#sink = sink;
    this.#lux = stageLux(session.current.stage);
  }

  /** What is played now, and how far into it. */
  get playing(): { readonly program: LightProgram; readonly place: Seconds } {
    if (!this.#playing) return { program: this.#steady(), place: 0 };
    return { program: this.#playing.program, place: seconds() - this.#playing.began };
  }

  /** The same for whoever starts at their own time 0. */
  get program(): LightProgram {
    const { program, place } = this.playing;
    return playedFrom(program, 0, place);
  }

  /** Light comes from one source at a time; leaving the camera switches it off. */
  choose(light: LightSource): void {
    if (light !== 'camera') this.camera.stop();
    this.#change({ light });
    if (light === 'stage') this.#lux = stageLux(this.#session.current.stage);
    this.#start(0);
  }

  /** Plays a program from its beginning, whatever source is chosen; it ends at `endProgram`, or with another choice. */
  playProgram(program: LightProgram): void {
    this.#playing = { program, began: seconds() };
    this.given.dispatch(() => program);
    this.#sink.play(program, 0);
  }

  /** Back to the chosen source, a scene or recording from its beginning. */
  endProgram(): void {
    if (this.given.current !== null) this.#start(0);
  }

  /** Another light altogether, from its beginning. */
  lay(light: Pick<Session, 'light' | 'stage' | 'scene' | 'lamp'>): void {
    if (light.light !== 'camera') this.camera.stop();
    this.#change(light);
    this.#lux = stageLux(light.stage);
    this.#start(0);
  }

  /** `standsIn`: the stage lights the sensors for a camera that is not on. */
  setStage(change: Partial<Stage>, standsIn = false): void {
    this.endProgram();
    this.#session.dispatch((session) => ({ ...session, stage: { ...session.stage, ...change } }));
    const { light, stage } = this.#session.current;
    if (light === 'stage' || standsIn) this.#aim(stageLux(stage), AIM_SECONDS);
  }

  /** Another scene, from its beginning. */
  chooseScene(kind: SceneKind): void {
    this.setScene(SCENES[kind]);
  }

  setScene(scene: Scene): void {
    this.#change({ scene });
    if (this.#session.current.light === 'scene') this.#start(0);
  }

  setLamp(change: Partial<RoomLamp>): void {
    this.#change({ lamp: { ...this.#session.current.lamp, ...change } });
    this.#start(this.place);
  }

  /**
   * Opens a recording's text and plays it. One that does not read is refused, and the light stays as it is; where none
   * that reads would go for it, one whose columns were found is kept beside it, to be read another way.
   */
  openLog(name: string, text: string): LogRefusal | null {
    const log = openedLog(name, text);
    const refusal = logRefusal(log);
    if (refusal === null) this.#playLog(log);
    else if (log.guess.ok && !this.#session.current.log?.reading?.ok) this.#change({ log });
    return refusal;
  }

  /** Reads the open recording another way. */
  readLogAnew(choices: LogChoices): void {
    const { log } = this.#session.current;
    if (!log) return;
    const anew = readAnew(log, choices);
    // What was refused when it was opened is played as soon as it reads.
    if (!log.reading?.ok && anew.reading?.ok) this.#playLog(anew);
    else {
      this.#change({ log: anew });
      this.#start(0);
    }
  }

  #playLog(log: OpenLog): void {
    this.camera.stop();
    this.#change({ log, light: 'log' });
    this.#start(0);
  }

  setLoop(loopLog: boolean): void {
    this.#change({ loopLog });
    this.#start(this.place);
  }

  /** Goes to a place of the scene or recording, seconds from its beginning. */
  goTo(place: Seconds): void {
    this.#start(place);
  }

  /** Seconds from the beginning of the scene or recording. */
  get place(): Seconds {
    if (!this.#playing) return 0;
    const { program, began } = this.#playing;
    const smooth = program.kind === 'ripple' ? program.of : program;
    return smooth.kind === 'points' ? playhead(scrubbed(smooth, began, 0), seconds()) : seconds() - began;
  }

  #change(change: Partial<Session>): void {
    this.#session.dispatch((session) => ({ ...session, ...change }));
  }

  #start(place: Seconds): void {
    this.given.dispatch(() => null);
    const { light, scene, lamp, log, loopLog } = this.#session.current;
    const program =
      light === 'scene' ? sceneProgram(scene, lamp) : light === 'log' ? logProgram(log, loopLog, lamp) : null;
    this.#playing = program && { program, began: seconds() - place };
    this.#sink.play(program ?? this.#steady(), place);
  }

  #steady(): LightProgram {
    const { light, lamp } = this.#session.current;
    return steadyProgram(this.#lux, light === 'camera' ? NO_LAMP : lamp);
  }

  #aim(lux: Pair<Lux>, over: Seconds): void {
    this.#lux = lux;
    this.#sink.aim(lux, over);
  }
}
