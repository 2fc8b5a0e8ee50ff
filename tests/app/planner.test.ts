/** Long work: the latest job wins, it can be stopped, a worker that dies is replaced, and the page can do it alone. */
import { afterEach, expect, test, vi } from 'vitest';
import { planWorkerOpener } from '../../src/app/plan-worker.device.ts';
import { type Helper, Planner, type Planning } from '../../src/app/planner.ts';
import { DEFAULT_PITCH } from '../../src/design/pitch.ts';
import {
  MOST_SHOWN,
  type Report,
  type Request,
  type SearchJob,
  Workbench,
  work,
} from '../../src/plan/job.ts';
import { chipOf } from '../../src/plan/timing.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

const pitch = (series: 'E3' | 'E6'): SearchJob => ({
  kind: 'search',
  task: {
    chip: chipOf(BENCH_DESIGN),
    pitch: {
      ...DEFAULT_PITCH,
      drawer: {
        ...DEFAULT_PITCH.drawer,
        order: {
          ...DEFAULT_PITCH.drawer.order,
          resistors: { series, tolerance: 0.01 },
          capacitors: { series, dielectric: 'polyester', tolerance: 0.05 },
        },
      },
    },
  },
});
/** Enough for every list to fill. */
const FULL = pitch('E3');
/** A handful of parts, done at once. */
const stock = { quantity: null, price: null };
const JOB: SearchJob = {
  kind: 'search',
  task: {
    chip: chipOf(BENCH_DESIGN),
    pitch: {
      ...DEFAULT_PITCH,
      drawer: {
        ...DEFAULT_PITCH.drawer,
        use: 'have',
        resistors: [3900, 12_000].map((ohms) => ({ ohms, tolerance: 0.01, ...stock })),
        trimmers: [{ ohms: 50_000, part: 'carbon', tolerance: 0.2, ...stock }],
        capacitors: [33e-9, 47e-9, 68e-9].map((farads) => ({
          farads,
          dielectric: 'polyester',
          tolerance: 0.1,
          ...stock,
        })),
      },
    },
  },
};

/** A worker that answers when it is told to, or does the work for real. */
class Pretended implements Helper {
  readonly asked: Request[] = [];
  ended = false;
  onmessage: Helper['onmessage'] = null;
  onerror: Helper['onerror'] = null;
  postMessage(request: Request): void {
    this.asked.push(request);
  }
  terminate(): void {
    this.ended = true;
  }
  say(report: Report): void {
    this.onmessage?.({ data: report });
  }
}

function withHelpers() {
  const helpers: Pretended[] = [];
  const planner = new Planner(() => {
    const helper = new Pretended();
    helpers.push(helper);
    return helper;
  });
  return { planner, helpers };
}

const until = (planner: Planner, kind: Planning['kind']): Promise<Planning> =>
  new Promise((resolve) => {
    const look = () => {
      if (planner.state.current.kind === kind) resolve(planner.state.current);
    };
    planner.state.subscribe(look);
    look();
  });

const refused = { kind: 'refused', problems: [] } as const;
const progress = { stage: 'A', share: 0.5 } as const;

test('progress and result come from the worker; what an earlier job still says is passed over', () => {
  const { planner, helpers } = withHelpers();
  planner.run(JOB);
  planner.run(pitch('E6'));
  expect(helpers).toHaveLength(1);
  const [helper] = helpers as [Pretended];
  expect(helper.asked.map(({ kind, id }) => `${kind} ${id}`)).toEqual(['start 1', 'stop 1', 'start 2']);
  helper.say({ kind: 'done', id: 1, result: refused });
  expect(planner.state.current).toMatchObject({ kind: 'working', progress: null });
  helper.say({ kind: 'progress', id: 2, progress });
  expect(planner.state.current).toMatchObject({ kind: 'working', progress });
  helper.say({ kind: 'done', id: 2, result: refused });
  expect(planner.state.current).toEqual({ kind: 'done', report: refused });
  helper.say({ kind: 'progress', id: 2, progress });
  expect(planner.state.current.kind).toBe('done');
});

test('stopped, the last result stays, and nothing more is heard of the job', () => {
  const { planner, helpers } = withHelpers();
  planner.stop();
  expect(planner.state.current).toEqual({ kind: 'idle' });
  planner.run(JOB);
  helpers[0]!.say({ kind: 'done', id: 1, result: refused });
  planner.run(JOB);
  planner.stop();
  expect(planner.state.current).toEqual({ kind: 'stopped', before: refused });
  helpers[0]!.say({ kind: 'done', id: 2, result: refused });
  expect(planner.state.current.kind).toBe('stopped');
  planner.close();
  expect(helpers[0]!.ended).toBe(true);
});

test('a worker that dies is replaced and given the job again; one that always dies is done without', async () => {
  const { planner, helpers } = withHelpers();
  planner.run(JOB);
  helpers[0]!.onerror!({});
  expect([helpers.length, helpers[0]!.ended]).toEqual([2, true]);
  expect(helpers[1]!.asked).toMatchObject([{ kind: 'start', job: JOB }]);
  helpers[1]!.onerror!({});
  expect(helpers).toHaveLength(2);
  expect(await until(planner, 'done')).toMatchObject({ report: { kind: 'found' } });
});

