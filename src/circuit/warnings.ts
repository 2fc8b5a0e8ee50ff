/**
 * What a design's values are likely to do that nobody wanted, as values: an id, a voice (or none), how bad it is,
 * and the facts the sentence is told from (`words/warnings.ts`). Nothing is forbidden; every limit that decides
 * here is named with its source there.
 */
import type { Design } from '../design/design.ts';
import { VOICES } from '../quantity/units.ts';
import type { Severity } from '../words/warning-facts.ts';
import type { Instrument } from './instrument.ts';
import type { Warning } from './warning.ts';
import { gateWarnings } from './warnings-gate.ts';
import { outputWarnings, supplyWarnings } from './warnings-output.ts';
import { pitchWarnings, togetherWarnings } from './warnings-pitch.ts';
import { sensorWarnings, sharedLightWarnings } from './warnings-sensor.ts';

export type { Warning } from './warning.ts';

/** Worst first. */
const ORDER: readonly Severity[] = ['danger', 'wrong', 'caution', 'note'];

/** Every warning of a design, worst first; within one severity along the signal path. */
export function warningsOf(design: Design, instrument: Instrument): readonly Warning[] {
  const all = [
    ...VOICES.flatMap((voice) => [
      ...sensorWarnings(design, instrument, voice),
      ...gateWarnings(design, instrument, voice),
      ...pitchWarnings(design, instrument, voice),
    ]),
    ...sharedLightWarnings(design, instrument),
    ...togetherWarnings(design, instrument),
    ...outputWarnings(design, instrument),
    ...supplyWarnings(design, instrument),
  ];
  return all.toSorted((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
}
