/**
 * The place Room behind its views: the answer for the design at hand, the long work behind it, the recorded day, what
 * the meter said, and what is heard. One for each application; it works only while the place is looked at.
 */
import type { Design } from '../design/design.ts';
import { startHourOf } from '../light/log-clock.ts';
import type { Hours } from '../light/sun.ts';
import type { RoomJob } from '../plan/job.ts';
import { roomLight } from '../plan/levels.ts';
import type { MeasuredDay } from '../plan/measured-day.ts';
import { type RoomAnswer, roomAnswer } from '../plan/room-answer.ts';
import { type DayWay, wayShown } from '../plan/room-day.ts';
import type { Ohms, VoiceId, Volts } from '../quantity/units.ts';
import type { RoomComplaint } from '../words/room-facts.ts';
import type { Lampnote } from './lampnote.ts';
import { planWorkerOpener } from './plan-worker.device.ts';
import { type Helper, Planner } from './planner.ts';
import type { OpenLog } from './playing-light.ts';
import { MARGIN_FROM, type RoomPiece, roomSound } from './room-sound.ts';
import { Store } from './store.ts';

export interface RoomView {
  /** How the day is shown and heard; null = in the way that serves it. */
  readonly shown: DayWay | null;
  /** Whose light is drawn. */
  readonly sensor: VoiceId;
  /** Clock at the first row of a recording, typed for that one; null = as the recording says. */
  readonly start: { readonly of: OpenLog; readonly hour: Hours } | null;
  /** When the card is followed; null = at the opening hour. */
  readonly settingUp: Hours | null;
  /** What the meter reads at the trimmers' test points; null = nothing typed. */
  readonly meter: { readonly A: Volts | null; readonly B: Volts | null };
  /** The hour the meter was read at; null = as for the card. */
  readonly meterHour: Hours | null;
}

/** Entries of a design that the answer rests on. */
const ENTRIES = [
  'timer',
  'comparator',
  'supply',
  'voices',
  'threshold',
  'noise',
  'room',
] as const satisfies readonly (keyof Design)[];

/** A run of changes is worked through once. */
const PAUSE_MILLISECONDS = 250;

export class RoomDesk {
  readonly planner: Planner<RoomJob>;
  /** Null: no light is known, or the place was never looked at. */
  readonly answer = new Store<RoomAnswer | null>(null);
  readonly view = new Store<RoomView>({
    shown: null,
    sensor: 'A',
    start: null,
    settingUp: null,
    meter: { A: null, B: null },
    meterHour: null,
  });
  readonly #app: Lampnote;
  #opener: (() => Helper | null) | null = null;
  #asked: { readonly design: Design; readonly log: OpenLog | null; readonly view: RoomView } | null = null;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  #stops: readonly (() => void)[] = [];

