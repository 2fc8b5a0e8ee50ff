/**
 * Opens the workers that long work is sent to. Their addresses are ones this build made, so they may pass the page's
 * trusted-types gate under a policy of their own; the one-file page has no file to open and gets none.
 */
import type { Helper } from './planner.ts';

interface TrustedPolicy {
  createScriptURL(url: string): string;
}

const ours = new Set<string>();
let policy: TrustedPolicy | null | undefined;

/** A policy is made once for a page. Throws what the browser throws. */
function policyHere(): TrustedPolicy | null {
  const types = (
    globalThis as { trustedTypes?: { createPolicy(name: string, rules: TrustedPolicy): TrustedPolicy } }
  ).trustedTypes;
  policy ??=
    types?.createPolicy('lampnote-worker', {
      // Nothing but the workers' own addresses ever comes through here.
      createScriptURL: (asked) => {
        if (!ours.has(asked)) throw new TypeError('Not the address of a worker.');
        return asked;
      },
    }) ?? null;
  return policy;
}

function opened(url: string): Worker {
  ours.add(url);
  return new Worker(policyHere()?.createScriptURL(url) ?? url, {
    type: import.meta.env.DEV ? 'module' : 'classic',
  });
}

/** Gives what opens the planner's worker (null where there is none to be had). Rejects what the browser throws. */
export async function planWorkerOpener(): Promise<() => Helper | null> {
  if (import.meta.env.MODE === 'single') return () => null;
  const { default: url } = await import('../plan/plan.worker.ts?worker&url');
  return () => opened(url) as Helper;
}

/** The worker of the bench; null where there is none to be had. Rejects what the browser throws. */
export async function kitWorker(): Promise<Worker | null> {
  if (import.meta.env.MODE === 'single') return null;
  const { default: url } = await import('../kit/kit.worker.ts?worker&url');
  return opened(url);
}
