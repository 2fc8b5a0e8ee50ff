/** What the sound engine is told: plain data that crosses to the audio thread. */
import type { Astable } from '../circuit/astable.ts';
import type { CellSpeed } from '../circuit/cell.ts';
import type { Gate } from '../circuit/gate.ts';
import type { Instrument } from '../circuit/instrument.ts';
import type { Jack } from '../circuit/output.ts';
import type { Design } from '../design/design.ts';
import type { LightProgram } from '../light/program.ts';
import type { Lux, Pair, Seconds, Volts } from '../quantity/units.ts';

export interface EngineSettings {
  readonly astables: Pair<Astable>;
  /** How far a voice's upper level falls for an instant at the other's output edges. */
  readonly upperDips: Pair<Volts>;
  readonly speeds: Pair<CellSpeed>;
  readonly gates: Pair<Gate>;
  readonly jack: Jack;
  readonly noise: { readonly voltsRms: Volts; readonly seed: number };
}

/** The engine's share of an instrument. */
export function settingsOf(design: Design, instrument: Instrument): EngineSettings {
  const { astables, upperDips, speeds, gates, jack } = instrument;
  return { astables, upperDips, speeds, gates, jack, noise: design.noise };
}

/**
 * The loudest the audio thread lets out, the jack's bound being 1: all that a band-limited edge overshoots, but for the
 * first pulses of a voice near half the sampling rate and the thump of a capacitor that a louder design has charged.
 */
export const MOST_OF_BOUND = 1.25;

/** What the audio thread starts with. */
export interface WorkletStart {
  readonly settings: EngineSettings;
  readonly program: LightProgram;
}

/** Page to audio thread, from then on. */
export type EngineMessage =
  | { readonly kind: 'settings'; readonly settings: EngineSettings }
  /** A program to play from now, `place` seconds into it. */
  | { readonly kind: 'play'; readonly program: LightProgram; readonly place: Seconds }
  /** A control or camera moved: go straight from the present light to this one. */
  | { readonly kind: 'aim'; readonly lux: Pair<Lux>; readonly seconds: Seconds };

/** Audio thread to page, about thirty times a second: numbers in one typed array, in this order. */
export const FRAME = {
  time: 0,
  luxA: 1,
  luxB: 2,
  nodeA: 3,
  nodeB: 4,
  /** 1 = sounding now. */
  soundingA: 5,
  soundingB: 6,
  /** Changes of state since the frame before. */
  changesA: 7,
  changesB: 8,
  /** Largest |volts| at the jack since the frame before. */
  peak: 9,
} as const;
export const FRAME_LENGTH = 10;
export const FRAMES_PER_SECOND = 30;