test('stopped, a worker that may hang is let go, and the next job has another', () => {
  const { planner, helpers } = withHelpers();
  planner.run(JOB);
  planner.stop();
  expect(helpers[0]!.ended).toBe(true);
  planner.run(JOB);
  helpers[1]!.say({ kind: 'done', id: 2, result: refused });
  expect(planner.state.current).toEqual({ kind: 'done', report: refused });
});

test('a worker of which nothing is heard is replaced, and that is told; one that goes on is not', () => {
  vi.useFakeTimers();
  try {
    const { planner, helpers } = withHelpers();
    planner.run(JOB);
    vi.advanceTimersByTime(12_000);
    helpers[0]!.say({ kind: 'progress', id: 1, progress });
    vi.advanceTimersByTime(8000);
    expect(helpers).toHaveLength(1);
    expect(planner.state.current).toMatchObject({ kind: 'working', anew: false });
    vi.advanceTimersByTime(12_000);
    expect([helpers.length, helpers[0]!.ended]).toEqual([2, true]);
    expect(planner.state.current).toMatchObject({ kind: 'working', progress: null, anew: true });
    helpers[1]!.say({ kind: 'done', id: 2, result: refused });
    vi.advanceTimersByTime(60_000);
    expect(helpers).toHaveLength(2);
    expect(planner.state.current.kind).toBe('done');
  } finally {
    vi.useRealTimers();
  }
});

test('a job that fails says so, and the next one runs', () => {
  const { planner, helpers } = withHelpers();
  planner.run(JOB);
  helpers[0]!.say({ kind: 'failed', id: 1, message: 'no room' });
  expect(planner.state.current).toEqual({ kind: 'failed', message: 'no room', before: null });
  planner.run(JOB);
  expect(planner.state.current.kind).toBe('working');
});

test.each([
  ['none is to be had', () => null],
  [
    'opening throws',
    () => {
      throw new Error('refused by the policy');
    },
  ],
])('where %s, the page does the same work in slices and answers in between', async (_, open) => {
  const planner = new Planner(open);
  let turns = 0;
  const timer = setInterval(() => turns++, 1);
  planner.run(JOB);
  const done = await until(planner, 'done');
  clearInterval(timer);
  const steps = work(JOB);
  let step = steps.next();
  while (!step.done) step = steps.next();
  expect(done).toEqual({ kind: 'done', report: step.value });
  expect(turns).toBeGreaterThan(0);
});

test('a report holds the best fifty, each looked at closely with the wish’s own law and seed', () => {
  const steps = work(FULL);
  let step = steps.next();
  const stages = new Set<string>();
  while (!step.done) {
    stages.add(step.value.stage);
    expect(step.value.share).toBeGreaterThanOrEqual(0);
    expect(step.value.share).toBeLessThanOrEqual(1);
    step = steps.next();
  }
  const report = step.value;
  if (report.kind !== 'found') throw new Error(report.kind);
  expect([report.ranked.length, report.assessments.length, report.drawn]).toEqual([
    MOST_SHOWN,
    MOST_SHOWN,
    500,
  ]);
  expect([...stages]).toEqual(['A', 'B', 'pairs', 'draws', 'looking']);
  for (const { law, seed } of report.assessments) expect([law, seed]).toEqual(['uniform', 1]);
});

test('the bench in the worker stops between slices, and a broken job is told, not thrown', () => {
  const reports: Report[] = [];
  const waiting: (() => void)[] = [];
  let time = 0;
  const bench = new Workbench({
    sliceMilliseconds: 0,
    now: () => time++,
    later: (go) => waiting.push(go),
    report: (report) => reports.push(report),
  });
  bench.take({ kind: 'start', id: 1, job: JOB });
  waiting.shift()!();
  expect(reports).toMatchObject([{ kind: 'progress', id: 1 }]);
  bench.take({ kind: 'stop', id: 1 });
  waiting.shift()!();
  expect(reports).toHaveLength(1);
  expect(waiting).toEqual([]);
  bench.take({ kind: 'start', id: 2, job: { kind: 'search', task: null as never } });
  waiting.shift()!();
  expect(reports[1]).toMatchObject({ kind: 'failed', id: 2 });
});

test('the worker is opened at this build’s own address alone, through a policy where the browser asks for one', async () => {
  const opened: unknown[] = [];
  vi.stubGlobal(
    'Worker',
    class {
      constructor(address: unknown) {
        opened.push(address);
      }
    },
  );
  (await planWorkerOpener())();
  const address = String(opened[0]);
  expect(address).toMatch(/plan\.worker/);
  let rules: { createScriptURL(url: string): string } | null = null;
  vi.stubGlobal('trustedTypes', {
    createPolicy: (name: string, given: { createScriptURL(url: string): string }) => {
      expect(name).toBe('lampnote-worker');
      rules = given;
      return { createScriptURL: (url: string) => ({ passed: given.createScriptURL(url) }) };
    },
  });
  (await planWorkerOpener())();
  expect(opened[1]).toEqual({ passed: address });
  expect(() => rules!.createScriptURL('https://example.org/other.js')).toThrow(TypeError);
});
