/**
 * Sends long work to a worker and keeps what is known of it: the latest job wins, it can be stopped, and a worker that
 * dies is replaced. Where no worker opens (the one-file page), the page does the work itself in short slices.
 */
import type { Job, ProgressOf, Report, ReportOf, Request, SearchJob } from '../plan/job.ts';
import { Workbench } from '../plan/job.ts';
import { PAGE_TURNS } from './page-turns.ts';
import { Store } from './store.ts';

export type Planning<J extends Job = SearchJob> =
  | { readonly kind: 'idle' }
  | {
      readonly kind: 'working';
      readonly progress: ProgressOf<J> | null;
      readonly before: ReportOf<J> | null;
      /** The worker broke off, and the job was begun once more. */
      readonly anew: boolean;
    }
  | { readonly kind: 'done'; readonly report: ReportOf<J> }
  /** Stopped by the person; `before` is the last finished result. */
  | { readonly kind: 'stopped'; readonly before: ReportOf<J> | null }
  | { readonly kind: 'failed'; readonly message: string; readonly before: ReportOf<J> | null };

/** As much of a worker as is needed. */
export interface Helper {
  postMessage(request: Request): void;
  terminate(): void;
  onmessage: ((event: { readonly data: Report }) => void) | null;
  onerror: ((event: unknown) => void) | null;
}

/** How often a job that kills its worker is tried on a worker before the page does it itself. */
const TRIES = 2;
/** A worker tells of its progress many times a second; one that says nothing at two looks in a row is gone. */
const LOOK_MILLISECONDS = 8000;
const LOOKS = 2;

/** For jobs of one kind. */
export class Planner<J extends Job = SearchJob> {
  readonly state = new Store<Planning<J>>({ kind: 'idle' });

  readonly #open: () => Helper | null;
  #helper: Helper | null = null;
  #bench: Workbench | null = null;
  #withoutHelper = false;
  #id = 0;
  #job: J | null = null;
  #tries = 0;
  #watch: ReturnType<typeof setInterval> | undefined;
  /** Looks in a row at which the worker had said nothing. */
  #silent = 0;
  #finished: ReportOf<J> | null = null;

  /** `open` gives a new worker, or null (or throws) where none can be had. */
  constructor(open: () => Helper | null) {
    this.#open = open;
  }

  /** Begins a job; one under way is given up. */
  run(job: J): void {
    this.#giveUp();
    this.#job = job;
    this.#tries = 0;
    this.#working(null);
    this.#start();
  }

  /** Gives up the job under way, and its worker: it may hang. What was found before stays. */
  stop(): void {
    if (this.#job === null) return;
    this.#giveUp();
    this.#drop();
    this.state.dispatch(() => ({ kind: 'stopped', before: this.#finished }));
  }

  /** Lets the worker go; a later job opens another. */
  close(): void {
    this.stop();
    this.#drop();
  }

  #start(): void {
    const job = this.#job;
    if (job === null) return;
    const id = ++this.#id;
    const request: Request = { kind: 'start', id, job };
    const helper = this.#withoutHelper ? null : this.#opened();
    if (helper === null) {
      this.#onPage().take(request);
      return;
    }
    helper.postMessage(request);
    this.#silent = 0;
    clearInterval(this.#watch);
    this.#watch = setInterval(() => {
      this.#silent++;
      if (this.#silent >= LOOKS) this.#died();
    }, LOOK_MILLISECONDS);
  }

  #working(progress: ProgressOf<J> | null): void {
    this.state.dispatch(() => ({
      kind: 'working',
      progress,
      before: this.#finished,
      anew: this.#tries > 0,
    }));
  }

  #ended(): void {
    this.#job = null;
    clearInterval(this.#watch);
  }

  #giveUp(): void {
    if (this.#job === null) return;
    const stop: Request = { kind: 'stop', id: this.#id };
    this.#ended();
    this.#helper?.postMessage(stop);
    this.#bench?.take(stop);
  }

  #opened(): Helper | null {
    if (this.#helper) return this.#helper;
    try {
      this.#helper = this.#open();
    } catch {
      this.#helper = null;
    }
    if (this.#helper === null) {
      this.#withoutHelper = true;
      return null;
    }
    this.#helper.onmessage = ({ data }) => this.#hear(data);
    this.#helper.onerror = () => this.#died();
    return this.#helper;
  }

  #drop(): void {
    if (!this.#helper) return;
    this.#helper.onmessage = null;
    this.#helper.onerror = null;
    this.#helper.terminate();
    this.#helper = null;
  }

  /** The worker died, or never opened: the job under way is begun anew, in the end without a worker. */
  #died(): void {
    this.#drop();
    this.#tries++;
    if (this.#tries >= TRIES) this.#withoutHelper = true;
    clearInterval(this.#watch);
    if (this.#job === null) return;
    this.#working(null);
    this.#start();
  }

  #onPage(): Workbench {
    this.#bench ??= new Workbench({ ...PAGE_TURNS, report: (report) => this.#hear(report) });
    return this.#bench;
  }

  #hear(report: Report): void {
    this.#silent = 0;
    // What is left of an earlier job.
    if (report.id !== this.#id || this.#job === null) return;
    switch (report.kind) {
      case 'progress':
        // Only jobs of this kind are ever sent.
        this.#working(report.progress as ProgressOf<J>);
        return;
      case 'done':
        this.#ended();
        this.#finished = report.result as ReportOf<J>;
        this.state.dispatch(() => ({ kind: 'done', report: report.result as ReportOf<J> }));
        return;
      case 'failed':
        this.#ended();
        this.state.dispatch(() => ({
          kind: 'failed',
          message: report.message,
          before: this.#finished,
        }));
    }
  }
}
