/**
 * The place Pitch behind its views: the search and what it found, which candidate is looked at, the drawer's text while
 * it is being typed. One for each application, made when the place is first gone to; it outlasts the place being left.
 */
import type { Design } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';
import { type Candidate, MOST_SHORTLISTED } from '../design/pitch.ts';
import { type Assessment, assess } from '../plan/assess.ts';
import type { SearchReport } from '../plan/job.ts';
import type { SearchTask } from '../plan/search.ts';
import { chipOf } from '../plan/timing.ts';
import type { Lampnote } from './lampnote.ts';
import { planWorkerOpener } from './plan-worker.device.ts';
import { type Helper, Planner } from './planner.ts';
import { Store } from './store.ts';

/** A search that came to its end, and what it was asked. */
export interface Searched {
  readonly task: SearchTask;
  readonly report: SearchReport;
}

/** A candidate of the list found, or of the shortlist, by its place from 0. */
export interface Choice {
  readonly of: 'found' | 'kept';
  readonly place: number;
}

export interface PitchView {
  readonly searched: Searched | null;
  readonly chosen: Choice;
  /** All candidates as bars, or the first few. */
  readonly allBars: boolean;
  /** The drawer's lines as typed, while some of them are not in the drawer; null = as the drawer has them. */
  readonly drawerDraft: string | null;
  /** The wish and the drawer lie open. */
  readonly open: boolean;
}

const FIRST: Choice = { of: 'found', place: 0 };

export class PitchDesk {
  readonly planner: Planner;
  readonly view = new Store<PitchView>({
    searched: null,
    chosen: FIRST,
    allBars: false,
    drawerDraft: null,
    open: true,
  });
  readonly #app: Lampnote;
  #opener: (() => Helper | null) | null = null;
  #task: SearchTask | null = null;
  readonly #looks = new WeakMap<Candidate, { readonly asked: unknown; readonly found: Assessment | null }>();

  constructor(app: Lampnote) {
    this.#app = app;
    this.planner = new Planner(() => this.#opener?.() ?? null);
    this.planner.state.subscribe(() => {
      const { current } = this.planner.state;
      const task = this.#task;
      if (current.kind === 'done' && task)
        this.show({ searched: { task, report: current.report }, chosen: FIRST });
    });
  }

  /** Begins a search for the wish as it stands. */
  async find(): Promise<void> {
    // Without a worker the page does the work itself.
    this.#opener ??= await planWorkerOpener().catch(() => () => null);
    this.#task = taskOf(this.#app.design.current);
    this.planner.run({ kind: 'search', task: this.#task });
  }

  show(change: Partial<PitchView>): void {
    this.view.dispatch((view) => ({ ...view, ...change }));
  }

  /** The candidate of a choice; null when it is not there, or no longer. */
  candidate({ of, place }: Choice): Candidate | null {
    if (of === 'kept') return this.#app.design.current.pitch.shortlist[place] ?? null;
    const report = this.view.current.searched?.report;
    return report?.kind === 'found' ? (report.ranked[place]?.candidate ?? null) : null;
  }

  /** What is known of a candidate in the design at hand, drawn with the wish's law and seed; kept while these stay. */
  closeLook(candidate: Candidate): Assessment | null {
    const design = this.#app.design.current;
    const { law, seed } = design.pitch.wish;
    const chip = chipOf(design);
    const asked = { chip, law, seed };
    const before = this.#looks.get(candidate);
    if (before && equalValues(before.asked, asked)) return before.found;
    const found = assess(chip, candidate, { law, seed });
    this.#looks.set(candidate, { asked, found });
    return found;
  }
}

export const taskOf = (design: Design): SearchTask => ({
  chip: chipOf(design),
  pitch: { wish: design.pitch.wish, drawer: design.pitch.drawer },
});

/** Whether a search was asked something else than the design now asks. */
export function isStale({ task }: Searched, design: Design): boolean {
  return !equalValues(task, taskOf(design));
}

/** Whether a search found any candidates to show. */
export function hasFound(searched: Searched | null): boolean {
  return searched?.report.kind === 'found' && searched.report.ranked.length > 0;
}

/** How a candidate stands to the shortlist. */
export function keeping(design: Design, candidate: Candidate): 'kept' | 'free' | 'full' {
  const { shortlist } = design.pitch;
  if (shortlist.some((other) => equalValues(other, candidate))) return 'kept';
  return shortlist.length >= MOST_SHORTLISTED ? 'full' : 'free';
}

const desks = new WeakMap<Lampnote, PitchDesk>();

export function deskOf(app: Lampnote): PitchDesk {
  const desk = desks.get(app) ?? new PitchDesk(app);
  desks.set(app, desk);
  return desk;
}
