/** The address pupils' devices can reach this page at, or why there is none. */

export type HandOver =
  | { readonly kind: 'address'; readonly address: string }
  | { readonly kind: 'none'; readonly why: 'one file' | 'this computer only' | 'not secure' };

/** What a typed address must be: https, without a place of its own. Null = it is not. */
export function hostedAddress(text: string): string | null {
  if (!URL.canParse(text.trim())) return null;
  const url = new URL(text.trim());
  return url.protocol === 'https:' ? `${url.origin}${url.pathname}` : null;
}

/**
 * From where the page itself came, and the address typed in the settings ('' = none). Sound and camera need a
 * secure address, so nothing else is handed on.
 */
export function handOver(here: string, hosted: string): HandOver {
  const typed = hostedAddress(hosted);
  if (typed !== null) return { kind: 'address', address: typed };
  const { protocol, hostname } = new URL(here);
  if (protocol === 'file:') return { kind: 'none', why: 'one file' };
  if (hostname === 'localhost' || hostname.endsWith('.localhost') || /^127\.|^\[::1\]$/.test(hostname))
    return { kind: 'none', why: 'this computer only' };
  const own = hostedAddress(here);
  return own === null ? { kind: 'none', why: 'not secure' } : { kind: 'address', address: own };
}
