/**
 * Sends the bench's long work to its worker and takes the answers; of each kind of task only the latest is of interest.
 * A worker that dies is replaced; where none opens (the one-file page), or another dies, the page does the work itself in
 * short slices. Work that breaks off, or of which nothing is heard, is told as failed.
 */
import { failureOf, type KitAnswer, type KitFailure, type KitTask, KitWork } from '../kit/kit-tasks.ts';
import { inSlices } from '../plan/slices.ts';
import { PAGE_TURNS } from './page-turns.ts';
import { kitWorker } from './plan-worker.device.ts';

type Kind = KitTask['kind'];
type Plain<T> = T extends KitTask ? Omit<T, 'id'> : never;
export type AskedTask = Plain<KitTask>;
type Reply = KitAnswer | KitFailure;

/** Longer than any of the tasks takes on a slow machine. */
const PATIENCE_MILLISECONDS = 120_000;
/** How many workers may die before the page does the work itself. */
const DEATHS = 2;

export class KitWorker {
  readonly #hear: (reply: Reply) => void;
  readonly #latest = new Map<Kind, KitTask>();
  /**
   * Kinds the worker is busy with, and how long it is waited for: what comes meanwhile waits here, so that it does
   * nothing for nobody.
   */
  readonly #out = new Map<Kind, ReturnType<typeof setTimeout>>();
  #id = 0;
  #worker: Promise<Worker | null> | null = null;
  #deaths = 0;
  #own: KitWork | null = null;
  /** By kind, what stops the work that the page does itself. */
  readonly #stops = new Map<Kind, () => void>();

  constructor(hear: (reply: Reply) => void) {
    this.#hear = hear;
  }

  ask(task: AskedTask): void {
    const numbered = { ...task, id: ++this.#id } as KitTask;
    this.#latest.set(numbered.kind, numbered);
    this.#stops.get(numbered.kind)?.();
    void this.#send(numbered);
  }

  async #send(task: KitTask): Promise<void> {
    this.#worker ??= this.#deaths < DEATHS ? this.#opened() : Promise.resolve(null);
    const worker = await this.#worker;
    if (this.#latest.get(task.kind) !== task) return;
    if (worker !== null) {
      if (this.#out.has(task.kind)) return;
      this.#out.set(
        task.kind,
        setTimeout(() => this.#unheard(worker, task), PATIENCE_MILLISECONDS),
      );
      worker.postMessage(task);
      return;
    }
    this.#own ??= new KitWork();
    const stop = inSlices(this.#own.steps(task), PAGE_TURNS, {
      done: (answer) => this.#take(answer),
      failed: () => this.#take(failureOf(task)),
    });
    this.#stops.set(task.kind, stop);
  }

  async #opened(): Promise<Worker | null> {
    const worker = await kitWorker().catch(() => null);
    if (worker === null) return null;
    worker.onmessage = ({ data }: MessageEvent<Reply>) => this.#take(data);
    worker.onerror = () => {
      this.#deaths++;
      this.#replace(worker);
    };
    return worker;
  }

  /** Nothing was heard of a task: it is given up, and its worker with it. */
  #unheard(worker: Worker, task: KitTask): void {
    this.#take(failureOf(task));
    this.#replace(worker);
  }

  /** Lets a worker go; what it was busy with is sent anew. */
  #replace(worker: Worker): void {
    worker.onmessage = null;
    worker.onerror = null;
    worker.terminate();
    this.#worker = null;
    for (const timer of this.#out.values()) clearTimeout(timer);
    this.#out.clear();
    for (const task of this.#latest.values()) void this.#send(task);
  }

  #take(reply: Reply): void {
    const kind = reply.kind === 'failed' ? reply.of : reply.kind;
    clearTimeout(this.#out.get(kind));
    this.#out.delete(kind);
    const latest = this.#latest.get(kind);
    if (latest?.id !== reply.id) {
      if (latest) void this.#send(latest);
      return;
    }
    this.#latest.delete(kind);
    this.#hear(reply);
  }
}
