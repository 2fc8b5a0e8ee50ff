/** The built page as a stranger gets it: shut in by its policy, complete, and quiet in the console. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, inject, test } from 'vitest';
import { findChromium, type Machine } from '../../src/headless/chromium.ts';
import { oneBrowser, openPage } from './support/browser.ts';

const house = inject('house');
const browser = oneBrowser();

/** The policy in a built page: from directive to its sources. */
function policyIn(folder: string): ReadonlyMap<string, readonly string[]> {
  const html = readFileSync(path.join(folder, 'index.html'), 'utf8');
  const content = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1];
  return directivesOf(content ?? '');
}

function directivesOf(policy: string): ReadonlyMap<string, readonly string[]> {
  return new Map(
    policy.split('; ').map((directive) => {
      const [name = '', ...sources] = directive.split(' ');
      return [name, sources];
    }),
  );
}

describe('the normal build', () => {
  test('carries a policy that allows its own files and no connection', () => {
    const policy = policyIn(house.siteFolder);
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('script-src')).toEqual(["'self'"]);
    expect(policy.get('style-src')).toEqual(["'self'"]);
    expect(policy.get('connect-src')).toEqual(["'none'"]);
    expect(policy.get('require-trusted-types-for')).toEqual(["'script'"]);
    expect(policy.get('worker-src')).toEqual(["'self'"]);
    expect(policy.get('trusted-types')).toEqual(['lit-html', 'lampnote-worker']);
  });

  test('is served with the same policy, closed to frames, with camera and microphone for itself alone', async () => {
    const { headers } = await fetch(house.site);
    const sent = new Map(directivesOf(headers.get('content-security-policy') ?? ''));
    expect(sent.get('frame-ancestors')).toEqual(["'none'"]);
    sent.delete('frame-ancestors');
    expect(sent).toEqual(policyIn(house.siteFolder));
    expect(headers.get('permissions-policy')).toBe('camera=(self), microphone=(self), geolocation=()');
  });

  test('cannot reach another address even when told to', async () => {
    const opened = await openPage(browser(), house.site, {
      allow: [/Content Security Policy/i, /request failed/],
    });
    const outcome = await opened.page.evaluate(() =>
      fetch('/?elsewhere').then(
        () => 'reached',
        () => 'refused',
      ),
    );
    expect(outcome).toBe('refused');
    expect(opened.complaints.join('\n')).toMatch(/connect-src/);
    await opened.close();
  });

  test('says what it needs when scripts are off', async () => {
    // The browser then also refuses to fetch the scripts that the page asks for ahead of time.
    const opened = await openPage(browser(), house.site, {
      javaScriptEnabled: false,
      allow: [/\.js \(csp\)$/],
    });
    expect(await opened.page.textContent('noscript')).toMatch(/needs JavaScript/);
    await opened.close();
  });
});

describe('the one-file build', () => {
  const html = () => readFileSync(path.join(house.singleFolder, 'index.html'), 'utf8');

  test('is exactly one file that names no other', () => {
    expect(readdirSync(house.singleFolder, { recursive: true })).toEqual(['index.html']);
    const markup = html().replaceAll(/(<script\b[^>]*>)[\s\S]*?<\/script>/g, '$1');
    const addresses = [...markup.matchAll(/<[a-z]+\b[^>]*\s(?:src|href)="([^"]*)"/g)].map(
      (match) => match[1],
    );
    expect(addresses.filter((address) => !address?.startsWith('data:'))).toEqual([]);
  });

  test('allows its own script by hash, data addresses, and nothing else', () => {
    const policy = policyIn(house.singleFolder);
    const script = /<script\b[^>]*>([\s\S]*?)<\/script>/.exec(html())?.[1] ?? '';
    const hash = createHash('sha256').update(script).digest('base64');
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('script-src')).toEqual([`'sha256-${hash}'`, 'data:']);
    expect(policy.get('connect-src')).toEqual(["'none'"]);
  });
});

describe.each([
  ['the normal build', house.site, house.siteFolder],
  ['the one-file build', house.singleFile, house.singleFolder],
] as const)('in %s', (_which, address, folder) => {
  test('no directive lets text become code, or any other host speak', () => {
    for (const [directive, sources] of policyIn(folder))
      for (const source of sources)
        expect(source, directive).toMatch(
          directive === 'trusted-types'
            ? /^(?:lit-html|lampnote-worker)$/
            : directive === 'script-src'
              ? /^(?:'none'|'self'|'sha256-[^']+'|data:)$/
              : /^(?:'none'|'self'|'script'|'sha256-[^']+'|data:|blob:)$/,
        );
  });

  test('text does not become code, and markup not a script', async () => {
    const opened = await openPage(browser(), address, {
      allow: [/Content Security Policy|Trusted/],
    });
    // Later, as a page's own code would try: what a test evaluates at once the browser lets pass.
    const ways = await opened.page.evaluate(
      () =>
        new Promise<Record<string, string>>((told) => {
          const attempts: Record<string, () => unknown> = {
            // biome-ignore lint/security/noGlobalEval: the attempt is the test
            eval: () => eval('"run"'),
            function: () => new Function('return "run"')(),
            timer: () => {
              setTimeout('document.title = "run"' as unknown as () => void);
              return document.title;
            },
            markup: () => {
              document.body.innerHTML += '<img src="x" onerror="document.title = \'run\'">';
              return document.title;
            },
          };
          setTimeout(() => {
            const found = Object.entries(attempts).map(([name, attempt]) => {
              try {
                return [name, String(attempt())];
              } catch (refusal) {
                return [name, (refusal as Error).name];
              }
            });
            told(Object.fromEntries(found));
          });
        }),
    );
    expect(ways).toEqual({
      eval: 'EvalError',
      function: 'EvalError',
      timer: 'TypeError',
      markup: 'TypeError',
    });
    await opened.close();
  });
});

describe('the search for a browser', () => {
  const bare: Machine = {
    platform: 'linux',
    arch: 'arm64',
    variables: {},
    exists: () => false,
    starts: async () => true,
  };

  test('takes the one named by the CHROMIUM variable first', async () => {
    const machine: Machine = { ...bare, variables: { CHROMIUM: '/opt/mine' }, exists: () => true };
    expect((await findChromium(machine)).path).toBe('/opt/mine');
  });

  test('says so when the CHROMIUM variable names a missing file', async () => {
    const machine: Machine = { ...bare, variables: { CHROMIUM: '/opt/mine' } };
    await expect(findChromium(machine)).rejects.toThrow(
      'CHROMIUM variable names /opt/mine, but there is no such file',
    );
  });

  test('passes over an installed program that does not start', async () => {
    const machine: Machine = {
      ...bare,
      exists: (file) => file.startsWith('/usr/bin/'),
      starts: async (file) => file === '/usr/bin/microsoft-edge',
    };
    expect((await findChromium(machine)).path).toBe('/usr/bin/microsoft-edge');
  });

  test.each([
    ['darwin', { HOME: '/Users/me' }, '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
    ['win32', { PROGRAMFILES: 'C:\\Programs' }, 'C:\\Programs\\Google\\Chrome\\Application\\chrome.exe'],
  ] as const)('knows where Chrome is installed on %s', async (platform, variables, place) => {
    const machine: Machine = { ...bare, platform, variables, exists: (file) => file === place };
    expect((await findChromium(machine)).path).toBe(place);
  });

  test('names the CHROMIUM variable when there is no browser at all', async () => {
    await expect(findChromium(bare)).rejects.toThrow('set the CHROMIUM variable');
  });
});
