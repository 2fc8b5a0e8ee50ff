/**
 * Opens the worker that long work is sent to. The address is one this build made, so it may pass the page's
 * trusted-types gate under a policy of its own; the one-file page has no file to open and gets none.
 */
import type { Helper } from './planner.ts';

interface TrustedPolicy {
  createScriptURL(url: string): string;
}

/**
 * Gives what opens a worker (null where there is none to be had). To be asked once: a policy is made once for a page.
 * Rejects what the browser throws.
 */
export async function planWorkerOpener(): Promise<() => Helper | null> {
  if (import.meta.env.MODE === 'single') return () => null;
  const { default: url } = await import('../plan/plan.worker.ts?worker&url');
  const types = (
    globalThis as { trustedTypes?: { createPolicy(name: string, rules: TrustedPolicy): TrustedPolicy } }
  ).trustedTypes;
  const policy = types?.createPolicy('lampnote-worker', {
    // Nothing but the worker's own address ever comes through here.
    createScriptURL: (asked) => {
      if (asked !== url) throw new TypeError('Not the address of the worker.');
      return asked;
    },
  });
  return () =>
    new Worker(policy?.createScriptURL(url) ?? url, {
      type: import.meta.env.DEV ? 'module' : 'classic',
    }) as Helper;
}
