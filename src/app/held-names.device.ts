/** Names that living tabs hold: what lies aside under one belongs to that tab as long as it is there. */
import type { Seconds } from '../quantity/units.ts';
import { ASIDE_KEY } from './storage.device.ts';

/** A page loaded anew may have to wait until the one before it is gone. */
const PATIENCE: Seconds = 2;

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
      .request(ASIDE_KEY + name, { signal: AbortSignal.timeout(PATIENCE * 1000) }, hold)
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
      .filter((name) => name.startsWith(ASIDE_KEY))
      .map((name) => name.slice(ASIDE_KEY.length)),
  );
}
