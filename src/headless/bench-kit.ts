/** The fault finder's worth on two thousand boards, for `npm run bench`. */
import { DEFAULT_DESIGN } from '../design/defaults.ts';
import { dictionaryOf } from '../kit/dictionary.ts';
import { faultTrial } from '../kit/fault-trial.ts';

const BOARDS = 2000;
const SEED = 7;

export interface FaultWorth {
  /** Share of seeded faulty boards whose fault is among the first three after the ear and four readings. */
  readonly faultTopThree: number;
  /** Candidates left then, e to the entropy, mean. */
  readonly faultCandidatesLeft: number;
}

export function faultWorth(): FaultWorth {
  const { topThree, left } = faultTrial(dictionaryOf(DEFAULT_DESIGN), BOARDS, SEED);
  return { faultTopThree: topThree, faultCandidatesLeft: left };
}
