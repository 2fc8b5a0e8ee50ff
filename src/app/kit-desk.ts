/**
 * The place Kit behind its views: which sheet lies open, what is pointed at, and the long work of the bench: the board
 * plan, the ranking of faults, what one trouble does. One for each application; it outlasts the place.
 */
import { DEFAULT_BATCH, type BoardWishes as Wished } from '../design/batch.ts';
import type { Design } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';
import { DEFAULT_PITCH } from '../design/pitch.ts';
import { DEFAULT_ROOM } from '../design/room.ts';
import type { BoardPlan } from '../kit/board/plan.ts';
import { type BoardWishes, type Planned, USUAL_WISHES } from '../kit/board/plan-board.ts';
import { connectionsOf } from '../kit/connections.ts';
import { type Findings, NOTHING } from '../kit/fault-finder.ts';
import type { KitAnswer, KitFailure, KitTask, Ranked, Trouble, Troubled } from '../kit/kit-tasks.ts';
import { missingLinks } from '../kit/missing-links.ts';
import { USUAL_BENCH } from '../kit/slip.ts';
import type { BenchLight } from '../kit/slip-values.ts';
import type { Hertz, Lux, VoiceId, Volts } from '../quantity/units.ts';
import { memoized } from './derived.ts';
import { type AskedTask, KitWorker } from './kit-worker.ts';
import type { Lampnote } from './lampnote.ts';
import { Store } from './store.ts';

export const SHEETS = [
  'order',
  'connections',
  'board',
  'cards',
  'slip',
  'faults',
  'whatif',
  'sound',
  'log',
] as const;
export type Sheet = (typeof SHEETS)[number];

export interface KitView {
  readonly sheet: Sheet;
  readonly side: 'component' | 'copper';
  /** Place in the list of joints, from 0. */
  readonly joint: number;
  /** Cuts, links or parts stand out, or all is drawn alike. */
  readonly only: 'all' | 'cuts' | 'links' | 'parts';
  /** Number of the kit on the bench. */
  readonly kit: number;
  /** Light at an open sensor and at a shaded one, on the bench. */
  readonly bench: BenchLight;
  /** Place in the list of build steps, from 0. */
  readonly step: number;
  /** What was heard and measured on the board that fails. */
  readonly findings: Findings;
  /** What was heard of the board on the bench, and told of its light. Null = not yet. */
  readonly heard: HeardBoard;
  /** What is supposed to be wrong: the kind of mistake, and its place in the list of such places. */
  readonly mistake: { readonly kind: 'cut' | 'link' | 'bridge' | 'joint'; readonly place: number };
}

export interface HeardBoard {
  readonly voice: VoiceId;
  readonly now: Hertz | null;
  /** Trimmer fully clockwise, and fully anticlockwise. */
  readonly low: Hertz | null;
  readonly high: Hertz | null;
  /** Light at which the voice just switched on, and the reference then. */
  readonly justOnLux: Lux | null;
  readonly referenceVolts: Volts | null;
}

export const NOT_HEARD: Omit<HeardBoard, 'voice'> = {
  now: null,
  low: null,
  high: null,
  justOnLux: null,
  referenceVolts: null,
};

/** Long work, and its last outcome; null before the first. */
export interface Worked<T> {
  readonly last: T | null;
  readonly isWorking: boolean;
  /** It broke off, and `last` is from before. */
  readonly hasFailed: boolean;
}

const IDLE = { last: null, isWorking: false, hasFailed: false } as const;

export const connectionList = memoized((design: Design) => connectionsOf(design));

export const linksMissing = memoized(missingLinks);

/** The plan of the design as it is now; null while there is none. */
export const planNow = ({ last, isWorking }: Worked<Planned>): BoardPlan | null =>
  !isWorking && last?.ok ? last.plan : null;

/** The design without what changes no board: the same object for the same circuit would be too much to ask. */
const circuitOf = memoized(
  (design: Design): Design => ({
    ...design,
    name: '',
    notes: '',
    batch: DEFAULT_BATCH,
    pitch: DEFAULT_PITCH,
    room: DEFAULT_ROOM,
  }),
);

