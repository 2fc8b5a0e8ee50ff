/** The worker's shell around the board plan: a connection list and wishes in, a plan or a refusal out. */
import { type BoardWishes, type Planned, planBoard } from './board.ts';
import type { Connections } from './parts.ts';

export interface BoardTask {
  readonly id: number;
  readonly connections: Connections;
  readonly wishes: BoardWishes;
}

export interface BoardAnswer {
  readonly id: number;
  readonly planned: Planned;
}

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<BoardTask>) => void) | null;
  postMessage(answer: BoardAnswer): void;
};

scope.onmessage = ({ data: { id, connections, wishes } }) =>
  scope.postMessage({ id, planned: planBoard(connections, wishes) });
