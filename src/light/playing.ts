/** Programs set on a running clock: a scene or a recording begins at the moment it is chosen, not at the clock's 0. */
import type { Seconds } from '../quantity/units.ts';
import { type LightProgram, type SmoothProgram, scrubbed } from './program.ts';

/** The program so that at time `t` of the clock it is `place` seconds from its beginning. */
export function playedFrom(program: LightProgram, t: Seconds, place: Seconds = 0): LightProgram {
  return program.kind === 'ripple'
    ? { ...program, of: smoothFrom(program.of, t, place) }
    : smoothFrom(program, t, place);
}

function smoothFrom(program: SmoothProgram, t: Seconds, place: Seconds): SmoothProgram {
  switch (program.kind) {
    case 'points':
      return scrubbed(program, t, place);
    case 'scene':
      return { ...program, startsAt: t - place };
    case 'steady':
    case 'ramp':
      return program;
  }
}
