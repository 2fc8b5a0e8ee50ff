/** The light that is playing by itself: a scene or a recording, under a lamp that may ripple. */

import { type LogReading, readLog } from '../light/log-file.ts';
import { guessLog, type LogChoices, type LogGuess } from '../light/log-guess.ts';
import { lampRipple, type MainsHertz, type MainsLampId } from '../light/mains-lamp.ts';
import { type LightProgram, lengthOf, type SmoothProgram, underLamp } from '../light/program.ts';
import type { Scene } from '../light/scene.ts';
import type { Lux, Pair, Seconds } from '../quantity/units.ts';
import type { LogRefusal } from '../words/light-log.ts';

/** The lamp the light comes from; null = one that does not ripple, or daylight. */
export interface RoomLamp {
  readonly kind: MainsLampId | null;
  readonly mains: MainsHertz;
}

/** A recording as opened: its text, how it is read, and what came of it. */
export interface OpenLog {
  readonly name: string;
  readonly text: string;
  readonly guess: LogGuess;
  readonly choices: LogChoices | null;
  readonly reading: LogReading | null;
}

/** Opens a recording's text with the guessed way of reading it. */
export function openedLog(name: string, text: string): OpenLog {
  const guess = guessLog(text);
  const choices = guess.ok ? guess.choices : null;
  return { name, text: guess.ok ? text : '', guess, choices, reading: choices && readLog(text, choices) };
}

/** The same recording read another way. */
export function readAnew(log: OpenLog, choices: LogChoices): OpenLog {
  return { ...log, choices, reading: readLog(log.text, choices) };
}

/** Why a recording does not play; null when it does. */
export function logRefusal({ guess, reading }: OpenLog): LogRefusal | null {
  if (!guess.ok) return guess.refusal;
  return reading === null || reading.ok ? null : reading.refusal;
}

/** Length of a recording; 0 when it does not read. */
export function logLength(log: OpenLog | null): Seconds {
  return log?.reading?.ok ? lengthOf(log.reading.points.times) : 0;
}

export function steadyProgram(lux: Pair<Lux>, lamp: RoomLamp): LightProgram {
  return lit({ kind: 'steady', lux }, lamp);
}

export function sceneProgram(scene: Scene, lamp: RoomLamp): LightProgram {
  return lit({ kind: 'scene', scene }, lamp);
}

/** Null when there is no recording that reads. */
export function logProgram(log: OpenLog | null, loop: boolean, lamp: RoomLamp): LightProgram | null {
  return log?.reading?.ok ? lit({ kind: 'points', ...log.reading.points, loop }, lamp) : null;
}

function lit(program: SmoothProgram, lamp: RoomLamp): LightProgram {
  return underLamp(program, lamp.kind === null ? null : lampRipple(lamp.kind, lamp.mains));
}
