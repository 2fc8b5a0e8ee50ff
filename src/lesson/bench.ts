/**
 * What lies on the bench while a lesson runs: the instrument and the light on it, as plain values. A lesson's own
 * bench and the maker's are two values, so that neither can spoil the other. SI units, lux.
 */
import { type Instrument, instrumentOf } from '../circuit/instrument.ts';
import type { Design } from '../design/design.ts';
import { lampRipple, type MainsHertz, type MainsLampId } from '../light/mains-lamp.ts';
import { type LightProgram, underLamp } from '../light/program.ts';
import { SCENES, type Scene, sceneLux } from '../light/scene.ts';
import { DEFAULT_STAGE, type Stage, stageLux } from '../light/stage.ts';
import { type Lux, type Pair, pairOf } from '../quantity/units.ts';

/** The lamp that lights the stage; null = one whose light is steady, or daylight. */
export interface BenchLamp {
  readonly kind: MainsLampId | null;
  readonly mains: MainsHertz;
}

export interface BenchLight {
  readonly source: 'stage' | 'scene' | 'camera';
  readonly stage: Stage;
  readonly scene: Scene;
  readonly lamp: BenchLamp;
}

export interface Bench {
  readonly design: Design;
  readonly light: BenchLight;
}

/** A dark room, one steady lamp, no hand near the sensors. */
export const DEFAULT_LIGHT: BenchLight = {
  source: 'stage',
  stage: { ...DEFAULT_STAGE, roomLux: 0 },
  scene: SCENES['hand-wave'],
  lamp: { kind: null, mains: 50 },
};

/**
 * Light at both sensors as a meter reads it: by the stage, or at the beginning of the scene. With the camera as the
 * source the stage's light stands in for it, until the camera tells its own.
 */
export function luxOf({ source, stage, scene }: BenchLight): Pair<Lux> {
  return source === 'scene' ? pairOf((voice) => sceneLux(scene, voice, 0)) : stageLux(stage);
}

/** A steady light at both sensors, under the bench's lamp. */
export function steadyProgram({ lamp }: BenchLight, lux: Pair<Lux>): LightProgram {
  return underLamp({ kind: 'steady', lux }, lamp.kind && lampRipple(lamp.kind, lamp.mains));
}

/** What is played on this bench. */
export function programOf(light: BenchLight): LightProgram {
  if (light.source !== 'scene') return steadyProgram(light, luxOf(light));
  const { scene, lamp } = light;
  return underLamp({ kind: 'scene', scene }, lamp.kind && lampRipple(lamp.kind, lamp.mains));
}

const known = new WeakMap<Design, Instrument>();

/** Behaviour of a design, worked out once: a lesson looks at it in every frame. */
export function instrumentOn({ design }: Bench): Instrument {
  const found = known.get(design) ?? instrumentOf(design);
  known.set(design, found);
  return found;
}
