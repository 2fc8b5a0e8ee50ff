/**
 * From anything to a design, or to complaints that say where (a dotted path), what was read, and what would
 * have been accepted. Nothing is repaired silently: a file is taken whole or not at all.
 */
import * as v from 'valibot';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { CELLS } from '../parts/cells.ts';
import { COMPARATORS } from '../parts/comparators.ts';
import { SUPPLIES } from '../parts/supplies.ts';
import { TIMERS } from '../parts/timers.ts';
import { TRIMMERS } from '../parts/trimmers.ts';
import { excerpt } from '../words/excerpt.ts';
import { batchSchema } from './batch.ts';
import { type Design, FORMAT, VERSION } from './design.ts';
import { LIMITS, NAME_LENGTH, NOTES_LENGTH } from './limits.ts';
import { pitchSchema } from './pitch.ts';
import { roomSchema } from './room-schema.ts';
import {
  type Accepts,
  entries,
  excerptOf,
  keysOf,
  oneOf,
  pair,
  says,
  text,
  wholeMessage,
  wholeNumber,
  within,
  yesNo,
} from './schema.ts';
import { upgraded } from './versions.ts';

export type Complaint =
  | { readonly kind: 'too large'; readonly most: number }
  | { readonly kind: 'not JSON' }
  | { readonly kind: 'not a design' }
  | { readonly kind: 'later version'; readonly version: number }
  | { readonly kind: 'value'; readonly path: string; readonly read: string; readonly accepts: Accepts };

export type Decoded =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly complaints: readonly Complaint[] };

/**
 * A design file is some kilobytes, with a bench log of five hundred kits (forty readings each) 3 MB; anything far above
 * is something else.
 */
export const MOST_LETTERS = 4_000_000;

/** Complaints shown at once. */
const MOST_COMPLAINTS = 8;
/** Longer than every path of a design. */
const LONGEST_PATH = 80;

const trimmer = entries({
  part: keysOf(TRIMMERS),
  ohms: within(LIMITS.trimmerOhms),
  tolerance: within(LIMITS.tolerance),
  rotation: within(LIMITS.fraction),
});

const voice = entries({
  raOhms: within(LIMITS.raOhms),
  rbFixedOhms: within(LIMITS.rbFixedOhms),
  trimmer,
  capacitor: entries({
    farads: within(LIMITS.timingFarads),
    dielectric: keysOf(DIELECTRICS),
    tolerance: within(LIMITS.tolerance),
  }),
  controlVolts: v.nullable(within(LIMITS.controlVolts)),
  cell: entries({ family: keysOf(CELLS), r10Ohms: within(LIMITS.cellOhms), gamma: within(LIMITS.gamma) }),
  cellKept: oneOf(['light', 'dark']),
  divider: entries({ cell: oneOf(['top', 'bottom']), fixedOhms: within(LIMITS.dividerOhms) }),
  polarity: oneOf(['light', 'shade']),
  hysteresisOhms: v.nullable(within(LIMITS.hysteresisOhms)),
  inputOhms: within(LIMITS.inputOhms),
  pullUpOhms: within(LIMITS.pullUpOhms),
});

/** What a design file holds, entry by entry, each with what it accepts. */
export const designSchema = entries({
  format: v.literal(FORMAT, says({ kind: 'choice', options: [FORMAT] })),
  version: v.literal(VERSION, wholeMessage),
  name: text(NAME_LENGTH),
  notes: text(NOTES_LENGTH),
  timer: keysOf(TIMERS),
  comparator: keysOf(COMPARATORS),
  supply: entries({
    kind: keysOf(SUPPLIES),
    volts: within(LIMITS.supplyVolts),
    sourceOhms: within(LIMITS.sourceOhms),
    diode: yesNo,
    decoupled: yesNo,
    sharedDipVolts: within(LIMITS.dipVolts),
  }),
  voices: pair(voice),
  threshold: entries({
    arrangement: oneOf(['shared', 'each']),
    trimmers: pair(
      entries({
        topOhms: within(LIMITS.endResistorOhms),
        trimmer,
        bottomOhms: within(LIMITS.endResistorOhms),
      }),
    ),
  }),
  output: entries({
    mixOhms: v.nullable(pair(within(LIMITS.mixOhms))),
    shuntOhms: v.nullable(within(LIMITS.shuntOhms)),
    volume: v.nullable(entries({ ohms: within(LIMITS.trimmerOhms), rotation: within(LIMITS.fraction) })),
    coupling: v.nullable(
      entries({ farads: within(LIMITS.couplingFarads), kind: oneOf(['film', 'ceramic', 'electrolytic']) }),
    ),
    loadOhms: within(LIMITS.loadOhms),
  }),
  noise: entries({ voltsRms: within(LIMITS.noiseVolts), seed: wholeNumber }),
  pitch: pitchSchema,
  room: roomSchema,
  batch: batchSchema,
});

/** Reads a design from a file's text. */
export function decodeText(fileText: string): Decoded {
  if (fileText.length > MOST_LETTERS) return refused({ kind: 'too large', most: MOST_LETTERS });
  let value: unknown;
  try {
    value = JSON.parse(fileText);
  } catch {
    return refused({ kind: 'not JSON' });
  }
  return decode(value);
}

/** Reads a design from any value. */
export function decode(value: unknown): Decoded {
  if (typeof value !== 'object' || value === null || (value as { format?: unknown }).format !== FORMAT)
    return refused({ kind: 'not a design' });
  const current = upgraded(value as Record<string, unknown>);
  if (!current.ok) return refused({ kind: 'later version', version: current.version });
  const result = v.safeParse(designSchema, current.document);
  if (result.success) return { ok: true, design: result.output };
  return { ok: false, complaints: result.issues.slice(0, MOST_COMPLAINTS).map(complaintOf) };
}

/** A design as the text of its file. */
export function encodeText(value: Design): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

function refused(complaint: Complaint): Decoded {
  return { ok: false, complaints: [complaint] };
}

function complaintOf(issue: v.BaseIssue<unknown>): Complaint {
  const ofGroup = issue.type === 'strict_object';
  return {
    kind: 'value',
    path: excerpt(v.getDotPath(issue) ?? '', LONGEST_PATH),
    read: excerptOf(issue.input),
    accepts:
      ofGroup && issue.expected === 'never'
        ? { kind: 'no such entry' }
        : acceptsFrom(ofGroup && issue.input === undefined ? messageAt(issue) : issue.message),
  };
}

function acceptsFrom(message: string): Accepts {
  return JSON.parse(message) as Accepts;
}

/** A missing entry is told by the group it is missing from; what it would take is said by the entry itself. */
function messageAt(issue: v.BaseIssue<unknown>): string {
  let schema = unwrapped(designSchema);
  for (const { key } of issue.path ?? []) schema = unwrapped(schema.entries?.[String(key)] ?? schema.item);
  return schema.message ?? issue.message;
}

interface Inspected {
  readonly entries?: Readonly<Record<string, unknown>>;
  readonly wrapped?: unknown;
  /** What each place of a list holds. */
  readonly item?: unknown;
  readonly message?: string;
}

function unwrapped(schema: unknown): Inspected {
  const inspected = (schema ?? {}) as Inspected;
  return inspected.wrapped === undefined ? inspected : unwrapped(inspected.wrapped);
}
