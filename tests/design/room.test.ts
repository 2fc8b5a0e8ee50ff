/** The room as a document: its rules, and its commands. */
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import {
  DEFAULT_DAYLIGHT,
  DEFAULT_ROOM,
  DEFAULT_WINDOW,
  ROOM_EVENTS,
  type Room,
} from '../../src/design/room.ts';
import {
  addCellReading,
  addLamp,
  addPhantom,
  addReading,
  admitDaylight,
  changeLamp,
  changePhantom,
  chooseEvent,
  chooseRoomType,
  type RoomCommand,
  removeCellReading,
  removeLamp,
  removePhantom,
  removeReading,
  setBatch,
  setDaylight,
  setEvent,
  setReading,
  setReadingHour,
  setRoom,
  shutOutDaylight,
} from '../../src/design/room-commands.ts';
import { ROOM_LIMITS, ROOM_MOST, roomSchema } from '../../src/design/room-schema.ts';
import { MAINS_LAMPS } from '../../src/light/mains-lamp.ts';
import { ROOM_LAMPS } from '../../src/parts/rooms.ts';

const reads = (value: unknown) => v.safeParse(roomSchema, value);
const sensor = { lit: 300, shaded: 30, dark: null };
const reading = { hour: 11, lux: { A: sensor, B: sensor } };

const FULL: Room = [
  setRoom({ opens: 9, closes: 17, tube: { boreRadiusMetres: 0.0025, depthMetres: 0.01 } }),
  addReading(reading),
  addLamp({ lamp: 'led-poor', share: 0.5 }),
  admitDaylight({ ...DEFAULT_DAYLIGHT, place: { latitude: 51.5, longitude: 0 }, factor: DEFAULT_WINDOW }),
  setDaylight({ sky: 'measured', measured: { outdoorLux: 9000, hour: 12 } }),
  ...(['person', 'card', 'lantern', 'lid'] as const).map((kind) => addPhantom(ROOM_EVENTS[kind])),
  setBatch({ spread: 'two-sigma' }),
  addCellReading('A', { kind: 'ohms', lux: 10, ohms: 12_000 }),
  addCellReading('B', { kind: 'volts', lux: 100, volts: 2.5 }),
].reduce<Room>((room, command) => command(room), DEFAULT_ROOM);

describe('the rules of a room', () => {
  test('a room written and read again is the same', () => {
    for (const room of [DEFAULT_ROOM, FULL]) {
      const result = reads(JSON.parse(JSON.stringify(room)));
      expect(result.success && result.output).toEqual(room);
    }
  });

  test.each<[string, object]>([
    ['a date that is none', { daylight: { ...DEFAULT_DAYLIGHT, date: '2026-02-30' } }],
    ['a place beyond the pole', { daylight: { ...DEFAULT_DAYLIGHT, place: { latitude: 91, longitude: 0 } } }],
    ['light below nothing', { readings: [{ ...reading, lux: { A: { ...sensor, lit: -1 }, B: sensor } }] }],
    ['a lamp nobody knows', { lamps: [{ lamp: 'torch', share: 1 }] }],
    ['an event nobody knows', { event: { kind: 'cat' } }],
    ['too many readings', { readings: Array.from({ length: ROOM_MOST.readings + 1 }, () => reading) }],
    ['an entry too many', { colour: 'red' }],
    ['mains of another country', { mainsHertz: 40 }],
  ])('%s is refused', (_title, change) => {
    expect(reads({ ...DEFAULT_ROOM, ...change }).success).toBe(false);
  });

  test('values at a limit are taken, values beyond it are not', () => {
    const { min, max } = ROOM_LIMITS.spacingMetres;
    for (const spacingMetres of [min, max])
      expect(reads({ ...DEFAULT_ROOM, spacingMetres }).success).toBe(true);
    for (const spacingMetres of [min - 1e-6, max + 1e-6])
      expect(reads({ ...DEFAULT_ROOM, spacingMetres }).success).toBe(false);
  });

  test('the lamps of a room are those whose ripple is known', () => {
    expect([...ROOM_LAMPS].sort()).toEqual(Object.keys(MAINS_LAMPS).sort());
  });
});

describe('commands', () => {
  const changes: readonly (readonly [string, RoomCommand])[] = [
    ['hours', setRoom({ opens: 8 })],
    ['a reading', addReading({ ...reading, hour: 9 })],
    ['a level', setReading(0, 'B', 'shaded', 25)],
    ['an hour', setReadingHour(0, 12)],
    ['no reading', removeReading(0)],
    ['a lamp', addLamp({ lamp: 'halogen', share: 0.5 })],
    ['its share', changeLamp(0, { share: 0.2 })],
    ['no lamp', removeLamp(0)],
    ['no daylight', shutOutDaylight],
    ['another sky', setDaylight({ sky: 'clear' })],
    ['another event', chooseEvent('lantern')],
    ['the event itself', setEvent<Extract<Room['event'], { kind: 'hand' }>>('hand', { heightMetres: 0.1 })],
    ['a phantom', changePhantom(0, { left: 0.5 })],
    ['no phantom', removePhantom(0)],
    ['the batch', setBatch({ kits: 30 })],
    ['a cell reading', addCellReading('A', { kind: 'ohms', lux: 100, ohms: 2500 })],
    ['no cell reading', removeCellReading('B', 0)],
  ];

  test.each(changes)('%s changes the room, and it still reads', (_title, command) => {
    const changed = command(FULL);
    expect(changed).not.toBe(FULL);
    expect(changed).not.toEqual(FULL);
    expect(reads(changed).success).toBe(true);
  });

  test.each<[string, RoomCommand]>([
    ['the same hours', setRoom({ opens: 9 })],
    ['the same level', setReading(0, 'A', 'lit', 300)],
    ['a reading that is not there', setReading(7, 'A', 'lit', 1)],
    ['taking out what is not there', removeReading(9)],
    ['the same event', chooseEvent('hand')],
    ['values of another event', setEvent<Extract<Room['event'], { kind: 'lid' }>>('lid', { left: 0.5 })],
    ['daylight that is there', admitDaylight()],
    ['the same sky', setDaylight({ sky: 'measured' })],
    ['the same hour', setReadingHour(0, 11)],
  ])('%s leaves the same room', (_title, command) => {
    expect(command(FULL)).toBe(FULL);
  });

  test('readings stay in order of the hour, and a full list takes no more', () => {
    const room = addReading({ ...reading, hour: 8 })(FULL);
    expect(room.readings.map(({ hour }) => hour)).toEqual([8, 11]);
    const full = { ...FULL, readings: Array.from({ length: ROOM_MOST.readings }, () => reading) };
    expect(addReading(reading)(full)).toBe(full);
  });

  test('a kind of room gives its typical light where nothing was read', () => {
    const { readings, roomType } = chooseRoomType('corridor')(DEFAULT_ROOM);
    expect(roomType).toBe('corridor');
    expect(readings[0]!.lux.A.lit).toBe(100);
    expect(chooseRoomType('corridor')(FULL).readings).toBe(FULL.readings);
  });
});
