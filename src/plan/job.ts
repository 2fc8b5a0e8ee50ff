/**
 * Long work as plain data, so that a worker, the page itself or a test can do it: in slices, telling how far it is,
 * and able to stop between any two of them.
 */
import { type Assessment, assess } from './assess.ts';
import { type RoomProgress, type RoomReport, type RoomTask, roomReport } from './room-report.ts';
import { type Progress, type SearchResult, type SearchTask, search } from './search.ts';
import { inSlices, type Turns } from './slices.ts';

export interface SearchJob {
  readonly kind: 'search';
  readonly task: SearchTask;
}
export interface RoomJob {
  readonly kind: 'room';
  readonly task: RoomTask;
}
export type Job = SearchJob | RoomJob;
/** What a job tells while it runs, and what it gives in the end. */
export type ProgressOf<J extends Job> = J extends SearchJob ? JobProgress : RoomProgress;
export type ReportOf<J extends Job> = J extends SearchJob ? SearchReport : RoomReport;

/** What a finished search gives the page: the best fifty, each looked at closely, and how everything went. */
export const MOST_SHOWN = 50;

export type SearchReport =
  | Extract<SearchResult, { readonly kind: 'refused' }>
  | (Extract<SearchResult, { readonly kind: 'found' }> & {
      /** One for each of the first fifty of `ranked`, which holds no more than those. */
      readonly assessments: readonly Assessment[];
      /** Candidates that were drawn before the list was cut. */
      readonly drawn: number;
    });

export type JobProgress = Progress | { readonly stage: 'looking'; readonly share: number };

/** Kits drawn for each candidate shown in a list; one opened by itself is drawn more. */
const LISTED_KITS = 4000;

export function work(job: SearchJob): Generator<JobProgress, SearchReport>;
export function work(job: RoomJob): Generator<RoomProgress, RoomReport>;
export function work(job: Job): Generator<ProgressOf<Job>, ReportOf<Job>>;
export function work(job: Job): Generator<ProgressOf<Job>, ReportOf<Job>> {
  return job.kind === 'search' ? searched(job.task) : roomReport(job.task);
}

function* searched(task: SearchTask): Generator<JobProgress, SearchReport> {
  const result = yield* search(task);
  if (result.kind === 'refused') return result;
  const ranked = result.ranked.slice(0, MOST_SHOWN);
  const { law, seed } = task.pitch.wish;
  const assessments: Assessment[] = [];
  for (const [i, { candidate }] of ranked.entries()) {
    // What was ranked runs, so it can be assessed.
    assessments.push(assess(task.chip, candidate, { law, seed, kits: LISTED_KITS })!);
    yield { stage: 'looking', share: (i + 1) / ranked.length };
  }
  return { ...result, ranked, assessments, drawn: result.ranked.length };
}

/** To whoever works. */
export type Request =
  | { readonly kind: 'start'; readonly id: number; readonly job: Job }
  | { readonly kind: 'stop'; readonly id: number };

/** From whoever works. */
export type Report =
  | { readonly kind: 'progress'; readonly id: number; readonly progress: ProgressOf<Job> }
  | { readonly kind: 'done'; readonly id: number; readonly result: ReportOf<Job> }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };

export interface Surroundings extends Turns {
  report(report: Report): void;
}

/** Does one job at a time in slices: a new one takes the place of the one under way. Never throws. */
export class Workbench {
  readonly #around: Surroundings;
  #current: { readonly id: number; readonly stop: () => void } | null = null;

  constructor(around: Surroundings) {
    this.#around = around;
  }

  take(request: Request): void {
    const { id } = request;
    if (request.kind === 'stop' && this.#current?.id !== id) return;
    this.#current?.stop();
    this.#current = null;
    if (request.kind === 'stop') return;
    const around = this.#around;
    const stop = inSlices(work(request.job), around, {
      paused: (progress) => around.report({ kind: 'progress', id, progress }),
      done: (result) => around.report({ kind: 'done', id, result }),
      failed: (error) => around.report({ kind: 'failed', id, message: String(error) }),
    });
    this.#current = { id, stop };
  }
}
