/** What this browser keeps: the design at hand, and how the page was set. Nothing leaves the device. */
import * as v from 'valibot';
import { decodeText, encodeText } from '../design/decode.ts';
import type { Design } from '../design/design.ts';
import { LANGUAGES } from '../words/spoken.ts';
import { DEFAULT_SESSION, type Session, VOLUME } from './session.ts';

const DESIGN_KEY = 'lampnote.design';
const SESSION_KEY = 'lampnote.session';

/** Light is not kept: a new sitting starts on the stage, lit. */
const kept = v.object({
  look: v.picklist(['light', 'dark', 'projector']),
  volumeDb: v.pipe(v.number(), v.minValue(VOLUME.min), v.maxValue(VOLUME.max)),
  exhibition: v.boolean(),
  hosted: v.optional(v.string(), DEFAULT_SESSION.hosted),
  classWord: v.optional(v.string(), DEFAULT_SESSION.classWord),
  presenterKeys: v.optional(v.boolean(), DEFAULT_SESSION.presenterKeys),
  vibrates: v.optional(v.boolean(), DEFAULT_SESSION.vibrates),
  language: v.optional(v.picklist(LANGUAGES), DEFAULT_SESSION.language),
});

/** What of the sitting is kept. */
const KEPT = Object.keys(kept.entries) as readonly (keyof typeof kept.entries)[];

/** False when the browser will not keep it (full, or forbidden). */
export function keepDesign(design: Design): boolean {
  return put(DESIGN_KEY, encodeText(design));
}

/** The design of the last sitting; null when there is none or it no longer reads. */
export function keptDesign(): Design | null {
  const text = get(DESIGN_KEY);
  const decoded = text === null ? null : decodeText(text);
  return decoded?.ok ? decoded.design : null;
}

/** Keeps how the page is set, unless it is as it was kept last. */
export function keepSession(session: Session, last: Session): boolean {
  if (KEPT.every((entry) => session[entry] === last[entry])) return false;
  return put(SESSION_KEY, JSON.stringify(Object.fromEntries(KEPT.map((entry) => [entry, session[entry]]))));
}

export function keptSession(): Session {
  try {
    return { ...DEFAULT_SESSION, ...v.parse(kept, JSON.parse(get(SESSION_KEY) ?? '')) };
  } catch {
    return DEFAULT_SESSION;
  }
}

function put(key: string, value: string): boolean {
  try {
    localStorage.setItem(key, value);
    return true;
  } catch {
    return false;
  }
}

function get(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
