/** Older design files brought forward, one version at a time. */
import { VERSION } from './design.ts';

/** Takes a document of version n, gives one of version n + 1. The key is n. */
type Upgrade = (document: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

const UPGRADES: Readonly<Record<number, Upgrade>> = {};

export type Upgraded =
  | { readonly ok: true; readonly document: Readonly<Record<string, unknown>> }
  /** Written by a later Lampnote than this one. */
  | { readonly ok: false; readonly version: number };

/** Brings a document to the present version. A version that is no whole number from 1 on is left to the decoder. */
export function upgraded(document: Readonly<Record<string, unknown>>): Upgraded {
  let current = document;
  let version = current['version'];
  if (typeof version === 'number' && Number.isInteger(version) && version > VERSION)
    return { ok: false, version };
  while (typeof version === 'number' && UPGRADES[version]) {
    current = UPGRADES[version]!(current);
    version = current['version'];
  }
  return { ok: true, document: current };
}
