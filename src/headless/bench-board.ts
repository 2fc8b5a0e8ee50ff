/** Board plans of the ready designs against a plain layout of the same connections. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { decodeText } from '../design/decode.ts';
import { DEFAULT_DESIGN } from '../design/defaults.ts';
import type { Design } from '../design/design.ts';
import { type BoardRatios, ratiosOf } from '../kit/board/plain.ts';
import { planBoard, USUAL_WISHES } from '../kit/board/plan-board.ts';
import { connectionsOf } from '../kit/connections.ts';

/** The design a new document starts from, and the mean over the ready designs, each on a board cut to fit. */
export function boardRatios(): Readonly<
  Record<'boardAreaRatio' | 'boardLinksRatio' | 'boardAreaRatioMean' | 'boardLinksRatioMean', number>
> {
  const ratios = readyDesigns().map(ratiosFor);
  const mean = (of: (each: BoardRatios) => number): number =>
    ratios.reduce((sum, each) => sum + of(each), 0) / ratios.length;
  const first = ratiosFor(DEFAULT_DESIGN);
  return {
    boardAreaRatio: first.area,
    boardLinksRatio: first.links,
    boardAreaRatioMean: mean(({ area }) => area),
    boardLinksRatioMean: mean(({ links }) => links),
  };
}

function ratiosFor(design: Design): BoardRatios {
  const planned = planBoard(connectionsOf(design), { ...USUAL_WISHES, board: null });
  if (!planned.ok) throw new Error(`${design.name}: no board plan, ${planned.refusal.kind}`);
  return ratiosOf(planned.plan);
}

function readyDesigns(): Design[] {
  const folder = path.resolve('presets');
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .flatMap((file) => {
      const decoded = decodeText(readFileSync(path.join(folder, file), 'utf8'));
      return decoded.ok ? [decoded.design] : [];
    });
}
