/**
 * What the document keeps of the room where the instrument will stand: readings, lamps, daylight, what should gate
 * and what must not. Plain readonly values, nothing derived. Lux, metres, seconds, degrees; hours of the day 0…24.
 */
import type { RoomLampId, RoomTypeId } from '../parts/rooms.ts';
import type { Fraction, Lux, Metres, Ohms, Pair, Seconds, Volts } from '../quantity/units.ts';

/** One sensor's light; null = not read. */
export interface SensorLux {
  /** With nothing in the way. */
  readonly lit: Lux | null;
  /** With the event's shadow on it. */
  readonly shaded: Lux | null;
  /** Covered, or all lamps off: what always leaks in. */
  readonly dark: Lux | null;
}

export interface RoomReading {
  readonly hour: number;
  readonly lux: Pair<SensorLux>;
}

/** A lamp and its share of all the lamps' light at the sensors. */
export interface RoomLamp {
  readonly lamp: RoomLampId;
  readonly share: Fraction;
}

export type DaylightFactor =
  | { readonly kind: 'typed'; readonly share: Fraction }
  | {
      readonly kind: 'window';
      /** Net glazed area, m². */
      readonly glassArea: number;
      readonly transmittance: Fraction;
      readonly maintenance: Fraction;
      /** Angle of sky seen from the middle of the window. */
      readonly skyAngle: number;
      readonly length: Metres;
      readonly width: Metres;
      readonly height: Metres;
      readonly reflectance: Fraction;
    };

export interface RoomDaylight {
  /** Null = not known. North and east positive. */
  readonly place: { readonly latitude: number; readonly longitude: number } | null;
  /** As 2026-06-21. */
  readonly date: string;
  /** Hours ahead of universal time. */
  readonly utcOffset: number;
  /** `measured`: overcast in shape, as bright as measured outdoors at an hour. */
  readonly sky: 'clear' | 'partly' | 'overcast' | 'measured';
  readonly measured: { readonly outdoorLux: Lux; readonly hour: number } | null;
  readonly factor: DaylightFactor;
}

/** What comes between the light and the sensors, or lets it in. `left` = share of the light that stays at its deepest. */
export type RoomEvent =
  | {
      readonly kind: 'hand';
      readonly heightMetres: Metres;
      /** Share of the light that comes from all round (white ceiling, sky); the rest from one lamp. */
      readonly roundShare: Fraction;
      readonly lampDiameterMetres: Metres;
      readonly lampDistanceMetres: Metres;
      readonly crossSeconds: Seconds;
    }
  | {
      readonly kind: 'person';
      readonly left: Fraction;
      readonly shadowMetres: Metres;
      readonly softMetres: Metres;
      readonly metresPerSecond: number;
    }
  | {
      readonly kind: 'card';
      readonly left: Fraction;
      readonly slots: number;
      readonly slotMetres: Metres;
      readonly gapMetres: Metres;
      readonly metresPerSecond: number;
      readonly apertureMetres: Metres;
    }
  | {
      readonly kind: 'lantern';
      readonly left: Fraction;
      readonly slots: number;
      readonly slotDegrees: number;
      readonly rpm: number;
      readonly drumMetres: Metres;
      readonly sensorMetres: Metres;
      readonly filamentMetres: Metres;
      readonly apertureMetres: Metres;
      readonly apartDegrees: number;
    }
  /** A lid over the sensors that is lifted: `left` leaks in while it is shut. */
  | { readonly kind: 'lid'; readonly left: Fraction; readonly openSeconds: Seconds };

export type RoomEventKind = RoomEvent['kind'];

/** A cell read with a meter: its light, and its ohms or the volts at its node in the circuit. */
export type CellReading =
  | { readonly kind: 'ohms'; readonly lux: Lux; readonly ohms: Ohms }
  | { readonly kind: 'volts'; readonly lux: Lux; readonly volts: Volts };

/** How the values of a part lie within its tolerance: evenly, or normally with the limit at two or three deviations. */
export type Spread = 'uniform' | 'two-sigma' | 'three-sigma';

