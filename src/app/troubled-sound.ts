/** What is heard of a board with a mistake in it: the voltage at its jack as it was worked out, over and over. */
import { instrumentOf } from '../circuit/instrument.ts';
import type { Design } from '../design/design.ts';
import type { Troubled } from '../kit/kit-tasks.ts';
import type { Seconds } from '../quantity/units.ts';
import type { Piece } from './audition.ts';

const LASTS: Seconds = 8;

/** With both sensors lit; null when nothing sounds. As loud as the healthy board would be in place of it, at most. */
export function troubledPiece(design: Design, { loop }: Troubled): Piece | null {
  if (loop === null) return null;
  const { volts, rate } = loop;
  const scale = 1 / instrumentOf(design).jack.boundVolts;
  const mono = Float32Array.from({ length: Math.round(LASTS * rate) }, (_, i) =>
    Math.max(-1, Math.min(1, scale * volts[i % volts.length]!)),
  );
  return { kind: 'recorded', design, sound: { left: mono, right: mono, sampleRate: rate }, seconds: LASTS };
}
