/**
 * What the picture tells of a voice's comparison and gate. A gate may change faster than the eye may be shown; then its
 * comparison waits with it, so that drawings and words tell one held state, whole, at any time.
 */
import type { ShownGate } from '../../app/shown.ts';
import type { VoicePicture } from '../../lesson/picture.ts';
import type { Seconds } from '../../quantity/units.ts';
import { SHORTEST_SHOWN } from './gate-hold.ts';

type State = Pick<VoicePicture, 'compare' | 'gate'>;

export class ToldGate {
  #told: State | null = null;
  /** Since when the node is told on its side. */
  #since: Seconds = Number.NEGATIVE_INFINITY;

  /** The picture to tell, from the one of the moment and what is shown of its gate. To be asked for every frame. */
  next(time: Seconds, now: VoicePicture, shown: ShownGate): VoicePicture {
    const told = this.#stateAt(time, now, shown);
    if (told.compare.nodeIs !== this.#told?.compare.nodeIs || time < this.#since) this.#since = time;
    this.#told = told;
    return { ...now, ...told };
  }

  #stateAt(time: Seconds, now: VoicePicture, shown: ShownGate): State {
    const before = this.#told;
    const sounding = shown.kind !== 'silent';
    if (before !== null && time >= this.#since && shown.kind !== 'chattering') {
      if (now.gate.sounding !== sounding && before.gate.sounding === sounding) return before;
      // Where no gate follows, the node's side alone may change too fast.
      const turned = now.compare.nodeIs !== before.compare.nodeIs && before.gate.sounding === sounding;
      if (turned && time - this.#since < SHORTEST_SHOWN) return before;
    }
    return { compare: now.compare, gate: { ...now.gate, sounding } };
  }
}
