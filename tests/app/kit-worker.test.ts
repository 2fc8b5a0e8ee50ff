/** The bench's long work sent to its worker: never more of one kind than is of interest. */
import { beforeEach, expect, test, vi } from 'vitest';
import { KitWorker } from '../../src/app/kit-worker.ts';
import { USUAL_WISHES } from '../../src/kit/board.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import type { KitAnswer, KitTask } from '../../src/kit/kit-tasks.ts';
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

beforeEach(() => void posted.splice(0));

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

test('where it dies the page does what was asked last', async () => {
  const heard: number[] = [];
  const kit = new KitWorker(({ id }) => heard.push(id));
  kit.ask(task);
  await settled();
  kit.ask(task);
  await settled();
  worker.onerror();
  await vi.waitFor(() => expect(heard).toEqual([2]), { timeout: 20_000 });
  expect(worker.terminate).toHaveBeenCalled();
});