  constructor(app: Lampnote) {
    this.#app = app;
    this.planner = new Planner<RoomJob>(() => this.#opener?.() ?? null);
  }

  /** The place is gone to: answers from now on follow every change. */
  enter(): void {
    if (this.#stops.length > 0) return;
    const { design, session, audition, light } = this.#app;
    this.#stops = [
      design.subscribe(() => this.#follow()),
      session.subscribe(() => this.#follow()),
      this.view.subscribe(() => this.#follow()),
      audition.playing.subscribe(() => {
        if (audition.playing.current === null) light.endProgram();
      }),
      // Another light was chosen meanwhile: what was to be heard in this one is over.
      light.given.subscribe(() => {
        if (light.given.current === null && this.heard !== null) this.silence();
      }),
    ];
    this.#follow();
  }

  /** The place is left. */
  leave(): void {
    for (const stop of this.#stops) stop();
    this.#stops = [];
    clearTimeout(this.#waiting);
    this.planner.close();
    // What was under way is begun anew at the next visit.
    this.#asked = null;
  }

  show(change: Partial<RoomView>): void {
    this.view.dispatch((view) => ({ ...view, ...change }));
  }

  /** The recording that is open, set on the clock; null without one that reads. */
  get day(): MeasuredDay | null {
    const { log } = this.#app.session.current;
    if (!log?.reading?.ok || !log.choices) return null;
    return { startHour: this.startHour, points: log.reading.points };
  }

  /** Clock at the recording's first row: as typed, as the recording says, or else midnight. */
  get startHour(): Hours {
    const { log } = this.#app.session.current;
    const { start } = this.view.current;
    return (start !== null && start.of === log ? start.hour : this.clock) ?? 0;
  }

  setStartHour(hour: Hours): void {
    const { log } = this.#app.session.current;
    if (log) this.show({ start: { of: log, hour } });
  }

  /** What the recording itself says of the hour; null where its times do not tell. */
  get clock(): Hours | null {
    const { log } = this.#app.session.current;
    return log ? clockOf(log) : null;
  }

  /** What is said of a room while there is no answer for it. */
  get complaints(): readonly RoomComplaint[] {
    return roomLight(this.#app.design.current.room).complaints;
  }

  /** From a press only: plays a piece of the room's own through the instrument. */
  async hear(piece: RoomPiece): Promise<void> {
    const answer = this.answer.current;
    if (!answer) return;
    const { program, steps } = roomSound(
      piece,
      answer,
      this.#app.design.current,
      wayShown(answer, this.view.current.shown),
    );
    const { audition, light } = this.#app;
    audition.stop();
    await audition.play(`room ${piece}`, { kind: 'turns', steps, gated: true });
    // The light begins with the sound, which may have had to be switched on first.
    if (audition.playing.current?.id === `room ${piece}`) light.playProgram(program);
  }

  silence(): void {
    this.#app.audition.stop();
  }

  /** The long work once more. */
  again(): void {
    const answer = this.answer.current;
    if (answer) void this.#work(this.#app.design.current, answer, this.day);
  }

  /** Whether the passes heard are those at the margin. */
  get atTheMargin(): boolean {
    return this.#app.light.place > MARGIN_FROM;
  }

  /** The hysteresis resistor that is in now, while it grows; `step` counts from 1. */
  hysteresisHeard(step: number): Ohms | null {
    const piece = this.#app.audition.playing.current?.piece;
    if (piece?.kind !== 'turns') return null;
    return piece.steps[Math.max(0, step - 1)]?.design.voices.A.hysteresisOhms ?? null;
  }

  /** What is heard now of the room, and how far into it. */
  get heard(): RoomPiece | null {
    const id = this.#app.audition.playing.current?.id ?? '';
    return id.startsWith('room ') ? (id.slice('room '.length) as RoomPiece) : null;
  }

  #follow(): void {
    const design = this.#app.design.current;
    const { log } = this.#app.session.current;
    const view = this.view.current;
    const before = this.#asked;
    if (
      before &&
      before.log === log &&
      before.view.start === view.start &&
      before.view.settingUp === view.settingUp &&
      ENTRIES.every((entry) => before.design[entry] === design[entry])
    )
      return;
    this.#asked = { design, log, view };
    const { day } = this;
    const answer = roomAnswer(design, design.room, day, view.settingUp);
    clearTimeout(this.#waiting);
    if (answer === null) this.planner.stop();
    else this.#waiting = setTimeout(() => void this.#work(design, answer, day), PAUSE_MILLISECONDS);
    // Told from within a notification of another store: this one is free.
    this.answer.dispatch(() => answer);
  }

  async #work(design: Design, answer: RoomAnswer, day: MeasuredDay | null): Promise<void> {
    // Without a worker the page does the work itself.
    this.#opener ??= await planWorkerOpener().catch(() => () => null);
    if (this.answer.current !== answer) return;
    const { set, levels, extremes, disturbance } = answer;
    const settingUp = this.view.current.settingUp ?? design.room.opens;
    this.planner.run({
      kind: 'room',
      task: { design, set, levels, extremes, disturbance, day, settingUp },
    });
  }
}

const starts = new WeakMap<OpenLog, Hours | null>();

function clockOf(log: OpenLog): Hours | null {
  if (!log.choices) return null;
  if (!starts.has(log)) starts.set(log, startHourOf(log.text, log.choices));
  return starts.get(log) ?? null;
}

const desks = new WeakMap<Lampnote, RoomDesk>();

export function roomDeskOf(app: Lampnote): RoomDesk {
  const desk = desks.get(app) ?? new RoomDesk(app);
  desks.set(app, desk);
  return desk;
}
