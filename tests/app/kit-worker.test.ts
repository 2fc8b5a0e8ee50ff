/** The bench's long work sent to its worker: never more of one kind than is of interest. */
import { beforeEach, expect, test, vi } from 'vitest';
import { KitWorker } from '../../src/app/kit-worker.ts';
import { USUAL_WISHES } from '../../src/kit/board/plan-board.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import { type KitAnswer, type KitTask, KitWork } from '../../src/kit/kit-tasks.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

const posted: KitTask[] = [];
const worker = {
  postMessage: (task: KitTask) => void posted.push(task),
  terminate: vi.fn(),
  onmessage: (_event: { data: KitAnswer }) => {},
  onerror: () => {},
};

vi.mock('../../src/app/plan-worker.device.ts', () => ({ kitWorker: async () => worker }));

const task = { kind: 'board', connections: connectionsOf(BENCH_DESIGN), wishes: USUAL_WISHES } as const;
const answerTo = (asked: KitTask): KitAnswer => ({
  kind: 'board',
  id: asked.id,
  planned: { ok: false, refusal: { kind: 'not proved', differences: [] } },
});
const settled = () => new Promise((resolve) => setTimeout(resolve));

beforeEach(() => {
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

test('work that breaks off is told, there as on the page', () => {
  const broken = { kind: 'board', id: 7, connections: null as never, wishes: USUAL_WISHES } as const;
  expect(new KitWork().reply(broken)).toEqual({ kind: 'failed', of: 'board', id: 7 });
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
