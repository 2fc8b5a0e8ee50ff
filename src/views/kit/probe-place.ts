/** Where a reading is taken on the board: the hole of its test pin, else of any lead on its net. */
import type { Hole } from '../../kit/board-extract.ts';
import { type BoardPlan, holeName, testPointHoles } from '../../kit/board-plan.ts';
import { jointsOf } from '../../kit/joints.ts';
import type { Reading } from '../../kit/observe.ts';
import { slipPointWords } from '../../words/bench.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { leadName } from '../../words/kit.ts';

const words = kitViewWords.faults;

export interface ProbePlace {
  readonly at: Hole;
  readonly text: string;
}

/** Null where the reading is no point of the board, or the board has no such net. */
export function probePlace({ net }: Reading, plan: BoardPlan): ProbePlace | null {
  const point = testPointHoles(plan).find((one) => one.net === net);
  if (point) return { at: point.at, text: words.inHole(point.id, holeName(point.at)) };
  const joint = jointsOf(plan).find((one) => one.kind === 'lead' && one.net === net && /^U/.test(one.ref));
  if (joint?.kind !== 'lead') return null;
  return {
    at: joint.at,
    text: words.inHole(leadName(joint.ref, joint.lead, joint.isOnly), holeName(joint.at)),
  };
}

/** `TP4 gate A, sensor A shaded`. */
export function readingWords({ point, voice, light }: Reading): string {
  if (point === 'plus') return `${words.plus(voice!)}, ${words.light[light]}`;
  return slipPointWords(point, voice, light);
}
