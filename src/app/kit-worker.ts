/**
 * Sends the bench's long work to its worker and takes the answers; of each kind of task only the latest is of interest.
 * Where no worker opens, or it dies, the page does the work itself, after it has shown that it is at work.
 */
import { type KitAnswer, type KitTask, KitWork } from '../kit/kit-tasks.ts';
import { kitWorker } from './plan-worker.device.ts';

type Kind = KitTask['kind'];
type Plain<T> = T extends KitTask ? Omit<T, 'id'> : never;

/** Long enough for a frame to be drawn. */
const DRAW_MILLISECONDS = 30;

export class KitWorker {
  readonly #hear: (answer: KitAnswer) => void;
  readonly #latest = new Map<Kind, KitTask>();
  /** Kinds the worker is busy with: what comes meanwhile waits here, so that it does nothing for nobody. */
  readonly #out = new Set<Kind>();
  #id = 0;
  #worker: Promise<Worker | null> | null = null;
  #own: KitWork | null = null;

  constructor(hear: (answer: KitAnswer) => void) {
    this.#hear = hear;
  }

  ask(task: Plain<KitTask>): void {
    const numbered = { ...task, id: ++this.#id } as KitTask;
    this.#latest.set(numbered.kind, numbered);
    void this.#send(numbered);
  }

  async #send(task: KitTask): Promise<void> {
    this.#worker ??= this.#opened();
    const worker = await this.#worker;
    if (this.#latest.get(task.kind) !== task) return;
    if (worker !== null) {
      if (this.#out.has(task.kind)) return;
      this.#out.add(task.kind);
      worker.postMessage(task);
      return;
    }
    setTimeout(() => {
      if (this.#latest.get(task.kind) !== task) return;
      this.#own ??= new KitWork();
      this.#take(this.#own.answer(task));
    }, DRAW_MILLISECONDS);
  }

  async #opened(): Promise<Worker | null> {
    const worker = await kitWorker().catch(() => null);
    if (worker === null) return null;
    worker.onmessage = ({ data }: MessageEvent<KitAnswer>) => this.#take(data);
    worker.onerror = () => {
      worker.terminate();
      this.#worker = Promise.resolve(null);
      this.#out.clear();
      for (const task of this.#latest.values()) void this.#send(task);
    };
    return worker;
  }

  #take(answer: KitAnswer): void {
    this.#out.delete(answer.kind);
    const latest = this.#latest.get(answer.kind);
    if (latest?.id !== answer.id) {
      if (latest) void this.#send(latest);
      return;
    }
    this.#latest.delete(answer.kind);
    this.#hear(answer);
  }
}
