/** What the build tells of itself: whose work it holds, and the sources of its figures. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { noticesFor } from '../../src/headless/build-notices.ts';
import { figureTopics } from '../../src/headless/build-sources.ts';
import { aboutWords } from '../../src/words/en-about.ts';

describe('the notices', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'lampnote-notices-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  function made(name: string, files: Readonly<Record<string, string>>): string {
    const home = path.join(folder, name);
    mkdirSync(home);
    writeFileSync(
      path.join(home, 'package.json'),
      JSON.stringify({ name, version: '1.2.3', license: 'MIT' }),
    );
    for (const [file, text] of Object.entries(files)) writeFileSync(path.join(home, file), text);
    return home;
  }

  test('hold the page’s own licence first, then each package with the text it came with', () => {
    const text = noticesFor([
      made('zebra', { 'LICENCE.md': 'Zebra terms' }),
      made('ant', { LICENSE: 'Ant terms' }),
    ]);
    expect(text).toMatch(
      /^Lampnote \d+\.\d+\.\d+, MIT\n[\s\S]*WITHOUT WARRANTY[\s\S]*ant 1\.2\.3, MIT\n\nAnt terms/,
    );
    expect(text.indexOf('zebra 1.2.3, MIT\n\nZebra terms')).toBeGreaterThan(text.indexOf('Ant terms'));
  });

  test('say one text once, for all that share it', () => {
    const text = noticesFor([made('a', { LICENSE: 'Same terms\r\n' }), made('b', { license: 'Same terms' })]);
    expect(text).toContain('a 1.2.3, MIT\nb 1.2.3, MIT\n\nSame terms\n');
  });

  test('take the text from the README where there is no file of its own', () => {
    const readme = '# Name\n\nUse it.\n\n#### LICENSE\n\nReadme terms\n\n## More\n\nNo terms';
    expect(noticesFor([made('a', { 'README.md': readme })])).toMatch(/\n\nReadme terms\n$/);
  });

  test('refuse a package that comes without a licence text', () => {
    const home = made('a', { 'README.md': '# Name\n\nNo licence in sight' });
    expect(() => noticesFor([home])).toThrow(`${home} comes without a licence text`);
  });
});

test('every table of published figures has a name on the page, and every name its table', () => {
  const topics = figureTopics('tests/truth');
  expect(topics.map(({ topic }) => topic)).toEqual(Object.keys(aboutWords.sources.topics).toSorted());
  for (const { rows, sources } of topics) {
    expect(sources.length).toBeGreaterThan(0);
    expect(sources.length).toBeLessThanOrEqual(rows);
    expect(new Set(sources).size).toBe(sources.length);
  }
});
