/** What is known of one candidate as rows and sentences: reach, drift, what hurts, what to change, the two together. */
import type { Candidate } from '../../design/pitch.ts';
import type { Assessment, Range, VoiceAssessment } from '../../plan/assess.ts';
import { beatsOf } from '../../plan/beats.ts';
import type { Change } from '../../plan/changes.ts';
import type { DriftRange } from '../../plan/drift.ts';
import { nearestNote } from '../../plan/notes.ts';
import type { Sensitivity } from '../../plan/reach.ts';
import { type CurvePoint, middleHertz } from '../../plan/timing.ts';
import type { Together } from '../../plan/together.ts';
import { type Hertz, type Pair, pairOf, VOICES } from '../../quantity/units.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import type { FigureText } from '../plots/figure-tools.ts';
import { noteText } from './bars.ts';

const words = foundWords.detail;
type Rows = readonly (readonly string[])[];

const spanText = (range: Range | null): string =>
  range === null ? words.none : foundWords.span(range.lowHertz, range.highHertz);

/** One row a measure, one cell a voice. Per cents name the law of the draws. */
export function reachRows(candidate: Candidate, look: Assessment, law: string, a4: Hertz): Rows {
  const row = (label: string, cell: (voice: VoiceAssessment) => string) => [
    label,
    ...VOICES.map((id) => cell(look.voices[id])),
  ];
  const { rows, withLaw } = words;
  const target = VOICES.map((id) => {
    const { lowHertz, highHertz } = candidate.targets[id];
    const low = noteText(lowHertz, a4);
    return lowHertz === highHertz ? foundWords.noteAt(low, lowHertz) : spanText(candidate.targets[id]);
  });
  return [
    [rows.target, ...target],
    row(rows.nominal, ({ nominal }) => spanText(nominal)),
    row(rows.easyNominal, ({ easyNominal }) => spanText(easyNominal)),
    row(withLaw(rows.promised, law), ({ promised }) => spanText(promised)),
    row(withLaw(rows.easyPromised, law), ({ easyPromised }) => spanText(easyPromised)),
    row(withLaw(rows.reached, law), ({ reached }) => foundWords.share(reached.easy)),
    row(rows.rotation, ({ rotation, rotationSpread: { low, high } }) => words.turned(rotation, low, high)),
    row(rows.degree, ({ atTarget }) => words.degree(atTarget.centsPerDegree)),
    row(rows.settable, ({ atTarget }) => words.settable(atTarget.missCents)),
    row(rows.duty, ({ duty }) => foundWords.share(duty)),
    row(withLaw(rows.untuned, law), ({ untuned }) => spanText(untuned)),
    row(rows.worst, ({ worstCase }) => spanText(worstCase)),
  ];
}

export function driftRows({ voices }: Assessment): Rows {
  const range = ({ lowCents, highCents }: DriftRange) => foundWords.table.range(lowCents, highCents);
  const kinds = ['warmRoom', 'coldVan', 'thumb', 'year'] as const;
  const { battery } = voices.A.drift;
  return [
    ...kinds.map((kind) => [words.drifts[kind], ...VOICES.map((id) => range(voices[id].drift[kind]))]),
    [
      battery ? words.battery(battery.fromVolts, battery.toVolts) : words.drifts.battery,
      ...VOICES.map((id) => {
        const own = voices[id].drift.battery;
        return own ? range(own) : words.regulated;
      }),
    ],
  ];
}

export function hurtRows({ voices }: Assessment): Rows {
  const of = (list: readonly Sensitivity[], part: Sensitivity['of']) =>
    words.hurtsBy(list.find((one) => one.of === part)?.share ?? 0);
  // In the order of what hurts A most.
  return voices.A.sensitivities.map(({ of: part }) => [
    foundWords.sensitivity[part],
    ...VOICES.map((id) => of(voices[id].sensitivities, part)),
  ]);
}

/** Changes listed for each voice at most. */
const MOST_CHANGES = 2;

export function changeLines({ voices }: Assessment): readonly string[] {
  return VOICES.flatMap((id) => {
    const { changes } = voices[id];
    if (changes.length === 0) return [words.noChanges(id)];
    return changes
      .slice(0, MOST_CHANGES)
      .map((change) => words.change(id, changeText(change), change.before, change.after));
  });
}

function changeText(change: Change): string {
  const { changeKinds } = words;
  switch (change.kind) {
    case 'closer capacitor':
    case 'closer trimmer':
      return changeKinds[change.kind](change.tolerance);
    case 'other capacitor':
      return changeKinds[change.kind](change.farads);
    case 'other trimmer':
    case 'other fixed part':
      return changeKinds[change.kind](change.ohms);
  }
}

export function togetherLines(
  { targets }: Candidate,
  { lock }: Together,
): {
  readonly lines: readonly string[];
  readonly lock: boolean;
} {
  const found = beatsOf(pairOf((id) => middleHertz(targets[id])));
  const beats = found ? words.beats(...found.ratio, found.apartCents, found.hertz) : words.noBeats;
  const locks = lock
    ? words.lock(lock.upper, lock.lower, lock.apartCents, lock.lockCents, lock.dipVolts)
    : words.noLock;
  return { lines: [beats, locks], lock: lock !== null };
}

/** The trimmer curve's words: any turn told, its table and its files. */
export function curveText(
  curves: Pair<readonly CurvePoint[]>,
  a4: Hertz,
): { readonly describe: (points: Pair<CurvePoint>) => string; readonly figure: FigureText } {
  const { curve, ruler, share } = foundWords;
  const describe = (points: Pair<CurvePoint>) =>
    [
      curve.at(points.A.rotation),
      ...VOICES.map((id) => {
        const { hertz, centsPerDegree } = points[id];
        const { name, cents } = nearestNote(hertz, a4);
        return curve.voice(id, name, cents, hertz, centsPerDegree);
      }),
    ].join('; ');
  const rows = curves.A.map((a, i) => {
    const b = curves.B[i]!;
    return [
      share(a.rotation),
      curve.row(a.hertz),
      curve.degree(a.centsPerDegree),
      curve.row(b.hertz),
      curve.degree(b.centsPerDegree),
    ];
  });
  return {
    describe,
    figure: {
      caption: curve.caption,
      fileName: curve.fileName,
      svgLabel: ruler.svg,
      csvLabel: ruler.csv,
      table: { toggle: curve.table, heads: curve.heads, rows },
    },
  };
}
