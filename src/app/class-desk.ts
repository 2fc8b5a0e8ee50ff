/**
 * A lesson on the page. While it is open the page's design and light are the lesson's; the maker's own lie aside, whole
 * and with their history, and come back when the lesson is left. A lesson that was left goes on where it was.
 */
import type { Design } from '../design/design.ts';
import type { Bench } from '../lesson/bench.ts';
import type { Lesson } from '../lesson/lesson.ts';
import type { Progress } from '../lesson/progress.ts';
import * as progress from '../lesson/progress.ts';
import { type KeptLesson, readSitting, resumed, sittingText } from '../lesson/sitting.ts';
import { keepsTo } from '../lesson/touched.ts';
import { type Lux, type Seconds, VOICES } from '../quantity/units.ts';
import type { Guest, Lampnote } from './lampnote.ts';
import type { LiveFrame } from './live.ts';
import type { Session } from './session.ts';
import { keepSitting, keptSitting } from './storage.device.ts';
import { Store } from './store.ts';

export interface OpenLesson {
  readonly lesson: Lesson;
  readonly progress: Progress;
}

/** What the desk needs of the page. */
export interface ClassBench {
  /** What lies on the page's bench. */
  present(): Bench;
  /** Lays a lesson's bench out instead. */
  lay(bench: Bench): void;
  /** The maker's own design and light again. */
  giveBack(): void;
}

/** Where how far the lessons came outlasts a reload. */
export interface Sitting {
  read(): string | null;
  keep(text: string): void;
}

/** The model is looked at this often, and at once when a gate is shown otherwise: on a slow page frames are far apart. */
const LOOK_SECONDS: Seconds = 0.2;

export class ClassDesk implements Guest {
  readonly open = new Store<OpenLesson | null>(null);
  readonly #bench: ClassBench;
  /** Lessons that were left, by name. */
  readonly #left = new Map<string, Progress>();
  readonly #sitting: Sitting;
  /** Lessons of this tab from before it was loaded anew, by name. */
  readonly #before: ReadonlyMap<string, KeptLesson>;
  #looked: Seconds = Number.NEGATIVE_INFINITY;
  #shown = '';

  constructor(bench: ClassBench, sitting: Sitting) {
    this.#bench = bench;
    this.#sitting = sitting;
    this.#before = new Map(readSitting(sitting.read()).map((kept) => [kept.lesson, kept]));
  }

  /** What lies on the bench now. */
  get bench(): Bench {
    return this.#bench.present();
  }

  /** How far a lesson had come when it was left; null = not begun. */
  leftAt(lesson: Lesson): Pick<Progress, 'step' | 'finished'> | null {
    return this.#left.get(lesson.id) ?? this.#before.get(lesson.id) ?? null;
  }

  /** Opens a lesson, its steps made from `base`: where it was left, or at its first step. One that had been finished starts again. */
  begin(lesson: Lesson, base: Design): void {
    this.leave();
    const own = this.#bench.present();
    const kept = this.#before.get(lesson.id);
    const before = this.#left.get(lesson.id) ?? (kept && resumed(lesson, kept, own, base));
    const anew = before?.finished
      ? progress.restart(lesson, before, progress.benchOf(lesson, before))
      : before;
    const next = anew ? { ...anew, own } : progress.begin(lesson, own, base);
    this.#bench.lay(progress.benchOf(lesson, next));
    this.open.dispatch(() => ({ lesson, progress: next }));
    this.#keep();
  }

  /** Closes the lesson; the maker's own bench comes back. Nothing happens when none is open. */
  leave(): void {
    const { current } = this.open;
    if (current === null) return;
    const { lesson } = current;
    this.#left.set(lesson.id, progress.kept(lesson, current.progress, this.#bench.present()));
    this.open.dispatch(() => null);
    this.#bench.giveBack();
  }

  /** Whether the design may change so: a step allows only what its controls write. */
  mayChange(before: Design, after: Design): boolean {
    const { current } = this.open;
    const controls = current && progress.controlsOf(current.lesson, current.progress);
    return controls === null || keepsTo(controls, before, after);
  }

