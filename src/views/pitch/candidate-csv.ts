/** The list of candidates as a table of plain numbers, for a spreadsheet. SI units. */
import { csvText } from '../../app/table-csv.ts';
import type { SearchReport } from '../../plan/job.ts';
import { VOICES } from '../../quantity/units.ts';
import { foundWords } from '../../words/en-pitch-found.ts';

type Found = Extract<SearchReport, { kind: 'found' }>;

const FIGURES = 6;
const plain = (value: number): string => String(Number(value.toPrecision(FIGURES)));

export function candidateCsv({ ranked, assessments }: Found): string {
  const rows = ranked.map(({ candidate, reasons }, place) => {
    const { voices, reached } = assessments[place]!;
    return [
      String(place + 1),
      plain(reached.easy),
      plain(reached.full),
      String(reasons.differentParts),
      reasons.price === null ? '' : plain(reasons.price),
      ...VOICES.flatMap((id) => {
        const { ra, rbFixed, trimmer, capacitor } = candidate.parts[id];
        const { rotation, rotationSpread, atTarget, drift, easyPromised, reached: own } = voices[id];
        return [
          plain(candidate.targets[id].lowHertz),
          plain(candidate.targets[id].highHertz),
          plain(ra.ohms),
          plain(rbFixed.ohms),
          plain(trimmer.ohms),
          trimmer.part,
          plain(capacitor.farads),
          capacitor.dielectric,
          plain(capacitor.tolerance),
          plain(own.easy),
          easyPromised ? plain(easyPromised.lowHertz) : '',
          easyPromised ? plain(easyPromised.highHertz) : '',
          plain(rotation),
          plain(rotationSpread.low),
          plain(rotationSpread.high),
          plain(atTarget.centsPerDegree),
          plain(drift.warmRoom.lowCents),
          plain(drift.warmRoom.highCents),
        ];
      }),
    ];
  });
  const { csvHeads, csvVoiceHeads } = foundWords.table;
  const heads = [...csvHeads, ...VOICES.flatMap((id) => csvVoiceHeads.map((head) => `${id} ${head}`))];
  return csvText(heads, rows);
}
