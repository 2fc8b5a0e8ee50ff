/**
 * Older design files brought forward, one version at a time. Whatever cannot be brought forward is handed on as it
 * is: the decoder then says that it does not know that version.
 */
import { DEFAULT_BATCH } from './batch.ts';
import { VERSION } from './design.ts';
import { DEFAULT_PITCH } from './pitch.ts';
import { DEFAULT_ROOM } from './room.ts';

type Document = Readonly<Record<string, unknown>>;

/** Takes the entries of version n, gives those of version n + 1; the number itself is counted on here. */
export type Upgrade = (document: Document) => Document;

/** The key is the version that is brought forward. */
type Upgrades = Readonly<Record<number, Upgrade>>;

const UPGRADES: Upgrades = {
  // The first version knew nothing of parts for notes, of rooms, of kits, or of where a cell was kept.
  1: (document) => ({
    pitch: DEFAULT_PITCH,
    room: DEFAULT_ROOM,
    batch: DEFAULT_BATCH,
    ...document,
    voices: voicesKeptInLight(document['voices']),
  }),
  // The second did not ask how resistors are to lie.
  2: (document) => ({ ...document, batch: batchWithResistors(document['batch']) }),
  // The third kept nothing of the workshop.
  3: (document) => ({ ...document, batch: batchWithWorkshop(document['batch']) }),
};

/** A batch whose board leaves the resistors as they fit, as every plan before did; anything else as it is. */
function batchWithResistors(batch: unknown): unknown {
  if (!isGroup(batch) || !isGroup(batch['board'])) return batch;
  const { resistors } = DEFAULT_BATCH.board;
  return { ...batch, board: { resistors, ...batch['board'] } };
}

/** A batch built in the usual workshop, as every one before was thought to be; anything else as it is. */
function batchWithWorkshop(batch: unknown): unknown {
  return isGroup(batch) ? { workshop: DEFAULT_BATCH.workshop, ...batch } : batch;
}

/** Both voices with their cells kept in the light, as every design before told of them; anything else as it is. */
function voicesKeptInLight(voices: unknown): unknown {
  if (!isGroup(voices)) return voices;
  return Object.fromEntries(
    Object.entries(voices).map(([id, voice]) => [
      id,
      isGroup(voice) ? { cellKept: 'light', ...voice } : voice,
    ]),
  );
}

function isGroup(value: unknown): value is Document {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export type Upgraded =
  | { readonly ok: true; readonly document: Document }
  /** Written by a later Lampnote than this one. */
  | { readonly ok: false; readonly version: number };

/**
 * Brings a document to the present version. A version that is no whole number from 1 on, one from which no whole
 * chain of upgrades leads here, and one whose entries are not those it claims are left for the decoder to refuse.
 */
export function upgraded(
  document: Document,
  upgrades: Upgrades = UPGRADES,
  present: number = VERSION,
): Upgraded {
  const written = document['version'];
  if (typeof written !== 'number' || !Number.isInteger(written) || written < 1) return { ok: true, document };
  if (written > present) return { ok: false, version: written };
  let current = document;
  for (let version = written; version < present; version++) {
    const upgrade = Object.hasOwn(upgrades, version) ? upgrades[version] : undefined;
    if (!upgrade) return { ok: true, document };
    try {
      current = { ...upgrade(current), version: version + 1 };
    } catch {
      // A file can claim any version and hold anything.
      return { ok: true, document };
    }
  }
  return { ok: true, document: current };
}
