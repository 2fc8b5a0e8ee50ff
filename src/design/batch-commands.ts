/**
 * Every change a person can make to the batch, as pure functions `(batch, …) → batch`. A change that changes nothing
 * returns the same object. Values arrive already parsed and within `BATCH_LIMITS`; what a full list has no place for is not
 * taken in.
 */
import type { Fraction } from '../quantity/units.ts';
import type { LossKind } from '../words/order.ts';
import { BATCH_MOST, type Batch, type BoardWishes, type KitEntry, type LineNote } from './batch.ts';
import type { Command } from './commands.ts';
import { equalValues, withEntries } from './entries.ts';
import { type MinutesTable, STEP_ORDER, type StepId, type Workshop } from './workshop.ts';

type BatchCommand = (batch: Batch) => Batch;

/** A change of the batch as a change of the design. */
export const inBatch =
  (command: BatchCommand): Command =>
  (design) =>
    withEntries(design, { batch: command(design.batch) });

export const setBatch =
  (change: Partial<Pick<Batch, 'kits' | 'region'>>): BatchCommand =>
  (batch) =>
    withEntries(batch, change);

/** The share of one kind of part that is lost. */
export const setLoss =
  (kind: LossKind, share: Fraction): BatchCommand =>
  (batch) =>
    withEntries(batch, { losses: withEntries(batch.losses, { [kind]: share }) });

/** All rates at once, as the log teaches them. */
export const setLosses =
  (losses: Batch['losses']): BatchCommand =>
  (batch) =>
    equalValues(losses, batch.losses) ? batch : { ...batch, losses };

/** What a line says that nobody has written anything about. */
const PLAIN_LINE: Omit<LineNote, 'key'> = { stock: 0, packSize: 1, packPrice: null };

/** What is known of one line; a line that says nothing again is not kept. */
export const noteLine =
  (key: string, change: Partial<Omit<LineNote, 'key'>>): BatchCommand =>
  (batch) => {
    const old = batch.lines.find((line) => line.key === key);
    const line = { ...PLAIN_LINE, ...old, ...change, key };
    if (equalValues(line, old ?? { ...PLAIN_LINE, key })) return batch;
    const others = batch.lines.filter((one) => one !== old);
    return withList(batch, 'lines', equalValues(line, { ...PLAIN_LINE, key }) ? others : [...others, line]);
  };

/** A list longer than a batch keeps changes nothing. */
const withList = <K extends 'lines' | 'log'>(batch: Batch, key: K, list: Batch[K]): Batch =>
  list.length > BATCH_MOST[key] ? batch : { ...batch, [key]: list };

/** What is asked of the board: its size, sockets. */
export const wishBoard =
  (change: Partial<Omit<BoardWishes, 'free'>>): BatchCommand =>
  (batch) => {
    const size =
      change.size === undefined || equalValues(change.size, batch.board.size) ? {} : { size: change.size };
    return withEntries(batch, {
      board: withEntries(batch.board, { ...change, size: batch.board.size, ...size }),
    });
  };

/** How the workshop goes: helpers, bad joints, mending. */
export const setWorkshop =
  (change: Partial<Pick<Workshop, 'helpers' | 'badJoint' | 'repairMinutes'>>): BatchCommand =>
  (batch) =>
    withEntries(batch, { workshop: withEntries(batch.workshop, change) });

/** How long one kind of work takes there. */
export const setMinutes =
  (row: keyof MinutesTable, minutes: number): BatchCommand =>
  (batch) => {
    const { workshop } = batch;
    const table = withEntries(workshop.minutes, { [row]: minutes });
    return withEntries(batch, { workshop: withEntries(workshop, { minutes: table }) });
  };

/** A step is done beforehand, or in the room. */
export const prepareStep =
  (step: StepId, isPrepared: boolean): BatchCommand =>
  (batch) => {
    const { workshop } = batch;
    if (workshop.prepared.includes(step) === isPrepared) return batch;
    const prepared = STEP_ORDER.filter((id) => (id === step ? isPrepared : workshop.prepared.includes(id)));
    return withEntries(batch, { workshop: withEntries(workshop, { prepared }) });
  };

/** Keeps a hole free, or lets it be used again. */
export const keepFree =
  (hole: { readonly strip: number; readonly hole: number }, isFree: boolean): BatchCommand =>
  (batch) => {
    const { free } = batch.board;
    const others = free.filter((one) => !equalValues(one, hole));
    if (others.length < free.length === isFree) return batch;
    if (isFree && free.length >= BATCH_MOST.free) return batch;
    return { ...batch, board: { ...batch.board, free: isFree ? [...free, hole] : others } };
  };

/** A kit nobody has written anything about. */
const blankKit = (kit: number): KitEntry => ({
  kit,
  readings: [],
  fault: null,
  minutes: null,
  lost: [],
});

/** What the log has of a kit. */
export const kitEntry = ({ log }: Batch, kit: number): KitEntry =>
  log.find((one) => one.kit === kit) ?? blankKit(kit);

/** Changes a kit's entry in the log, kept in order of the kits' numbers; one that says nothing again goes. */
export const writeKit =
  (kit: number, change: Partial<Omit<KitEntry, 'kit'>>): BatchCommand =>
  (batch) => {
    const old = kitEntry(batch, kit);
    const entry = { ...old, ...change };
    if (equalValues(entry, old)) return batch;
    const others = batch.log.filter((one) => one.kit !== kit);
    const log = equalValues(entry, blankKit(kit)) ? others : [...others, entry];
    return withList(
      batch,
      'log',
      log.toSorted((a, b) => a.kit - b.kit),
    );
  };

/** A reading at a test point of a kit; null takes it away. */
export const writeReading =
  (kit: number, point: string, value: number | null): BatchCommand =>
  (batch) => {
    const { readings } = kitEntry(batch, kit);
    const others = readings.filter((one) => one.point !== point);
    return writeKit(kit, { readings: value === null ? others : [...others, { point, value }] })(batch);
  };

/** A whole log, as read from a file, in place of the present one. */
export const takeLog =
  (log: Batch['log']): BatchCommand =>
  (batch) =>
    equalValues(log, batch.log) ? batch : { ...batch, log };
