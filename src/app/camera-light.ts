/**
 * The webcam as a light source: opened on request, left to settle, held, then read region by region. Only two
 * brightness numbers leave each picture.
 */

import {
  type CameraEnd,
  type CameraFrame,
  type CameraLocks,
  type CameraSession,
  openCamera,
  type RefusalKind,
} from '../light/camera.device.ts';
import {
  assumedCalibration,
  type Calibration,
  type CameraRegion,
  clippedShares,
  DEFAULT_REGIONS,
  type LuminanceSample,
  linearLuminance,
  luxFrom,
  settlingOf,
  typedCalibration,
} from '../light/camera.ts';
import { type CameraFindings, CameraWatch } from '../light/camera-watch.ts';
import { type Lux, type Pair, pairOf, type Seconds, VOICES, type VoiceId } from '../quantity/units.ts';
import { Store } from './store.ts';
import { within } from './within.ts';

export type CameraState =
  | { readonly kind: 'off'; readonly ended: CameraEnd | null }
  | { readonly kind: 'asking' }
  | { readonly kind: 'refused'; readonly reason: RefusalKind }
  /** Open, giving the exposure back to the camera. */
  | { readonly kind: 'unlocking' }
  /** Open, waiting for the exposure to come to rest. */
  | { readonly kind: 'settling' }
  /** Open, but the picture cannot be scaled: too dark at this sensor. */
  | { readonly kind: 'too dark'; readonly voice: VoiceId }
  | {
      readonly kind: 'on';
      readonly calibration: Calibration;
      readonly locks: CameraLocks;
      /** The exposure never came to rest; the picture was taken as it was. */
      readonly restless: boolean;
    };

/** Why an open camera tells no light: its picture is blanked, or none has come for some time. */
export type PictureMissing = 'blanked' | 'still';

export interface CameraView {
  readonly state: CameraState;
  /** The light is not the present one; it goes on with the next picture. */
  readonly missing: PictureMissing | null;
  readonly regions: Pair<CameraRegion>;
  /** The picture was turned while it ran, and its light taken anew. */
  readonly turned: boolean;
  /** A region holds many pixels at the top of the scale: brighter light cannot be told apart. */
  readonly clipped: Pair<boolean>;
  /** Frame rate, ripple and drift, as the readings give them away; renewed once a second. */
  readonly findings: CameraFindings;
}

const NOTHING_FOUND: CameraFindings = { frameRate: null, ripple: 0, drifting: false };

/** Share of white pixels in a region above which readings are no longer true. */
const CLIPPED_SHARE = 0.2;

/** So many looks, a second apart, without a picture, and it is told. */
const LOOKS = 3;
/** A camera that does not say whether its exposure is held is not waited for longer. */
const PATIENCE: Seconds = 3;

export class CameraLight {
  readonly view = new Store<CameraView>({
    state: { kind: 'off', ended: null },
    missing: null,
    regions: DEFAULT_REGIONS,
    turned: false,
    clipped: { A: false, B: false },
    findings: NOTHING_FOUND,
  });
  readonly #onLux: (lux: Pair<Lux>, every: Seconds) => void;
  #session: CameraSession | null = null;
  #samples: LuminanceSample[] = [];
  #litLux: Lux = 300;
  #lastFrame: Seconds | null = null;
  /** Rises with every switching on and off: an answer that comes too late is let go. */
  #attempt = 0;
  readonly #watch = new CameraWatch();
  #found: Seconds = 0;
  /** The attempt whose exposure is being held. */
  #preparing: number | null = null;
  #look: ReturnType<typeof setInterval> | undefined;
  /** Looks since the last picture. */
  #looks = 0;
  /** A patch was moved: its picture must be taken anew. */
  #moved = false;

  constructor(onLux: (lux: Pair<Lux>, every: Seconds) => void) {
    this.#onLux = onLux;
  }

  /** The running picture, for the page to show. */
  get video(): HTMLVideoElement | null {
    return this.#session?.video ?? null;
  }

  async open(litLux: Lux): Promise<void> {
    this.stop();
    const attempt = ++this.#attempt;
    this.#litLux = litLux;
    this.view.dispatch((view) => ({ ...view, turned: false }));
    this.#setState({ kind: 'asking' });
    const answer = await openCamera();
    if (attempt !== this.#attempt) {
      if (answer.kind === 'open') answer.stop();
      return;
    }
    if (answer.kind !== 'open') {
      this.#setState({ kind: 'refused', reason: answer.kind });
      return;
    }
    this.#session = answer;
    this.#samples = [];
    this.#lastFrame = null;
    this.#setState({ kind: 'settling' });
    this.#begin(answer);
    answer.onFrame((frame) => this.#take(frame));
    answer.onMuted((isMuted) => this.#blanked(isMuted));
    answer.onTurned(() => void this.#turned());
    answer.onEnded((ended) => {
      this.#end();
      this.#attempt++;
      this.#setState({ kind: 'off', ended });
    });
  }

  stop(): void {
    this.#attempt++;
    this.#session?.stop();
    this.#end();
    if (this.view.current.state.kind !== 'off') this.#setState({ kind: 'off', ended: null });
  }

  /** Looks from time to time whether pictures come. */
  #begin(session: CameraSession): void {
    this.#blanked(session.isMuted);
    this.#look = setInterval(() => {
      // A page that is not seen gets no pictures.
      this.#looks = document.hidden ? 0 : this.#looks + 1;
      if (this.#looks >= LOOKS && this.view.current.missing === null) this.#setMissing('still');
    }, 1000);
  }

  #end(): void {
    clearInterval(this.#look);
    this.#session = null;
    this.#setMissing(null);
  }

  #blanked(isMuted: boolean): void {
    this.#looks = 0;
    this.#setMissing(isMuted ? 'blanked' : null);
  }

