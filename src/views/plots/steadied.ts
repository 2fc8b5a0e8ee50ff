/**
 * A picture's moving values made calm where the light ripples or a gate chatters: sampled at screen rate such values
 * would jump about (a beat between two rates), so they are shown as their running mean. Seconds, lux, ohms, volts.
 */
import type { VoicePicture } from '../../lesson/picture.ts';
import type { Seconds } from '../../quantity/units.ts';

/** Time constant of the running mean. */
const MEAN_OVER: Seconds = 0.6;

export class Steadied {
  #mean: { readonly lux: number; readonly ohms: number; readonly node: number } | null = null;
  #time: Seconds = 0;

  /** The picture to show at a moment; `restless` = its values are to be averaged. */
  next(time: Seconds, picture: VoicePicture, restless: boolean): VoicePicture {
    const now = { lux: picture.lux, ohms: picture.ohms, node: picture.volts.node };
    const since = time - this.#time;
    this.#time = time;
    if (!restless || this.#mean === null || since < 0) {
      this.#mean = now;
      return picture;
    }
    const share = 1 - Math.exp(-since / MEAN_OVER);
    const before = this.#mean;
    const toward = (key: keyof typeof now) => before[key] + share * (now[key] - before[key]);
    this.#mean = { lux: toward('lux'), ohms: toward('ohms'), node: toward('node') };
    const { lux, ohms, node } = this.#mean;
    return { ...picture, lux, ohms, volts: { ...picture.volts, node } };
  }
}
