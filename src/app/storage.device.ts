/** What this browser keeps: the design at hand, and how the page was set. Nothing leaves the device. */
import * as v from 'valibot';
import { LANGUAGES } from '../words/spoken.ts';
import { DEFAULT_SESSION, type Session, VOLUME } from './session.ts';

/** All that is kept begins so. */
const OURS = 'lampnote';
const DESIGN_KEY = `${OURS}.design`;
const SESSION_KEY = `${OURS}.session`;
/** Texts laid aside, each under a name of its own behind this. */
export const ASIDE_KEY = `${OURS}.aside.`;
/** In the tab alone: the name of what it laid aside itself. */
const OWN_KEY = `${OURS}.own`;
/** In the tab alone: how far its lessons came. */
const SITTING_KEY = `${OURS}.sitting`;

/** One entry that does not read must not take the others with it: the volume may be lower than the usual one. */
const entry = <T>(schema: v.GenericSchema<T>, usual: T) => v.fallback(v.optional(schema, usual), usual);

/** Light is not kept: a new sitting starts on the stage, lit. */
const kept = v.object({
  look: entry(v.picklist(['light', 'dark', 'projector']), DEFAULT_SESSION.look),
  volumeDb: entry(
    v.pipe(v.number(), v.minValue(VOLUME.min), v.maxValue(VOLUME.max)),
    DEFAULT_SESSION.volumeDb,
  ),
  exhibition: entry(v.boolean(), DEFAULT_SESSION.exhibition),
  hosted: entry(v.string(), DEFAULT_SESSION.hosted),
  classWord: entry(v.string(), DEFAULT_SESSION.classWord),
  presenterKeys: entry(v.boolean(), DEFAULT_SESSION.presenterKeys),
  vibrates: entry(v.boolean(), DEFAULT_SESSION.vibrates),
  language: entry(v.picklist(LANGUAGES), DEFAULT_SESSION.language),
});

/** What of the sitting is kept. */
const KEPT = Object.keys(kept.entries) as readonly (keyof typeof kept.entries)[];

/** The design's text as it is kept now; null when there is none, or the browser does not tell. */
export function keptText(): string | null {
  return get(DESIGN_KEY);
}

/** False when the browser will not keep it (full, or forbidden). */
export function keepText(text: string): boolean {
  return put(DESIGN_KEY, text);
}

/** Takes the kept design away. */
export function dropText(): void {
  drop(DESIGN_KEY);
}

/** Calls back when another tab has changed the kept design. */
export function onKeptElsewhere(listener: () => void): void {
  window.addEventListener('storage', ({ key, newValue }) => {
    if (key === DESIGN_KEY && newValue !== null) listener();
  });
}

/** A text that is kept beside the design. */
export interface LaidAside {
  readonly name: string;
  readonly text: string;
}

/** Everything laid aside in this browser, by any tab, in the order of the names. */
export function laidAside(): readonly LaidAside[] {
  return keysOf(() => localStorage)
    .filter((key) => key.startsWith(ASIDE_KEY))
    .toSorted()
    .flatMap((key) => {
      const text = get(key);
      return text === null ? [] : [{ name: key.slice(ASIDE_KEY.length), text }];
    });
}

/** False when the browser will not keep it. */
export function layAside({ name, text }: LaidAside): boolean {
  return put(ASIDE_KEY + name, text);
}

export function dropAside(name: string): void {
  drop(ASIDE_KEY + name);
}

/** The name under which this tab laid its own design aside, also after a reload; null when it did not. */
export function ownAside(): string | null {
  return attempt(() => sessionStorage.getItem(OWN_KEY)) ?? null;
}

export function setOwnAside(name: string | null): void {
  attempt(() => (name === null ? sessionStorage.removeItem(OWN_KEY) : sessionStorage.setItem(OWN_KEY, name)));
}

/** How far this tab's lessons came; goes with the tab. */
export function keptSitting(): string | null {
  return attempt(() => sessionStorage.getItem(SITTING_KEY)) ?? null;
}

export function keepSitting(text: string): void {
  attempt(() => sessionStorage.setItem(SITTING_KEY, text));
}

/** Keeps how the page is set; null when it is as it was kept last, false when the browser will not keep it. */
export function keepSession(session: Session, last: Session): boolean | null {
  if (KEPT.every((one) => session[one] === last[one])) return null;
  return put(SESSION_KEY, JSON.stringify(Object.fromEntries(KEPT.map((one) => [one, session[one]]))));
}

export function keptSession(): Session {
  return (
    attempt(() => {
      const session = v.parse(kept, JSON.parse(get(SESSION_KEY) ?? ''));
      // A new sitting may be another person's, with headphones on: louder than usual it begins for nobody.
      return { ...DEFAULT_SESSION, ...session, volumeDb: Math.min(session.volumeDb, VOLUME.usual) };
    }) ?? firstSession()
  );
}

/** Before a look was ever chosen, that of the system. */
function firstSession(): Session {
  return matchMedia('(prefers-color-scheme: dark)').matches
    ? { ...DEFAULT_SESSION, look: 'dark' }
    : DEFAULT_SESSION;
}

/** Takes everything of this page out of the browser. False when the browser did not let it. */
export async function forgetAll(): Promise<boolean> {
  const stores = [() => localStorage, () => sessionStorage];
  try {
    for (const store of stores) for (const key of oursOf(store)) store().removeItem(key);
    // Nothing of today's page stands in these; an earlier or later one may have used them.
    for (const { name } of (await indexedDB.databases?.()) ?? [])
      if (name?.startsWith(OURS)) indexedDB.deleteDatabase(name);
    if ('caches' in globalThis)
      for (const name of await caches.keys()) if (name.startsWith(OURS)) await caches.delete(name);
    return stores.every((store) => oursOf(store).length === 0);
  } catch {
    return false;
  }
}

const oursOf = (store: () => Storage): readonly string[] =>
  keysOf(store).filter((key) => key.startsWith(OURS));

const keysOf = (store: () => Storage): readonly string[] => attempt(() => Object.keys(store())) ?? [];

function put(key: string, value: string): boolean {
  const kept = attempt(() => {
    localStorage.setItem(key, value);
    return true;
  });
  return kept ?? false;
}

function get(key: string): string | null {
  return attempt(() => localStorage.getItem(key)) ?? null;
}

function drop(key: string): void {
  attempt(() => localStorage.removeItem(key));
}

/** Undefined where the browser refuses. */
function attempt<T>(access: () => T): T | undefined {
  try {
    return access();
  } catch {
    return undefined;
  }
}
