/** How the page does long work itself, where no worker does it: in slices short enough that it answers in between. */
import type { Turns } from '../plan/slices.ts';

export const PAGE_TURNS: Turns = {
  sliceMilliseconds: 12,
  now: () => performance.now(),
  /** A message, not a timer: timers wait at least some milliseconds, and a whole second in a hidden tab. */
  later: (go) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      go();
    };
    port2.postMessage(null);
  },
};
