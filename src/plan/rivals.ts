/** Why the first candidate stands before the next that uses other capacitors: what the next one does worse. */
import type { Wish } from '../design/pitch.ts';
import { VOICES } from '../quantity/units.ts';
import type { Ranked } from './search.ts';

export type Worse = 'reach' | 'tuning' | 'parts' | 'price';

export interface Rival {
  /** Its place in the list, from 0. */
  readonly place: number;
  readonly ranked: Ranked;
  /** Empty: nearly as good. */
  readonly worse: readonly Worse[];
}

/** Less than these is no reason. */
const WORTH = { reach: 0.005, centsPerDegree: 0.5 } as const;

/** The best candidate with other capacitors than the first; null when there is none. */
export function nextCapacitor(list: readonly Ranked[], weights: Wish['weights']): Rival | null {
  const [first] = list;
  if (first === undefined) return null;
  const place = list.findIndex(({ candidate }) =>
    VOICES.some((id) => {
      const [one, other] = [candidate.parts[id].capacitor, first.candidate.parts[id].capacitor];
      return (
        one.farads !== other.farads ||
        one.dielectric !== other.dielectric ||
        one.tolerance !== other.tolerance
      );
    }),
  );
  const ranked = list[place];
  if (ranked === undefined) return null;
  const steepest = ({ reasons }: Ranked) => Math.max(reasons.centsPerDegree.A, reasons.centsPerDegree.B);
  const [ours, theirs] = [first.reasons, ranked.reasons];
  const worse: Worse[] = [];
  if (weights.surerReach > 0 && ranked.drawnReach < first.drawnReach - WORTH.reach) worse.push('reach');
  if (weights.easierTuning > 0 && steepest(ranked) > steepest(first) + WORTH.centsPerDegree)
    worse.push('tuning');
  if (weights.fewerParts > 0 && theirs.differentParts > ours.differentParts) worse.push('parts');
  if (weights.cheaper > 0 && theirs.price !== null && ours.price !== null && theirs.price > ours.price)
    worse.push('price');
  return { place, ranked, worse };
}