export interface RoomBatch {
  readonly kits: number;
  readonly seed: number;
  readonly spread: Spread;
  readonly resistorTolerance: Fraction;
  /** Comparator offset, ±. */
  readonly offsetVolts: Volts;
}

export interface Room {
  readonly roomType: RoomTypeId | null;
  /** `guessed`: from a camera or a phone that nobody calibrated; only ratios count. */
  readonly readingsAre: 'measured' | 'guessed';
  readonly readings: readonly RoomReading[];
  /** Empty = no lamp on the mains. */
  readonly lamps: readonly RoomLamp[];
  readonly mainsHertz: 50 | 60;
  readonly daylight: RoomDaylight | null;
  /** The hours the instrument is to work. */
  readonly opens: number;
  readonly closes: number;
  /** From sensor A to sensor B. */
  readonly spacingMetres: Metres;
  /** A tube around each sensor; null = bare. */
  readonly tube: { readonly boreRadiusMetres: Metres; readonly depthMetres: Metres } | null;
  readonly event: RoomEvent;
  readonly phantoms: readonly RoomEvent[];
  readonly batch: RoomBatch;
  readonly cellReadings: Pair<readonly CellReading[]>;
}

/** One event of each kind to start from. */
export const ROOM_EVENTS: { readonly [K in RoomEventKind]: Extract<RoomEvent, { readonly kind: K }> } = {
  hand: {
    kind: 'hand',
    heightMetres: 0.05,
    roundShare: 0.1,
    lampDiameterMetres: 0.06,
    lampDistanceMetres: 2,
    crossSeconds: 1.2,
  },
  person: { kind: 'person', left: 0.7, shadowMetres: 0.45, softMetres: 0.2, metresPerSecond: 1.2 },
  card: {
    kind: 'card',
    left: 0.03,
    slots: 6,
    slotMetres: 0.02,
    gapMetres: 0.02,
    metresPerSecond: 0.06,
    apertureMetres: 0.005,
  },
  lantern: {
    kind: 'lantern',
    left: 0.05,
    slots: 5,
    slotDegrees: 30,
    rpm: 12,
    drumMetres: 0.06,
    sensorMetres: 0.2,
    filamentMetres: 0.004,
    apertureMetres: 0.005,
    apartDegrees: 100,
  },
  lid: { kind: 'lid', left: 0.02, openSeconds: 1 },
};

const NOT_READ: SensorLux = { lit: null, shaded: null, dark: null };

/** A sensor nobody has read. */
export const UNREAD_SENSOR = NOT_READ;

/** What a new document says of the room: nothing read yet, a day in spring, a hand over a sensor. */
export const DEFAULT_ROOM: Room = {
  roomType: null,
  readingsAre: 'measured',
  readings: [],
  lamps: [],
  mainsHertz: 50,
  daylight: null,
  opens: 10,
  closes: 18,
  spacingMetres: 0.18,
  tube: null,
  event: ROOM_EVENTS.hand,
  phantoms: [ROOM_EVENTS.person],
  batch: { kits: 1000, seed: 1, spread: 'uniform', resistorTolerance: 0.01, offsetVolts: 0.005 },
  cellReadings: { A: [], B: [] },
};

/** Where daylight starts from when a room gets some: no place, an overcast equinox, 2 % of the sky. */
export const DEFAULT_DAYLIGHT: RoomDaylight = {
  place: null,
  date: '2026-03-20',
  utcOffset: 0,
  sky: 'overcast',
  measured: null,
  factor: { kind: 'typed', share: 0.02 },
};

/** The room a window example stands in. */
export const DEFAULT_WINDOW: Extract<DaylightFactor, { kind: 'window' }> = {
  kind: 'window',
  glassArea: 6,
  transmittance: 0.68,
  maintenance: 0.9,
  skyAngle: 80,
  length: 8,
  width: 7,
  height: 3,
  reflectance: 0.5,
};
