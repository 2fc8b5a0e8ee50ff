/**
 * The place Kit behind its views: which sheet lies open, what is pointed at, and the board plan, made by a worker
 * whenever the connections or the wishes for the board are others. One for each application; it outlasts the place.
 */
import type { BoardWishes as Wished } from '../design/batch.ts';
import type { Design } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';
import { type BoardWishes, type Planned, planBoard, USUAL_WISHES } from '../kit/board.ts';
import type { BoardAnswer, BoardTask } from '../kit/board.worker.ts';
import { connectionsOf } from '../kit/connections.ts';
import type { Connections } from '../kit/parts.ts';
import { USUAL_BENCH } from '../kit/slip.ts';
import type { BenchLight } from '../kit/slip-values.ts';
import { memoized } from './derived.ts';
import type { Lampnote } from './lampnote.ts';
import { boardWorker } from './plan-worker.device.ts';
import { Store } from './store.ts';

export const SHEETS = ['order', 'connections', 'board', 'slip'] as const;
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
}

export interface BoardState {
  /** The last plan or refusal; null before the first. */
  readonly planned: Planned | null;
  /** A newer one is being made. */
  readonly isPlanning: boolean;
}

export const connectionList = memoized((design: Design) => connectionsOf(design));

export class KitDesk {
  readonly view = new Store<KitView>({
    sheet: 'order',
    side: 'component',
    joint: 0,
    only: 'all',
    kit: 1,
    bench: USUAL_BENCH,
  });
  readonly board = new Store<BoardState>({ planned: null, isPlanning: false });
  #asked: { readonly connections: Connections; readonly wishes: BoardWishes } | null = null;
  #id = 0;
  #worker: Promise<Worker | null> | null = null;

  show(change: Partial<KitView>): void {
    this.view.dispatch((view) => ({ ...view, ...change }));
  }

  /** Plans the board of a design, unless that is what was planned last. */
  follow(design: Design, effort: number = USUAL_WISHES.effort): void {
    const before = this.#asked?.wishes.effort ?? 0;
    const wishes = { ...wishesOf(design.batch.board), effort: Math.max(effort, before) };
    const asked = { connections: connectionList(design), wishes };
    if (this.#asked !== null && equalValues(asked, this.#asked)) return;
    this.#asked = asked;
    const task: BoardTask = { id: ++this.#id, ...asked };
    this.board.dispatch((board) => ({ ...board, isPlanning: true }));
    void this.#send(task);
  }

  /** Plans anew with more arrangements to choose from. */
  tryHarder(design: Design, effort: number): void {
    this.follow(design, effort);
  }

  async #send(task: BoardTask): Promise<void> {
    this.#worker ??= boardWorker().catch(() => null);
    const worker = await this.#worker;
    if (task.id !== this.#id) return;
    if (worker === null) {
      // Lets the page show that it is at work first.
      setTimeout(
        () =>
          task.id === this.#id &&
          this.#take({ id: task.id, planned: planBoard(task.connections, task.wishes) }),
        30,
      );
      return;
    }
    worker.onmessage = ({ data }: MessageEvent<BoardAnswer>) => this.#take(data);
    worker.onerror = () => {
      this.#worker = Promise.resolve(null);
      if (task.id === this.#id) void this.#send(task);
    };
    worker.postMessage(task);
  }

  #take({ id, planned }: BoardAnswer): void {
    if (id === this.#id) this.board.dispatch(() => ({ planned, isPlanning: false }));
  }
}

const wishesOf = ({ size, free }: Wished): BoardWishes => ({ ...USUAL_WISHES, board: size, kept: free });

const desks = new WeakMap<Lampnote, KitDesk>();

export function kitDeskOf(app: Lampnote): KitDesk {
  const desk = desks.get(app) ?? new KitDesk();
  desks.set(app, desk);
  return desk;
}
