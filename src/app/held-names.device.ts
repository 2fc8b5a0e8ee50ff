/** Names that living tabs hold: what lies aside under one belongs to that tab as long as it is there. */

const OURS = 'lampnote.aside.';
/** A page loaded anew may have to wait until the one before it is gone. */
const PATIENCE_MS = 2000;

/** Holds a name as long as this page lives. False when another tab holds it; true, too, where browsers know no locks. */
export function holdName(name: string): Promise<boolean> {
  return new Promise((resolve) => {
    const locks = (navigator as Partial<Navigator>).locks;
    if (!locks) return resolve(true);
    const hold = () => {
      resolve(true);
      return new Promise<never>(() => {});
    };
    locks
      .request(OURS + name, { signal: AbortSignal.timeout(PATIENCE_MS) }, hold)
      .catch((error: DOMException) => resolve(error.name !== 'TimeoutError'));
  });
}

/** The names held by any tab, this one too. */
export async function heldNames(): Promise<ReadonlySet<string>> {
  const locks = (navigator as Partial<Navigator>).locks;
  const { held = [] } = (await locks?.query().catch(() => null)) ?? {};
  return new Set(
    held
      .map(({ name = '' }) => name)
      .filter((name) => name.startsWith(OURS))
      .map((name) => name.slice(OURS.length)),
  );
}
