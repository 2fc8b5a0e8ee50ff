/** The last long work that came to its end, also while the next is under way. */
import type { Planning } from '../../app/planner.ts';
import type { RoomJob } from '../../plan/job.ts';
import type { RoomReport } from '../../plan/room-report.ts';

export function lastReport(planning: Planning<RoomJob>): RoomReport | null {
  switch (planning.kind) {
    case 'idle':
      return null;
    case 'done':
      return planning.report;
    case 'working':
    case 'stopped':
    case 'failed':
      return planning.before;
  }
}
