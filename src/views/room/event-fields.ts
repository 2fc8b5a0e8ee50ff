/** The values of an event as fields, the same for what should gate and for what must not. */
import type { TemplateResult } from 'lit';
import type { Command } from '../../design/commands.ts';
import type { RoomEvent } from '../../design/room.ts';
import { ROOM_LIMITS } from '../../design/room-schema.ts';
import { describeWords } from '../../words/en-room.ts';
import type { ReadText } from '../controls/events.ts';
import type { Fields } from '../fields.ts';
import {
  degreesField,
  degreesReader,
  lengthReader,
  metresField,
  numberReader,
  paceField,
  paceReader,
  plainField,
  secondsField,
  secondsReader,
  shareField,
  shareReader,
  wholeReader,
} from './readers.ts';

export type EventValue = keyof typeof describeWords.event.values;

interface FieldOf {
  readonly read: ReadText;
  readonly text: (value: number | null) => string;
}

const L = ROOM_LIMITS;
const length = (limits: { min: number; max: number }): FieldOf => ({
  read: lengthReader(limits),
  text: metresField,
});
const share: FieldOf = { read: shareReader(L.share), text: shareField };
const seconds: FieldOf = { read: secondsReader(L.seconds), text: secondsField };

const FIELD: Readonly<Record<EventValue, FieldOf>> = {
  heightMetres: length(L.heightMetres),
  roundShare: share,
  lampDiameterMetres: length(L.lampDiameterMetres),
  lampDistanceMetres: length(L.lampDistanceMetres),
  crossSeconds: seconds,
  left: share,
  shadowMetres: length(L.shadowMetres),
  softMetres: length(L.softMetres),
  metresPerSecond: { read: paceReader(L.pace), text: paceField },
  slots: { read: wholeReader(L.slots), text: plainField },
  slotMetres: length(L.slotMetres),
  gapMetres: length(L.slotMetres),
  apertureMetres: length(L.apertureMetres),
  slotDegrees: { read: degreesReader(L.slotDegrees), text: degreesField },
  rpm: { read: numberReader(L.rpm), text: plainField },
  drumMetres: length(L.drumMetres),
  sensorMetres: length(L.sensorMetres),
  filamentMetres: length(L.filamentMetres),
  apartDegrees: { read: degreesReader(L.apartDegrees), text: degreesField },
  openSeconds: seconds,
};

export function eventFields(
  fields: Fields,
  event: RoomEvent,
  command: (change: Partial<Record<EventValue, number>>) => Command,
): readonly TemplateResult[] {
  const values = Object.entries(event).filter(([key]) => key !== 'kind') as [EventValue, number][];
  return values.map(([key, value]) =>
    fields.quantity({
      label: describeWords.event.values[key],
      value,
      ...FIELD[key],
      command: (next) => command({ [key]: next }),
    }),
  );
}
