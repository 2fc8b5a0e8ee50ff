/**
 * Scenes: light that happens by itself, from a few parameters and a seed. Each is read in closed form at any time,
 * runs continuously (no jumps), and says where it bends, so that the engine's integration starts anew there.
 * Time 0 is the scene's beginning; before it everything waits. Seconds, metres, lux.
 */
import type { Lux, Seconds, VoiceId } from '../quantity/units.ts';
import { type SlottedCard, slottedCardBreak, slottedCardLux } from './scene-card.ts';
import { type HandWave, handWaveBreak, handWaveLux } from './scene-hand.ts';
import { type Lantern, lanternBreak, lanternLux } from './scene-lantern.ts';
import { type PasserBy, passerByBreak, passerByLux } from './scene-passer.ts';

export type Scene = HandWave | PasserBy | SlottedCard | Lantern;
export type SceneKind = Scene['kind'];
export type SceneOf<K extends SceneKind> = Extract<Scene, { readonly kind: K }>;

interface Limits {
  readonly min: number;
  readonly max: number;
}

/** Every parameter of a scene that is a number. */
export type SceneNumber<K extends SceneKind> = {
  [P in keyof SceneOf<K>]: SceneOf<K>[P] extends number ? P : never;
}[keyof SceneOf<K>];

/** Paces and sizes that a person, a hand, a strip of card or a lantern has; common practice where not measured. */
export const SCENES: { readonly [K in SceneKind]: SceneOf<K> } = {
  'hand-wave': {
    kind: 'hand-wave',
    everySeconds: 2.4,
    crossSeconds: 1.2,
    handMetres: 0.06,
    lampMetres: 0.6,
    lampLux: 280,
    roomLux: 20,
    spacingMetres: 0.18,
    irregular: 0.3,
    seed: 1,
  },
  'passer-by': {
    kind: 'passer-by',
    everySeconds: 5,
    metresPerSecond: 1.2,
    direction: 'either',
    shadowMetres: 0.45,
    softMetres: 0.2,
    spacingMetres: 0.5,
    litLux: 200,
    shadeLux: 12,
    irregular: 0.6,
    seed: 2,
  },
  'slotted-card': {
    kind: 'slotted-card',
    everySeconds: 9,
    slots: 6,
    slotMetres: 0.02,
    gapMetres: 0.02,
    metresPerSecond: 0.06,
    apertureMetres: 0.005,
    spacingMetres: 0.07,
    litLux: 300,
    shadeLux: 4,
    irregular: 0.2,
    seed: 3,
  },
  lantern: {
    kind: 'lantern',
    slots: 5,
    slotDegrees: 30,
    rpm: 12,
    drumMetres: 0.06,
    sensorMetres: 0.2,
    filamentMetres: 0.004,
    apertureMetres: 0.005,
    apartDegrees: 100,
    litLux: 150,
    shadeLux: 5,
    irregular: 0.3,
    seed: 4,
  },
};

const lux: Limits = { min: 0, max: 100_000 };
const seed: Limits = { min: 0, max: 999_999 };
const irregular: Limits = { min: 0, max: 1 };
const everySeconds: Limits = { min: 0.5, max: 600 };

/** What each control reaches. Within these every scene is continuous and its parts fit. */
export const SCENE_LIMITS: { readonly [K in SceneKind]: Readonly<Record<SceneNumber<K>, Limits>> } = {
  'hand-wave': {
    everySeconds,
    crossSeconds: { min: 0.3, max: 60 },
    handMetres: { min: 0.02, max: 0.15 },
    lampMetres: { min: 0.4, max: 2 },
    lampLux: lux,
    roomLux: lux,
    spacingMetres: { min: 0.05, max: 0.5 },
    irregular,
    seed,
  },
  'passer-by': {
    everySeconds,
    metresPerSecond: { min: 0.1, max: 5 },
    shadowMetres: { min: 0.1, max: 2 },
    softMetres: { min: 0.005, max: 2 },
    spacingMetres: { min: 0, max: 10 },
    litLux: lux,
    shadeLux: lux,
    irregular,
    seed,
  },
  'slotted-card': {
    everySeconds,
    slots: { min: 1, max: 64 },
    slotMetres: { min: 0.001, max: 0.2 },
    gapMetres: { min: 0.001, max: 0.2 },
    metresPerSecond: { min: 0.005, max: 1 },
    apertureMetres: { min: 0.001, max: 0.02 },
    spacingMetres: { min: 0, max: 0.5 },
    litLux: lux,
    shadeLux: lux,
    irregular,
    seed,
  },
  lantern: {
    slots: { min: 1, max: 36 },
    slotDegrees: { min: 1, max: 180 },
    rpm: { min: 0.5, max: 60 },
    drumMetres: { min: 0.03, max: 0.3 },
    sensorMetres: { min: 0.04, max: 2 },
    filamentMetres: { min: 0.0005, max: 0.02 },
    apertureMetres: { min: 0.001, max: 0.02 },
    apartDegrees: { min: 0, max: 180 },
    litLux: lux,
    shadeLux: lux,
    irregular,
    seed,
  },
};

/** Lux at a sensor, `t` seconds into the scene. */
export function sceneLux(scene: Scene, voice: VoiceId, t: Seconds): Lux {
  switch (scene.kind) {
    case 'hand-wave':
      return handWaveLux(scene, voice, t);
    case 'passer-by':
      return passerByLux(scene, voice, t);
    case 'slotted-card':
      return slottedCardLux(scene, voice, t);
    case 'lantern':
      return lanternLux(scene, voice, t);
  }
}

/** The next time after `t` at which the scene bends at either sensor; always later than `t`. */
export function sceneBreak(scene: Scene, t: Seconds): Seconds {
  switch (scene.kind) {
    case 'hand-wave':
      return handWaveBreak(scene, t);
    case 'passer-by':
      return passerByBreak(scene, t);
    case 'slotted-card':
      return slottedCardBreak(scene, t);
    case 'lantern':
      return lanternBreak(scene, t);
  }
}