export class KitDesk {
  readonly view = new Store<KitView>({
    sheet: 'order',
    side: 'component',
    joint: 0,
    only: 'all',
    kit: 1,
    bench: USUAL_BENCH,
    step: 0,
    findings: NOTHING,
    heard: { voice: 'A', ...NOT_HEARD },
    mistake: { kind: 'cut', place: 0 },
  });
  readonly board = new Store<Worked<Planned>>(IDLE);
  readonly ranked = new Store<Worked<Ranked>>(IDLE);
  readonly troubled = new Store<Worked<Troubled>>(IDLE);
  readonly #worker = new KitWorker((reply) => this.#take(reply));
  #effort = USUAL_WISHES.effort;
  /** Of each kind, what was asked last. */
  readonly #asked = new Map<KitTask['kind'], AskedTask>();

  show(change: Partial<KitView>): void {
    this.view.dispatch((view) => ({ ...view, ...change }));
  }

  /** Plans the board of a design, unless that is what was planned last. */
  follow(design: Design): void {
    const wishes = wishesOf(design.batch.board, this.#effort);
    this.#askNew({ kind: 'board', connections: connectionList(design), wishes });
  }

  get effort(): number {
    return this.#effort;
  }

  /** Plans anew with more searches. */
  tryHarder(design: Design, effort: number): void {
    this.#effort = Math.max(this.#effort, effort);
    this.follow(design);
  }

  /** Ranks the faults of a design by what was found, unless that is what was ranked last. */
  findFault(design: Design): void {
    const { bench, findings } = this.view.current;
    const { last, isWorking } = this.board.current;
    // Which links can be missing the plan tells; it is soon there.
    if (isWorking) return;
    const links = last?.ok ? linksMissing(last.plan) : [];
    this.#askNew({ kind: 'faults', design: circuitOf(design), bench, links, findings });
  }

  /** Works out what a trouble does to a board of a design. */
  tryTrouble(design: Design, trouble: Trouble): void {
    this.#askNew({ kind: 'trouble', design: circuitOf(design), bench: this.view.current.bench, trouble });
  }

  /** What broke off is asked once more. */
  again(kind: KitTask['kind']): void {
    const task = this.#asked.get(kind);
    if (task) this.#ask(task);
  }

  #askNew(task: AskedTask): void {
    if (equalValues(task, this.#asked.get(task.kind))) return;
    this.#asked.set(task.kind, task);
    this.#ask(task);
  }

  #ask(task: AskedTask): void {
    this.#storeOf(task.kind).dispatch(atWork);
    this.#worker.ask(task);
  }

  #storeOf(kind: KitTask['kind']): Store<Worked<unknown>> {
    const stores = { board: this.board, faults: this.ranked, trouble: this.troubled };
    return stores[kind] as Store<Worked<unknown>>;
  }

  #take(reply: KitAnswer | KitFailure): void {
    switch (reply.kind) {
      case 'board':
        this.board.dispatch(() => done(reply.planned));
        return;
      case 'faults':
        this.ranked.dispatch(() => done(reply.ranked));
        return;
      case 'trouble':
        this.troubled.dispatch(() => done(reply.troubled));
        return;
      case 'failed':
        this.#storeOf(reply.of).dispatch((work) => ({ ...work, isWorking: false, hasFailed: true }));
    }
  }
}

const atWork = <T>(work: Worked<T>): Worked<T> => ({ ...work, isWorking: true, hasFailed: false });
const done = <T>(last: T): Worked<T> => ({ last, isWorking: false, hasFailed: false });

const wishesOf = ({ size, free, resistors }: Wished, effort: number): BoardWishes => ({
  board: size,
  kept: free,
  resistors,
  effort,
});

const desks = new WeakMap<Lampnote, KitDesk>();

export function kitDeskOf(app: Lampnote): KitDesk {
  const desk = desks.get(app) ?? new KitDesk();
  desks.set(app, desk);
  return desk;
}
