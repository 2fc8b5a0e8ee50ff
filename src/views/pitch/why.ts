/** The margin's explanation: what the bars say, why the first candidate stands first, what hurts most. */
import type { Searched } from '../../app/pitch-desk.ts';
import { nextCapacitor, type Worse } from '../../plan/rivals.ts';
import type { Ranked } from '../../plan/search.ts';
import { VOICES } from '../../quantity/units.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import { foundWords } from '../../words/en-pitch-found.ts';

const words = foundWords.why;

/** The first is the question. */
export function whyWords(searched: Searched | null): readonly string[] {
  const first = pitchWords.question;
  if (searched?.report.kind !== 'found') return [first, ...words.before];
  const { ranked, assessments } = searched.report;
  const [best] = ranked;
  const [look] = assessments;
  if (best === undefined || look === undefined) return [first, ...words.before];
  const { A, B } = best.candidate.parts;
  const rival = nextCapacitor(ranked, searched.task.pitch.wish.weights);
  const missing = 1 - look.reached.easy;
  const worse = VOICES.toSorted((a, b) => look.voices[a].reached.easy - look.voices[b].reached.easy)[0]!;
  const [hurts] = look.voices[worse].sensitivities;
  return [
    first,
    words.bars,
    words.wins(
      foundWords.name(null, A, B),
      look.reached.easy,
      look.voices.A.atTarget.centsPerDegree,
      look.voices.B.atTarget.centsPerDegree,
    ),
    missing < SURE ? words.allHere : words.some(TWENTY * missing),
    ...(rival
      ? [
          words.rival(
            nameOf(rival.ranked, rival.place),
            rival.worse.length === 0
              ? [words.rivalReasons.close]
              : rival.worse.map((one) => reasonOf(one, rival.ranked)),
          ),
        ]
      : []),
    ...(hurts ? [words.hurts(worse, foundWords.sensitivity[hurts.of], hurts.share)] : []),
    pitchWords.search.law(pitchWords.wish.laws[look.law], look.kits),
  ];
}

/** Fewer misses than these are none to speak of. */
const SURE = 0.02;
const TWENTY = 20;

const nameOf = ({ candidate }: Ranked, place: number): string =>
  foundWords.name(place + 1, candidate.parts.A, candidate.parts.B);

function reasonOf(worse: Worse, { drawnReach, reasons }: Ranked): string {
  const { rivalReasons } = words;
  switch (worse) {
    case 'reach':
      return rivalReasons.reach(drawnReach);
    case 'tuning':
      return rivalReasons.tuning(reasons.centsPerDegree.A, reasons.centsPerDegree.B);
    case 'parts':
      return rivalReasons.parts(reasons.differentParts);
    case 'price':
      return rivalReasons.price(reasons.price ?? 0);
  }
}
