/** The worker's shell around the long work of the bench: tasks in, answers out. */
import { type KitAnswer, type KitFailure, type KitTask, KitWork } from './kit-tasks.ts';

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<KitTask>) => void) | null;
  postMessage(reply: KitAnswer | KitFailure): void;
};

const work = new KitWork();

scope.onmessage = ({ data }) => scope.postMessage(work.reply(data));
