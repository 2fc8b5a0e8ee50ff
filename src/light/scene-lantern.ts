/**
 * A paper lantern with slots that turns round a small lamp; both sensors lie outside, some angle apart. The lamp's
 * own size and the sensor's aperture soften the edges: taken as one even smear as wide as both, which keeps the
 * time at half light exact. Never more than three flashes in a second (WCAG 2.2, 2.3.1). Degrees, metres, seconds.
 */
import type { Fraction, Lux, Metres, Seconds, VoiceId } from '../quantity/units.ts';
import { VOICES } from '../quantity/units.ts';
import { chance, mixed, sooner } from './irregular.ts';

export interface Lantern {
  readonly kind: 'lantern';
  readonly slots: number;
  readonly slotDegrees: number;
  /** Turns a minute as wished; `lanternTimes` gives those allowed. */
  readonly rpm: number;
  readonly drumMetres: Metres;
  /** From the axis to the sensors. */
  readonly sensorMetres: Metres;
  readonly filamentMetres: Metres;
  readonly apertureMetres: Metres;
  /** From sensor A to sensor B as seen from the lamp. */
  readonly apartDegrees: number;
  readonly litLux: Lux;
  readonly shadeLux: Lux;
  /** 0 = cut by a machine, 1 = by hand: places, widths and brightness of the slots differ. */
  readonly irregular: Fraction;
  readonly seed: number;
}

export const MOST_FLASHES_PER_SECOND = 3;

interface LanternTimes {
  /** Turns a minute in use: as wished, or as many as flash three times a second. */
  readonly rpm: number;
  readonly flashesPerSecond: number;
  readonly rimMetresPerSecond: number;
  /** Above half light, for a slot as wide as wished; the same at every distance. */
  readonly litSeconds: Seconds;
  /** At the sensors: width of a slot's picture, and of its soft edge. */
  readonly imageMetres: Metres;
  readonly blurMetres: Metres;
}

export function lanternTimes(lantern: Lantern): LanternTimes {
  const { drumMetres } = lantern;
  const rpm = turnsOf(lantern);
  const width = slotOf(lantern);
  return {
    rpm,
    flashesPerSecond: (lantern.slots * rpm) / 60,
    rimMetresPerSecond: (2 * Math.PI * drumMetres * rpm) / 60,
    litSeconds: width / (6 * rpm),
    imageMetres: ((width * Math.PI) / 180) * distanceOf(lantern),
    blurMetres: blurOf(lantern),
  };
}

export function lanternLux(lantern: Lantern, voice: VoiceId, t: Seconds): Lux {
  const smear = smearOf(lantern);
  const from = 6 * turnsOf(lantern) * t - lagOf(lantern, voice) - smear / 2;
  const pitch = 360 / lantern.slots;
  let open = 0;
  for (let cell = Math.floor(from / pitch); cell * pitch < from + smear; cell++) {
    const width = widthOf(lantern, cell);
    const begin = beginOf(lantern, cell, width);
    const seen = Math.min(begin + width, from + smear) - Math.max(begin, from);
    if (seen > 0) open += seen * brightnessOf(lantern, cell);
  }
  return mixed(lantern.shadeLux, lantern.litLux, open / smear);
}

/** An edge of a slot enters or leaves what a sensor sees of the lamp. */
export function lanternBreak(lantern: Lantern, t: Seconds): Seconds {
  const speed = 6 * turnsOf(lantern);
  const pitch = 360 / lantern.slots;
  const half = smearOf(lantern) / 2;
  let best = Number.POSITIVE_INFINITY;
  for (const voice of VOICES) {
    for (let side = 0; side < 2; side++) {
      const lag = lagOf(lantern, voice) + (side === 0 ? -half : half);
      const cell = Math.floor((speed * t - lag) / pitch);
      for (let near = cell; near <= cell + 1; near++) {
        const width = widthOf(lantern, near);
        const begin = beginOf(lantern, near, width);
        best = sooner(best, (begin + lag) / speed, t);
        best = sooner(best, (begin + width + lag) / speed, t);
      }
    }
  }
  return best;
}

/** Uneven slots stand up to half a pitch nearer together: the lantern then turns that much slower. */
function turnsOf({ rpm, slots, irregular }: Lantern): number {
  return Math.min(rpm, (60 * (MOST_FLASHES_PER_SECOND - irregular / 2)) / slots);
}

/** The paper between two slots keeps at least a tenth of the pitch. */
function slotOf({ slots, slotDegrees }: Lantern): number {
  return Math.min(slotDegrees, (0.9 * 360) / slots);
}

/** Soft edge as an angle: the lamp's blur and the aperture, both at the sensor's distance. */
function smearOf(lantern: Lantern): number {
  return ((blurOf(lantern) + lantern.apertureMetres) / distanceOf(lantern)) * (180 / Math.PI);
}

function blurOf(lantern: Lantern): Metres {
  return (lantern.filamentMetres * (distanceOf(lantern) - lantern.drumMetres)) / lantern.drumMetres;
}

/** A sensor is never inside the drum. */
function distanceOf({ sensorMetres, drumMetres }: Lantern): Metres {
  return Math.max(sensorMetres, drumMetres);
}

function lagOf({ apartDegrees }: Lantern, voice: VoiceId): number {
  return voice === 'A' ? 0 : apartDegrees;
}

const PURPOSE = { width: 31, place: 32, brightness: 33 } as const;

/** A hand-cut slot is narrower by up to half. Slots are counted on from turn to turn; each keeps its own cut. */
function widthOf(lantern: Lantern, cell: number): number {
  const cut = chance(lantern.seed, slotNumber(lantern, cell), PURPOSE.width);
  return slotOf(lantern) * (1 - 0.5 * lantern.irregular * cut);
}

/** Its middle is off by up to a quarter of the paper between two slots. */
function beginOf(lantern: Lantern, cell: number, width: number): number {
  const pitch = 360 / lantern.slots;
  const off = 2 * chance(lantern.seed, slotNumber(lantern, cell), PURPOSE.place) - 1;
  return (cell + 0.5) * pitch + (lantern.irregular * off * (pitch - slotOf(lantern))) / 4 - width / 2;
}

function brightnessOf(lantern: Lantern, cell: number): Fraction {
  return 1 - 0.4 * lantern.irregular * chance(lantern.seed, slotNumber(lantern, cell), PURPOSE.brightness);
}

function slotNumber({ slots }: Lantern, cell: number): number {
  return ((cell % slots) + slots) % slots;
}
