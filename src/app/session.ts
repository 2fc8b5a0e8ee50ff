/** What belongs to this sitting, not to the instrument: chosen light, look, volume. Not undone, kept per device. */

import { SCENES, type Scene } from '../light/scene.ts';
import { DEFAULT_STAGE, type Stage } from '../light/stage.ts';
import type { Lux } from '../quantity/units.ts';
import type { Language } from '../words/spoken.ts';
import { PLACES, type Place, type SoundByLink } from './address.ts';
import type { OpenLog, RoomLamp } from './playing-light.ts';

export type Look = 'light' | 'dark' | 'projector';
export type LightSource = 'stage' | 'scene' | 'log' | 'camera';

export interface Session {
  readonly place: Place;
  readonly look: Look;
  /** Loudest peak of both voices together, in decibels below full scale. */
  readonly volumeDb: number;
  readonly light: LightSource;
  readonly stage: Stage;
  readonly scene: Scene;
  /** The lamp that lights stage, scene and recording. */
  readonly lamp: RoomLamp;
  readonly log: OpenLog | null;
  readonly loopLog: boolean;
  /** Lux that the camera's first picture counts as. */
  readonly cameraLux: Lux;
  /** A note to compare by ear: its number (A4 = 69), and whether it sounds. */
  readonly reference: { readonly note: number; readonly sounds: boolean };
  /** Steady tones do not fade. */
  readonly exhibition: boolean;
  /** What the link this page was opened by says of the sound. */
  readonly soundByLink: SoundByLink | null;
  /** The lesson a link asks for. */
  readonly lessonByLink: string | null;
  /** An address where this page is served to others; '' = none. */
  readonly hosted: string;
  /** The word a class's work sheets are drawn from; '' = none. */
  readonly classWord: string;
  /** Keys of the presenter in a lesson. */
  readonly presenterKeys: boolean;
  /** Gates are felt, where the device can. */
  readonly vibrates: boolean;
  readonly language: Language;
}

/** Never louder than this; the default is quiet. */
export const VOLUME = { min: -60, usual: -20, max: -6 } as const;

export const DEFAULT_SESSION: Session = {
  place: PLACES[0],
  look: 'light',
  volumeDb: VOLUME.usual,
  light: 'stage',
  stage: DEFAULT_STAGE,
  scene: SCENES['hand-wave'],
  lamp: { kind: null, mains: 50 },
  log: null,
  loopLog: true,
  cameraLux: 300,
  reference: { note: 57, sounds: false },
  exhibition: false,
  soundByLink: null,
  lessonByLink: null,
  hosted: '',
  classWord: '',
  presenterKeys: true,
  vibrates: false,
  language: 'en',
};
