/** The bench's long work sent to its worker: never more of one kind than is of interest. */
import { beforeEach, expect, test, vi } from 'vitest';
import { type AskedTask, KitWorker } from '../../src/app/kit-worker.ts';
import { USUAL_WISHES } from '../../src/kit/board/plan-board.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import { NOTHING } from '../../src/kit/fault-finder.ts';
import { type KitAnswer, type KitFailure, type KitTask, KitWork } from '../../src/kit/kit-tasks.ts';
import { USUAL_BENCH } from '../../src/kit/slip.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

const posted: KitTask[] = [];
const worker = {
  postMessage: (task: KitTask) => void posted.push(task),
  terminate: vi.fn(),
  onmessage: (_event: { data: KitAnswer }) => {},
  onerror: () => {},
};

let opens = true;

vi.mock('../../src/app/plan-worker.device.ts', () => ({ kitWorker: async () => (opens ? worker : null) }));

const wishes = { ...USUAL_WISHES, effort: 2 };
const task = { kind: 'board', connections: connectionsOf(BENCH_DESIGN), wishes } as const;
const answerTo = (asked: KitTask): KitAnswer => ({
  kind: 'board',
  id: asked.id,
  planned: { ok: false, refusal: { kind: 'not proved', differences: [] } },
});
const settled = () => new Promise((resolve) => setTimeout(resolve));

beforeEach(() => {
  opens = true;
  posted.splice(0);
  worker.terminate.mockClear();
});

test('while it is busy only the last of what is asked waits for it, and only that is heard', async () => {
  const heard: number[] = [];
  const kit = new KitWorker(({ id }) => heard.push(id));
  kit.ask(task);
  await settled();
  for (let i = 0; i < 5; i++) kit.ask(task);
  await settled();
  expect(posted.map(({ id }) => id)).toEqual([1]);
  worker.onmessage({ data: answerTo(posted[0]!) });
  await settled();
  expect(posted.map(({ id }) => id)).toEqual([1, 6]);
  worker.onmessage({ data: answerTo(posted[1]!) });
  expect(heard).toEqual([6]);
});

test('where it dies another does what was asked last, and where that dies, too, the page', async () => {
  const heard: number[] = [];
  const kit = new KitWorker(({ id }) => heard.push(id));
  kit.ask(task);
  await settled();
  kit.ask(task);
  await settled();
  worker.onerror();
  await settled();
  expect(worker.terminate).toHaveBeenCalledTimes(1);
  expect(posted.map(({ id }) => id)).toEqual([1, 2]);
  worker.onerror();
  await vi.waitFor(() => expect(heard).toEqual([2]), { timeout: 20_000 });
  expect(posted).toHaveLength(2);
});

test('where none opens, the page goes on answering; what is asked next stops what is under way', async () => {
  opens = false;
  const heard: number[] = [];
  const kit = new KitWorker(({ id }) => heard.push(id));
  await new Promise<void>((begun) => {
    const many = {
      ...USUAL_WISHES,
      get effort() {
        begun();
        return USUAL_WISHES.effort;
      },
    };
    kit.ask({ ...task, wishes: many });
  });
  await settled();
  expect(heard).toEqual([]);
  kit.ask(task);
  await vi.waitFor(() => expect(heard).toEqual([2]), { timeout: 20_000 });
  await settled();
  expect(heard).toEqual([2]);
});

test('all kinds at once on the page come to what each comes to alone', async () => {
  opens = false;
  const heard: (KitAnswer | KitFailure)[] = [];
  const kit = new KitWorker((reply) => heard.push(reply));
  const bench = { design: BENCH_DESIGN, bench: USUAL_BENCH };
  const faults = { ...bench, kind: 'faults', links: [], findings: NOTHING } as const;
  const joined = { kind: 'joined', one: 'node A', other: 'ground' } as const;
  const tasks: readonly AskedTask[] = [task, faults, { ...bench, kind: 'trouble', trouble: joined }];
  for (const each of tasks) kit.ask(each);
  await vi.waitFor(() => expect(heard).toHaveLength(tasks.length), { timeout: 20_000 });
  // The quickest need not be the first.
  const alone = tasks.map((each, i) => new KitWork().reply({ ...each, id: i + 1 } as KitTask));
  expect(heard.toSorted((a, b) => a.id - b.id)).toEqual(alone);
  expect(alone.map(({ kind }) => kind)).toEqual(['board', 'faults', 'trouble']);
});

test('work that breaks off is told, there as on the page', async () => {
  const broken = { kind: 'board', id: 7, connections: null as never, wishes } as const;
  expect(new KitWork().reply(broken)).toEqual({ kind: 'failed', of: 'board', id: 7 });
  opens = false;
  const heard: unknown[] = [];
  new KitWorker((reply) => heard.push(reply)).ask(broken);
  await vi.waitFor(() => expect(heard).toEqual([{ kind: 'failed', of: 'board', id: 1 }]));
});

test('of what nothing is heard, that is told, and the next is asked of another worker', async () => {
  vi.useFakeTimers();
  try {
    const heard: unknown[] = [];
    const kit = new KitWorker((reply) => heard.push(reply));
    kit.ask(task);
    await vi.advanceTimersByTimeAsync(119_000);
    expect(heard).toEqual([]);
    await vi.advanceTimersByTimeAsync(2000);
    expect(heard).toEqual([{ kind: 'failed', of: 'board', id: 1 }]);
    expect(worker.terminate).toHaveBeenCalled();
    kit.ask(task);
    await vi.advanceTimersByTimeAsync(0);
    worker.onmessage({ data: answerTo(posted[1]!) });
    expect(heard[1]).toMatchObject({ kind: 'board', id: 2 });
  } finally {
    vi.useRealTimers();
  }
});