  /** The next thing there is to do: begin after a notice, try after a guess, show after the trial, then the next step. */
  advance(): void {
    this.#change((lesson, now) => {
      // In free play the lesson waits.
      if (now.mode === 'free') return now;
      const { phase } = progress.recordOf(lesson, now);
      switch (phase) {
        case 'notice':
          return progress.noticed(lesson, now);
        case 'ask':
          return progress.tried(lesson, now);
        case 'try':
          return progress.revealed(lesson, now);
        case 'reveal':
          return progress.next(lesson, now, this.#bench.present());
      }
    });
  }

  answer(answer: progress.Answer): void {
    this.#change((lesson, now) => progress.answered(lesson, now, answer));
  }

  /** Goes on without a guess. */
  pass(): void {
    this.#change((lesson, now) => progress.tried(lesson, progress.answered(lesson, now, { kind: 'passed' })));
  }

  count(option: string, hands: number): void {
    this.#change((lesson, now) => progress.counted(lesson, now, option, hands));
  }

  /** One more pupil's place on the light axis; null takes the last back. */
  point(lux: Lux | null): void {
    this.#change((lesson, now) => progress.pointed(lesson, now, lux));
  }

  /** Shows the answer although the step has not been met. */
  showAnyway(): void {
    this.#change((lesson, now) => (now.mode === 'free' ? now : progress.revealed(lesson, now, true)));
  }

  back(): void {
    this.#change((lesson, now) => progress.back(lesson, now, this.#bench.present()));
  }

  restart(): void {
    this.#change((lesson, now) => progress.restart(lesson, now, this.#bench.present()), true);
  }

  /** The step's bench as it was set up. */
  resetBench(): void {
    this.#change((lesson, now) => progress.resetBench(lesson, now), true);
  }

  /** Into free play, or back to the lesson. */
  toggleFree(): void {
    this.#change((lesson, now) =>
      now.mode === 'free'
        ? progress.toLesson(lesson, now, this.#bench.present())
        : progress.toFree(lesson, now, this.#bench.present()),
    );
  }

  /** Looks at the running model. */
  look(frame: LiveFrame): void {
    const { current } = this.open;
    if (current === null) return;
    const shown = VOICES.map((voice) => frame.shown[voice].kind).join();
    const lately = frame.time >= this.#looked && frame.time - this.#looked < LOOK_SECONDS;
    if (lately && shown === this.#shown) return;
    this.#looked = frame.time;
    this.#shown = shown;
    // What is seen many times a second is no part of what is kept.
    this.#move((lesson, now) => progress.looked(lesson, now, this.#bench.present(), frame));
  }

  #change(next: (lesson: Lesson, now: Progress) => Progress, lays = false): void {
    if (this.#move(next, lays)) this.#keep();
  }

  /** False when nothing has come of it. */
  #move(next: (lesson: Lesson, now: Progress) => Progress, lays = false): boolean {
    const { current } = this.open;
    if (current === null) return false;
    const { lesson, progress: before } = current;
    const after = next(lesson, before);
    if (after === before) return false;
    if (lays || whereOf(lesson, before) !== whereOf(lesson, after))
      this.#bench.lay(progress.benchOf(lesson, after));
    this.open.dispatch(() => ({ lesson, progress: after }));
    return true;
  }

  #keep(): void {
    const { current } = this.open;
    const known = new Map(this.#left);
    if (current) known.set(current.lesson.id, current.progress);
    const before = [...this.#before.values()].filter(({ lesson }) => !known.has(lesson));
    this.#sitting.keep(sittingText([...known.values()], before));
  }
}

/** Another bench lies there at another one of these. */
function whereOf(lesson: Lesson, now: Progress): string {
  const waits = progress.recordOf(lesson, now).phase === 'notice';
  return `${now.mode} ${now.step} ${waits}`;
}

/** The page's bench, lent to lessons. */
function benchOfPage(app: Lampnote): ClassBench {
  let own: Pick<Session, 'light' | 'stage' | 'scene' | 'lamp'> | null = null;
  const lightNow = () => {
    const { light, stage, scene, lamp } = app.session.current;
    return { light, stage, scene, lamp };
  };
  return {
    present: (): Bench => {
      const { light, ...rest } = lightNow();
      return {
        design: app.design.current,
        // A recording is no light of a lesson.
        light: { ...rest, source: light === 'log' ? 'stage' : light },
      };
    },
    lay: ({ design, light: { source, ...rest } }) => {
      own ??= lightNow();
      app.design.lend(design);
      app.light.lay({ ...rest, light: source });
    },
    giveBack: () => {
      app.design.giveBack();
      if (own) app.light.lay({ ...own, light: own.light === 'camera' ? 'stage' : own.light });
      own = null;
    },
  };
}

const desks = new WeakMap<Lampnote, ClassDesk>();

export function classDeskOf(app: Lampnote): ClassDesk {
  const known = desks.get(app);
  if (known) return known;
  const desk = new ClassDesk(benchOfPage(app), { read: keptSitting, keep: keepSitting });
  desks.set(app, desk);
  app.receive(desk);
  return desk;
}
