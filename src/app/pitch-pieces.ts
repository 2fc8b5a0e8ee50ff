/** What there is to hear of a candidate: at its target, swept, with worst-case parts, as a batch before tuning. */
import { instrumentOf } from '../circuit/instrument.ts';
import type { Design } from '../design/design.ts';
import type { Candidate } from '../design/pitch.ts';
import { takeCandidate } from '../design/pitch-commands.ts';
import { noteNumberOf } from '../plan/notes.ts';
import { chipOf, targetRotations } from '../plan/timing.ts';
import { type Fraction, type Hertz, type Pair, pairOf, type Seconds } from '../quantity/units.ts';
import type { Piece } from './audition.ts';

const SWEEP_STEPS = 61;
const SWEEP_STEP: Seconds = 0.1;
const WORST_STEP: Seconds = 1.6;
const KIT_STEP: Seconds = 0.7;
const TOGETHER: Seconds = 6;

/** The design at hand with a candidate's parts, the trimmers turned as told. */
export function designAt(design: Design, candidate: Candidate, rotations: Pair<Fraction>): Design {
  return takeCandidate(candidate, rotations)(design);
}

/** The design at hand with a candidate's parts, turned to its targets. */
export function designWith(design: Design, candidate: Candidate): Design {
  return designAt(design, candidate, targetRotations(chipOf(design), candidate));
}

/** The same design playing other pitches by way of its capacitors: T is proportional to C. */
function playing(design: Design, hertz: Pair<Hertz>): Design {
  const { voices } = instrumentOf(design);
  return {
    ...design,
    voices: pairOf((id) => {
      const voice = design.voices[id];
      const share = voices[id].cycle.frequency / hertz[id];
      return { ...voice, capacitor: { ...voice.capacitor, farads: voice.capacitor.farads * share } };
    }),
  };
}

export const targetPiece = (design: Design, candidate: Candidate): Piece => ({
  kind: 'steady',
  design: designWith(design, candidate),
});

/** Both trimmers from stop to stop together, highest pitch first. */
export function sweepPiece(design: Design, candidate: Candidate): Piece {
  const at = (rotation: Fraction) =>
    designAt(
      design,
      candidate,
      pairOf(() => rotation),
    );
  const rotations = Array.from({ length: SWEEP_STEPS }, (_, i) => i / (SWEEP_STEPS - 1));
  return {
    kind: 'turns',
    steps: rotations.map((rotation) => ({ design: at(rotation), seconds: SWEEP_STEP })),
  };
}

/** The lowest that worst-case parts play, what is meant, and the highest. */
export function worstPiece(
  design: Design,
  candidate: Candidate,
  worst: Pair<{ readonly lowHertz: Hertz; readonly highHertz: Hertz }>,
): Piece {
  const meant = designWith(design, candidate);
  const low = playing(
    meant,
    pairOf((id) => worst[id].lowHertz),
  );
  const high = playing(
    meant,
    pairOf((id) => worst[id].highHertz),
  );
  return { kind: 'turns', steps: [low, meant, high].map((one) => ({ design: one, seconds: WORST_STEP })) };
}

/** Kits of a batch before tuning, one after another or all together. */
export function benchPiece(
  design: Design,
  candidate: Candidate,
  bench: readonly Pair<Hertz>[],
  how: 'turns' | 'together',
): Piece {
  const meant = designWith(design, candidate);
  const designs = bench.map((hertz) => playing(meant, hertz));
  return how === 'together'
    ? { kind: 'together', designs, seconds: TOGETHER }
    : { kind: 'turns', steps: designs.map((one) => ({ design: one, seconds: KIT_STEP })) };
}

/** The same piece with one voice alone; several at once, and recordings, are always heard whole. */
export function heardAs(piece: Piece, only: 'A' | 'B' | null): Piece {
  return only !== null && (piece.kind === 'steady' || piece.kind === 'turns') ? { ...piece, only } : piece;
}

/** How many steps a piece has: a steady one, or a recording, has one. */
export function stepsOf(piece: Piece): number {
  switch (piece.kind) {
    case 'steady':
    case 'recorded':
      return 1;
    case 'turns':
      return piece.steps.length;
    case 'together':
      return piece.designs.length;
  }
}

/** Number of the reference note for a frequency; whole where it is a note of A4 = 440 Hz but for rounding. */
export function referenceNoteFor(hertz: Hertz): number {
  const exact = noteNumberOf(hertz);
  return Math.abs(exact - Math.round(exact)) < 1e-6 ? Math.round(exact) : exact;
}
