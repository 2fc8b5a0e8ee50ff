/**
 * Every change a person can make to the room, as pure functions `(room, …) → room`. A change that changes nothing
 * returns the same object. Values arrive already parsed and within `ROOM_LIMITS`.
 */
import { ROOM_TYPES, type RoomTypeId } from '../parts/rooms.ts';
import type { VoiceId } from '../quantity/units.ts';
import type { Command } from './commands.ts';
import { withEntries } from './entries.ts';
import {
  type CellReading,
  DEFAULT_DAYLIGHT,
  ROOM_EVENTS,
  type Room,
  type RoomBatch,
  type RoomDaylight,
  type RoomEvent,
  type RoomEventKind,
  type RoomLamp,
  type RoomReading,
  type SensorLux,
  UNREAD_SENSOR,
} from './room.ts';
import { ROOM_MOST } from './room-schema.ts';

export type RoomCommand = (room: Room) => Room;

/** A change of the room as a change of the design. */
export const inRoom =
  (command: RoomCommand): Command =>
  (design) =>
    withEntries(design, { room: command(design.room) });

function withItem<T extends object>(list: readonly T[], index: number, change: Partial<NoInfer<T>>) {
  const old = list[index];
  if (old === undefined) return list;
  const item = withEntries(old, change);
  return item === old ? list : list.with(index, item);
}

const without = <T>(list: readonly T[], index: number): readonly T[] =>
  index in list ? list.toSpliced(index, 1) : list;
const withMore = <T>(list: readonly T[], item: T, most: number): readonly T[] =>
  list.length < most ? [...list, item] : list;

type Plain = Pick<
  Room,
  'readingsAre' | 'mainsHertz' | 'opens' | 'closes' | 'spacingMetres' | 'tube' | 'roomType'
>;
/** Sets plain values of the room. */
export const setRoom =
  (change: Partial<Plain>): RoomCommand =>
  (room) =>
    withEntries(room, change);

/** A kind of room; where no light was read yet its typical level stands as the first reading, at the opening hour. */
export const chooseRoomType =
  (roomType: RoomTypeId | null): RoomCommand =>
  (room) => {
    if (roomType === null || room.readings.length > 0) return withEntries(room, { roomType });
    const sensor = { ...UNREAD_SENSOR, lit: ROOM_TYPES[roomType].lux };
    return { ...room, roomType, readings: [{ hour: room.opens, lux: { A: sensor, B: sensor } }] };
  };

/** One more row of readings, kept in order of the hour. */
export const addReading =
  (reading: RoomReading): RoomCommand =>
  (room) =>
    withEntries(room, { readings: sorted(withMore(room.readings, reading, ROOM_MOST.readings)) });
export const removeReading =
  (index: number): RoomCommand =>
  (room) =>
    withEntries(room, { readings: without(room.readings, index) });
export const setReadingHour =
  (index: number, hour: number): RoomCommand =>
  (room) =>
    withEntries(room, { readings: sorted(withItem(room.readings, index, { hour })) });
/** A level a sensor was read at; null takes it out. */
export const setReading =
  (index: number, voice: VoiceId, level: keyof SensorLux, lux: number | null): RoomCommand =>
  (room) => {
    const old = room.readings[index];
    if (old === undefined) return room;
    const sensors = withEntries(old.lux, { [voice]: withEntries(old.lux[voice], { [level]: lux }) });
    return withEntries(room, { readings: withItem(room.readings, index, { lux: sensors }) });
  };

/** Other readings in place of all there were, as many as are kept. */
export const replaceReadings =
  (readings: readonly RoomReading[]): RoomCommand =>
  (room) =>
    withEntries(room, { readings: sorted(readings.slice(0, ROOM_MOST.readings)) });

export const addLamp =
  (lamp: RoomLamp): RoomCommand =>
  (room) =>
    withEntries(room, { lamps: withMore(room.lamps, lamp, ROOM_MOST.lamps) });
export const changeLamp =
  (index: number, change: Partial<RoomLamp>): RoomCommand =>
  (room) =>
    withEntries(room, { lamps: withItem(room.lamps, index, change) });
export const removeLamp =
  (index: number): RoomCommand =>
  (room) =>
    withEntries(room, { lamps: without(room.lamps, index) });

/** Daylight comes in, as given or as a start. */
export const admitDaylight =
  (daylight: RoomDaylight = DEFAULT_DAYLIGHT): RoomCommand =>
  (room) =>
    withEntries(room, { daylight: room.daylight ?? daylight });
export const shutOutDaylight: RoomCommand = (room) => withEntries(room, { daylight: null });
export const setDaylight =
  (change: Partial<RoomDaylight>): RoomCommand =>
  (room) =>
    room.daylight === null ? room : withEntries(room, { daylight: withEntries(room.daylight, change) });

/** An event of another kind starts from that kind's usual values. */
export const chooseEvent =
  (kind: RoomEventKind): RoomCommand =>
  (room) =>
    room.event.kind === kind ? room : { ...room, event: ROOM_EVENTS[kind] };
/** Changes the event's own values; those of another kind are left alone. */
export const setEvent =
  <E extends RoomEvent>(kind: E['kind'], change: Partial<Omit<E, 'kind'>>): RoomCommand =>
  (room) =>
    room.event.kind === kind
      ? withEntries(room, { event: withEntries<RoomEvent>(room.event, change as Partial<RoomEvent>) })
      : room;

export const addPhantom =
  (event: RoomEvent): RoomCommand =>
  (room) =>
    withEntries(room, { phantoms: withMore(room.phantoms, event, ROOM_MOST.phantoms) });
export const changePhantom =
  (index: number, change: Partial<RoomEvent>): RoomCommand =>
  (room) =>
    withEntries(room, { phantoms: withItem<RoomEvent>(room.phantoms, index, change) });
/** Another event, of any kind, in a phantom's place. */
export const replacePhantom =
  (index: number, event: RoomEvent): RoomCommand =>
  (room) =>
    room.phantoms[index] === undefined ? room : { ...room, phantoms: room.phantoms.with(index, event) };
export const removePhantom =
  (index: number): RoomCommand =>
  (room) =>
    withEntries(room, { phantoms: without(room.phantoms, index) });

export const setBatch =
  (change: Partial<RoomBatch>): RoomCommand =>
  (room) =>
    withEntries(room, { batch: withEntries(room.batch, change) });

export const addCellReading =
  (voice: VoiceId, reading: CellReading): RoomCommand =>
  (room) =>
    inCells(room, voice, withMore(room.cellReadings[voice], reading, ROOM_MOST.cellReadings));
export const removeCellReading =
  (voice: VoiceId, index: number): RoomCommand =>
  (room) =>
    inCells(room, voice, without(room.cellReadings[voice], index));

function inCells(room: Room, voice: VoiceId, readings: readonly CellReading[]): Room {
  return withEntries(room, { cellReadings: withEntries(room.cellReadings, { [voice]: readings }) });
}

function sorted(readings: readonly RoomReading[]): readonly RoomReading[] {
  const isSorted = readings.every((reading, i) => i === 0 || readings[i - 1]!.hour <= reading.hour);
  return isSorted ? readings : readings.toSorted((a, b) => a.hour - b.hour);
}