  #setMissing(missing: PictureMissing | null): void {
    if (missing !== null) {
      // Findings, and the rest of the exposure, are found from whole stretches of pictures only.
      this.#watch.clear();
      if (this.view.current.state.kind === 'settling') this.#samples = [];
    }
    this.view.dispatch((view) => (view.missing === missing ? view : { ...view, missing }));
  }

  /** Other things lie under the patches of a picture that was turned: it is taken anew, and that is told. */
  async #turned(): Promise<void> {
    await this.takeAgain();
    this.view.dispatch((view) => ({ ...view, turned: true }));
  }

  /** Lets the exposure find itself again and takes the picture anew as the lit level. */
  async takeAgain(litLux: Lux = this.#litLux): Promise<void> {
    const session = this.#session;
    if (!session) return;
    this.#litLux = litLux;
    const attempt = ++this.#attempt;
    this.view.dispatch((view) => ({ ...view, turned: false }));
    this.#setState({ kind: 'unlocking' });
    await within(session.unlock(), PATIENCE);
    if (attempt !== this.#attempt) return;
    this.#samples = [];
    this.#setState({ kind: 'settling' });
  }

  /** The present picture is so many lux at one sensor, as a meter there says; what the other reads stays as it is. */
  calibrate(voice: VoiceId, lux: Lux): boolean {
    const last = this.#samples.at(-1);
    const { state } = this.view.current;
    if (!last || state.kind !== 'on' || !this.#session) return false;
    const { exposure } = this.#session;
    const read = luxFrom(state.calibration, last.luminance, exposure);
    const result = typedCalibration(last.luminance, { ...read, [voice]: lux }, exposure);
    if (!result.calibration) return false;
    this.#setState({ ...state, calibration: result.calibration });
    return true;
  }

  /** Moves a patch. What it now shows counts as the lit level, from the next picture on. */
  placeRegion(voice: VoiceId, region: CameraRegion): void {
    this.#moved = true;
    this.view.dispatch((view) => ({ ...view, regions: { ...view.regions, [voice]: region } }));
  }

  #setState(state: CameraState): void {
    this.#watch.clear();
    this.view.dispatch((view) => ({ ...view, state }));
  }

  #take({ picture, seconds }: CameraFrame): void {
    // Black pictures of a blanked camera are no dark room.
    if (this.#session?.isMuted) return;
    this.#blanked(false);
    const { regions, state } = this.view.current;
    const { data, width, height } = picture;
    const luminance = pairOf((voice) => linearLuminance(data, width, height, regions[voice]));
    this.#samples.push({ seconds, luminance });
    if (state.kind === 'settling') void this.#prepare();
    else if (this.#samples.length > 1) this.#samples.shift();
    if (state.kind !== 'on' || !this.#session) return;
    if (this.#moved) {
      this.#moved = false;
      const { exposure } = this.#session;
      const result = assumedCalibration(luminance, this.#litLux, exposure);
      this.#setState(
        result.calibration
          ? { ...state, calibration: result.calibration }
          : { kind: 'too dark', voice: result.voice },
      );
      return;
    }
    this.#watch.take({ seconds, luminance });
    if (seconds - this.#found >= 1 || seconds < this.#found) {
      this.#found = seconds;
      this.view.dispatch((view) => ({ ...view, findings: this.#watch.findings }));
    }
    const clipped = pairOf((v) => clippedShares(data, width, height, regions[v]).bright > CLIPPED_SHARE);
    if (VOICES.some((v) => clipped[v] !== this.view.current.clipped[v]))
      this.view.dispatch((view) => ({ ...view, clipped }));
    const every =
      this.#lastFrame === null ? 1 / 30 : Math.min(0.2, Math.max(0.005, seconds - this.#lastFrame));
    this.#lastFrame = seconds;
    this.#onLux(luxFrom(state.calibration, luminance, this.#session.exposure), every);
  }

  /** Once the picture rests: hold the exposure, and take the picture as the lit level. */
  async #prepare(): Promise<void> {
    const settling = settlingOf(this.#samples);
    const session = this.#session;
    const attempt = this.#attempt;
    if (settling === 'settling' || this.#preparing === attempt || !session) return;
    this.#preparing = attempt;
    const locks = (await within(session.lock(), PATIENCE)) ?? session.locked;
    const last = this.#samples.at(-1);
    if (attempt !== this.#attempt || !last) return;
    const result = assumedCalibration(last.luminance, this.#litLux, session.exposure);
    this.#setState(
      result.calibration
        ? { kind: 'on', calibration: result.calibration, locks, restless: settling === 'gave-up' }
        : { kind: 'too dark', voice: result.voice },
    );
  }
}
