/**
 * The content policy of the page: as a header where it is served, and written into every built page, so that it holds
 * wherever that is put.
 */
import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

interface Sources {
  readonly script: string;
  readonly style: string;
  readonly font: string;
  readonly image: string;
  readonly worker: string;
  /** Names of the policies through which addresses and markup may pass. */
  readonly trusted: string;
}

const siteSources: Sources = {
  script: "'self'",
  style: "'self'",
  font: "'self'",
  image: "'self' data: blob:",
  // Long searches run in a worker; the one-file page has none and does them itself.
  worker: "'self'",
  trusted: 'lit-html lampnote-worker',
};

/**
 * The policy of a built page: it may show and play what it came with, and connect to nothing. The camera picture
 * reaches its `<video>` as an object, not an address, so no `media-src` is needed.
 * Lit's templates are the one trusted way from text to markup, and one policy lets the worker's address pass.
 */
function builtPolicy({ script, style, font, image, worker, trusted }: Sources): string {
  return [
    "default-src 'none'",
    `script-src ${script}`,
    `style-src ${style}`,
    `font-src ${font}`,
    `img-src ${image}`,
    "connect-src 'none'",
    `worker-src ${worker}`,
    "base-uri 'none'",
    "form-action 'none'",
    "require-trusted-types-for 'script'",
    `trusted-types ${trusted}`,
  ].join('; ');
}

/** While developing, Vite inserts `<style>` elements and keeps a connection of its own; the rest stays shut. */
export function developmentPolicy(): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self' 'unsafe-inline'",
    "font-src 'self'",
    "img-src 'self' data: blob:",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

export function headersWith(policy: string): Record<string, string> {
  return {
    'Content-Security-Policy': policy,
    'Permissions-Policy': 'camera=(self), microphone=(self), geolocation=()',
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
  };
}

/** The policy of the page that is served as files beside each other; a header can also say who may frame it. */
export const servedPolicy = (): string => `${builtPolicy(siteSources)}; frame-ancestors 'none'`;

/** Writes the policy into the built page, after every other plugin has finished with its inline text. */
export function contentPolicyInPage(single: boolean): Plugin {
  return {
    name: 'content-policy-in-page',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type !== 'asset' || !file.fileName.endsWith('.html')) continue;
          file.source = withPolicy(String(file.source), single);
        }
      },
    },
  };
}

/** The page with its policy as the first thing after its character set, ahead of all it governs. */
function withPolicy(page: string, single: boolean): string {
  // A browser hashes inline text after turning every line end into a line feed.
  const html = page.replaceAll(/\r\n?/g, '\n');
  const sources: Sources = single
    ? {
        script: `${hashesOf(html, 'script')} data:`,
        // Script text may hold `<style>` as a string, so it is set aside first.
        style: hashesOf(html.replaceAll(/<script\b[\s\S]*?<\/script>/g, ''), 'style') || "'none'",
        font: 'data:',
        image: 'data: blob:',
        worker: "'none'",
        trusted: 'lit-html',
      }
    : siteSources;
  const charset = '<meta charset="utf-8" />';
  if (!html.includes(charset))
    throw new Error(`index.html has no ${charset} to put the content policy behind`);
  const meta = `<meta http-equiv="Content-Security-Policy" content="${builtPolicy(sources)}" />`;
  return html.replace(charset, () => `${charset}\n    ${meta}`);
}

/** Hash sources of all inline elements of one kind, blank separated; the empty string when there is none. */
function hashesOf(html: string, element: 'script' | 'style'): string {
  const inline = new RegExp(`<${element}\\b[^>]*>([\\s\\S]*?)</${element}>`, 'g');
  return [...html.matchAll(inline)]
    .map((match) => match[1] ?? '')
    .filter((text) => text !== '')
    .map((text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`)
    .join(' ');
}
