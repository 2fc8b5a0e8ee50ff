/** The rules a room is read by, and what each of its values may be. Taken whole or not at all, as a design is. */
import * as v from 'valibot';
import { ROOM_LAMPS, ROOM_TYPES } from '../parts/rooms.ts';
import type { Limits } from '../quantity/parse.ts';
import type { Room } from './room.ts';
import { calendarDate, entries, keysOf, listOf, oneOf, pair, says, wholeNumber, within } from './schema.ts';

export const ROOM_LIMITS = {
  lux: { min: 0, max: 130_000 },
  hour: { min: 0, max: 24 },
  share: { min: 0, max: 1 },
  latitude: { min: -90, max: 90 },
  longitude: { min: -180, max: 180 },
  utcOffset: { min: -12, max: 14 },
  glassArea: { min: 0.01, max: 1000 },
  skyAngle: { min: 1, max: 90 },
  roomMetres: { min: 0.5, max: 200 },
  reflectance: { min: 0, max: 0.95 },
  spacingMetres: { min: 0, max: 10 },
  boreMetres: { min: 0.001, max: 0.05 },
  depthMetres: { min: 0.001, max: 0.3 },
  heightMetres: { min: 0.005, max: 2 },
  lampDiameterMetres: { min: 0.001, max: 3 },
  lampDistanceMetres: { min: 0.1, max: 20 },
  seconds: { min: 0.05, max: 600 },
  shadowMetres: { min: 0.05, max: 3 },
  softMetres: { min: 0.005, max: 3 },
  pace: { min: 0.005, max: 5 },
  slots: { min: 1, max: 64 },
  slotMetres: { min: 0.001, max: 0.2 },
  apertureMetres: { min: 0.001, max: 0.02 },
  slotDegrees: { min: 1, max: 180 },
  rpm: { min: 0.5, max: 60 },
  drumMetres: { min: 0.03, max: 0.3 },
  sensorMetres: { min: 0.04, max: 2 },
  filamentMetres: { min: 0.0005, max: 0.02 },
  apartDegrees: { min: 0, max: 180 },
  kits: { min: 1, max: 100_000 },
  tolerance: { min: 0, max: 0.3 },
  offsetVolts: { min: 0, max: 0.05 },
  cellOhms: { min: 1, max: 100e6 },
  cellLux: { min: 0.01, max: 130_000 },
  volts: { min: 0, max: 18 },
} as const satisfies Record<string, Limits>;

/** Most of each that a room keeps. */
export const ROOM_MOST = { readings: 48, lamps: 4, phantoms: 6, cellReadings: 24 } as const;

const L = ROOM_LIMITS;
const lux = v.nullable(within(L.lux));
const share = within(L.share);
const kindOf = <const T extends string>(kind: T) =>
  v.literal(kind, says({ kind: 'choice', options: [kind] }));

const kinds = (options: readonly string[]) => says({ kind: 'choice', options });

const event = v.variant(
  'kind',
  [
    entries({
      kind: kindOf('hand'),
      heightMetres: within(L.heightMetres),
      roundShare: share,
      lampDiameterMetres: within(L.lampDiameterMetres),
      lampDistanceMetres: within(L.lampDistanceMetres),
      crossSeconds: within(L.seconds),
    }),
    entries({
      kind: kindOf('person'),
      left: share,
      shadowMetres: within(L.shadowMetres),
      softMetres: within(L.softMetres),
      metresPerSecond: within(L.pace),
    }),
    entries({
      kind: kindOf('card'),
      left: share,
      slots: within(L.slots),
      slotMetres: within(L.slotMetres),
      gapMetres: within(L.slotMetres),
      metresPerSecond: within(L.pace),
      apertureMetres: within(L.apertureMetres),
    }),
    entries({
      kind: kindOf('lantern'),
      left: share,
      slots: within(L.slots),
      slotDegrees: within(L.slotDegrees),
      rpm: within(L.rpm),
      drumMetres: within(L.drumMetres),
      sensorMetres: within(L.sensorMetres),
      filamentMetres: within(L.filamentMetres),
      apertureMetres: within(L.apertureMetres),
      apartDegrees: within(L.apartDegrees),
    }),
    entries({ kind: kindOf('lid'), left: share, openSeconds: within(L.seconds) }),
  ],
  kinds(['hand', 'person', 'card', 'lantern', 'lid']),
);

const factor = v.variant(
  'kind',
  [
    entries({ kind: kindOf('typed'), share }),
    entries({
      kind: kindOf('window'),
      glassArea: within(L.glassArea),
      transmittance: share,
      maintenance: share,
      skyAngle: within(L.skyAngle),
      length: within(L.roomMetres),
      width: within(L.roomMetres),
      height: within(L.roomMetres),
      reflectance: within(L.reflectance),
    }),
  ],
  kinds(['typed', 'window']),
);

const daylight = entries({
  place: v.nullable(entries({ latitude: within(L.latitude), longitude: within(L.longitude) })),
  date: calendarDate,
  utcOffset: within(L.utcOffset),
  sky: oneOf(['clear', 'partly', 'overcast', 'measured']),
  measured: v.nullable(entries({ outdoorLux: within(L.lux), hour: within(L.hour) })),
  factor,
});

const cellReading = v.variant(
  'kind',
  [
    entries({ kind: kindOf('ohms'), lux: within(L.cellLux), ohms: within(L.cellOhms) }),
    entries({ kind: kindOf('volts'), lux: within(L.cellLux), volts: within(L.volts) }),
  ],
  kinds(['ohms', 'volts']),
);

/** For the entry `room` of a design. */
export const roomSchema = entries({
  roomType: v.nullable(keysOf(ROOM_TYPES)),
  readingsAre: oneOf(['measured', 'guessed']),
  readings: listOf(
    entries({ hour: within(L.hour), lux: pair(entries({ lit: lux, shaded: lux, dark: lux })) }),
    ROOM_MOST.readings,
  ),
  lamps: listOf(entries({ lamp: oneOf(ROOM_LAMPS), share }), ROOM_MOST.lamps),
  mainsHertz: v.picklist([50, 60], says({ kind: 'choice', options: ['50', '60'] })),
  daylight: v.nullable(daylight),
  opens: within(L.hour),
  closes: within(L.hour),
  spacingMetres: within(L.spacingMetres),
  tube: v.nullable(entries({ boreRadiusMetres: within(L.boreMetres), depthMetres: within(L.depthMetres) })),
  event,
  phantoms: listOf(event, ROOM_MOST.phantoms),
  batch: entries({
    kits: within(L.kits),
    seed: wholeNumber,
    spread: oneOf(['uniform', 'two-sigma', 'three-sigma']),
    resistorTolerance: within(L.tolerance),
    offsetVolts: within(L.offsetVolts),
  }),
  cellReadings: pair(listOf(cellReading, ROOM_MOST.cellReadings)),
}) satisfies v.GenericSchema<unknown, Room>;
