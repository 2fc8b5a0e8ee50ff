/** Rows about light itself: lamps, shadows of a hand, camera pictures, mains ripple, things that move. */
import { linearLuminance, srgbToLinear } from '../../src/light/camera.ts';
import { illuminanceFrom, shadowOf, skyLeft, tubeBlocked, tubeCutOff } from '../../src/light/hand.ts';
import {
  cameraAlias,
  exposureKeeps,
  type FlickerVerdict,
  ieee1789Limits,
  ieee1789Verdict,
} from '../../src/light/mains-lamp.ts';
import { flickerIndexOf, type RippleShape, rippleAt } from '../../src/light/ripple.ts';
import { SCENES, type SceneOf } from '../../src/light/scene.ts';
import { cardTimes } from '../../src/light/scene-card.ts';
import { lanternTimes } from '../../src/light/scene-lantern.ts';
import type { Evaluators, Inputs } from './rows.ts';

const RADIANS = Math.PI / 180;

/** Luminance of a picture of one colour, read by the product as it reads the camera's. */
function luminanceOf(red: number, green: number, blue: number): number {
  const pixels = Uint8ClampedArray.from({ length: 64 }, (_, i) => [red, green, blue, 255][i % 4]!);
  return linearLuminance(pixels, 4, 4, { x: 0, y: 0, width: 1, height: 1 });
}

const cardOf = (inputs: Inputs): SceneOf<'slotted-card'> => ({
  ...SCENES['slotted-card'],
  slotMetres: inputs.number('slotMetres'),
  gapMetres: inputs.numberOr('gapMetres', 0.02),
  apertureMetres: inputs.numberOr('apertureMetres', 0.005),
  metresPerSecond: inputs.number('metresPerSecond'),
});

/** An IEEE limit as a share; no limit is told as −1, which no depth is. */
const limit = (depth: number | null): number => depth ?? -1;

export const light: Evaluators = {
  'small lamp': (inputs) => ({
    lux: illuminanceFrom(
      inputs.number('candela'),
      inputs.number('metres'),
      inputs.numberOr('tiltDegrees', 0) * RADIANS,
    ),
  }),

  'sky past a hand': (inputs) => ({
    left: skyLeft(inputs.number('radiusMetres'), inputs.number('heightMetres'), 0),
  }),

  'shadow of a hand': (inputs) => ({
    ...shadowOf({
      lampDiameter: inputs.number('lampMetres'),
      lampDistance: inputs.number('lampDistanceMetres'),
      handWidth: inputs.number('handMetres'),
      height: inputs.number('heightMetres'),
    }),
  }),

  'tube cut-off': (inputs) => ({
    degrees: tubeCutOff(inputs.number('boreRadiusMetres'), inputs.number('depthMetres')) / RADIANS,
  }),

  'tube blocked': (inputs) => ({
    blocked: tubeBlocked(
      inputs.number('halfDegrees') * RADIANS,
      inputs.number('radiusMetres'),
      inputs.number('heightMetres'),
    ),
  }),

  'srgb code': (inputs) => {
    const code = inputs.number('code');
    return { picture: luminanceOf(code, code, code), decoded: srgbToLinear(code / 255) };
  },
  'srgb value': (inputs) => ({ linear: srgbToLinear(inputs.number('value')) }),

  'picture colour': (inputs) => ({
    luminance: luminanceOf(inputs.number('red'), inputs.number('green'), inputs.number('blue')),
  }),

  'picture ratio': (inputs) => {
    const [low, high] = [inputs.number('low'), inputs.number('high')];
    return { ratio: luminanceOf(high, high, high) / luminanceOf(low, low, low) };
  },

  'flicker limits': (inputs) => {
    const { lowRisk, noEffect } = ieee1789Limits(inputs.number('hertz'));
    return { lowRisk: limit(lowRisk), noEffect: limit(noEffect) };
  },

  'flicker verdict': (inputs) => {
    const verdict = ieee1789Verdict(inputs.number('depth'), inputs.number('hertz'));
    return { right: Number(verdict === (inputs.text('verdict') as FlickerVerdict)) };
  },

  'ripple of a lamp': (inputs) => {
    const shape = inputs.text('shape') as RippleShape;
    const duty = inputs.numberOr('duty', 0.5);
    const ripple = { hertz: 100, depth: inputs.number('depth'), shape, duty };
    const cycle = Array.from({ length: 4000 }, (_, i) => rippleAt(ripple, i / 4000 / 100));
    const [least, most] = [Math.min(...cycle), Math.max(...cycle)];
    return { index: flickerIndexOf(ripple), depth: (most - least) / (most + least) };
  },

  'camera beat': (inputs) => ({ hertz: cameraAlias(inputs.number('hertz'), inputs.number('frameRate')) }),
  'exposure keeps': (inputs) => ({ left: exposureKeeps(inputs.number('hertz'), 1 / inputs.number('per')) }),

  'slotted card': (inputs) => ({ ...cardTimes(cardOf(inputs)) }),

  lantern: (inputs) => ({
    ...lanternTimes({
      ...SCENES.lantern,
      irregular: 0,
      drumMetres: inputs.number('drumMetres'),
      rpm: inputs.number('rpm'),
      slots: inputs.number('slots'),
      slotDegrees: inputs.number('slotDegrees'),
    }),
  }),
};
