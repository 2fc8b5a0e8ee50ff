/** The worker's shell around `job.ts`: messages in, progress and results out. */
import { type Report, type Request, Workbench } from './job.ts';

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<Request>) => void) | null;
  postMessage(report: Report): void;
};

const turns = new MessageChannel();
let go: (() => void) | null = null;
turns.port1.onmessage = () => {
  const next = go;
  go = null;
  next?.();
};

const bench = new Workbench({
  sliceMilliseconds: 40,
  now: () => performance.now(),
  later: (next) => {
    // A message, not a timer: timers wait at least some milliseconds, and more in a hidden tab.
    go = next;
    turns.port2.postMessage(null);
  },
  report: (report) => scope.postMessage(report),
});

scope.onmessage = ({ data }) => bench.take(data);
