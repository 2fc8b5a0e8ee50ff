/** One address after another: where somebody has gone, nothing slower calls them back. */
import { afterEach, expect, test } from 'vitest';
import { Lampnote } from '../../src/app/lampnote.ts';
import { DEFAULT_SESSION } from '../../src/app/session.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { speak } from '../../src/words/spoken.ts';

afterEach(() => speak('en'));

test('whoever goes on while the words of a language are on their way is not called back by them', async () => {
  const app = new Lampnote(DEFAULT_DESIGN, DEFAULT_SESSION);
  const slow = app.openLink('#/class?lang=de&lesson=comparison', 'link');
  await app.openLink('#/room', 'link');
  expect(app.session.current).toMatchObject({ place: 'room', language: 'en' });
  await slow;
  // What else it asked for holds.
  expect(app.session.current).toMatchObject({
    place: 'room',
    language: 'de',
    lessonByLink: 'comparison',
  });
});

test('an address that nobody overtook leads to its place, in its language', async () => {
  const app = new Lampnote(DEFAULT_DESIGN, DEFAULT_SESSION);
  await app.openLink('#/kit?lang=de', 'link');
  expect(app.session.current).toMatchObject({ place: 'kit', language: 'de' });
});
