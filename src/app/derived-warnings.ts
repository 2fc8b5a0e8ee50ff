/** What a design will run into, worst first: apart from the other derived values, because it brings many words. */
import { warningsOf } from '../circuit/warnings.ts';
import type { Design } from '../design/design.ts';
import { derivedInstrument, memoized } from './derived.ts';

export const derivedWarnings = memoized((design: Design) => warningsOf(design, derivedInstrument(design)));
