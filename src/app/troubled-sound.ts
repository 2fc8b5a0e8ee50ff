/** What is heard of a board with a mistake in it, made from the design: its voices moved to the pitches worked out. */
import { instrumentOf } from '../circuit/instrument.ts';
import { setCapacitance } from '../design/commands.ts';
import type { Design } from '../design/design.ts';
import type { Troubled } from '../kit/kit-tasks.ts';
import { VOICES } from '../quantity/units.ts';
import type { Piece } from './audition.ts';

/** With both sensors lit; null when nothing sounds. The period is straight in the capacitance. */
export function troubledPiece(design: Design, { hertz }: Troubled): Piece | null {
  const { voices } = instrumentOf(design);
  const sounding = VOICES.filter((voice) => hertz[voice] !== null);
  if (sounding.length === 0) return null;
  let moved = design;
  for (const voice of sounding) {
    const usual = voices[voice].cycle.frequency;
    const wanted = hertz[voice]!;
    if (usual > 0)
      moved = setCapacitance(voice, (design.voices[voice].capacitor.farads * usual) / wanted)(moved);
  }
  return sounding.length === 1
    ? { kind: 'steady', design: moved, only: sounding[0]! }
    : { kind: 'steady', design: moved };
}
