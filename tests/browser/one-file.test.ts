/** The one-file page, opened from a disk: it plays as the served one does. */
import { expect, inject, test } from 'vitest';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { words } from '../../src/words/en.ts';
import { oneBrowser, openPage, tapSound } from './support/browser.ts';
import { becomes, hand, hearBoth, hearOnly, hearPitch, press, soundButton, tabTo } from './support/visit.ts';

const browser = oneBrowser();

test('sounds from file:// at the model’s frequencies, and a hand moved by keyboard stops one voice', async () => {
  const { page, requests, close } = await openPage(browser(), inject('house').singleFile, {
    prepare: tapSound,
  });
  expect(page.url()).toMatch(/^file:/);
  const { sounding, silent } = words.strip;
  await tabTo(page, soundButton(page));
  await page.keyboard.press('Enter');
  await hearBoth(page, DEFAULT_DESIGN);

  for (const [voice, other] of [
    ['A', 'B'],
    ['B', 'A'],
  ] as const) {
    await tabTo(page, hand(page, other));
    await press(page, 'PageUp', 10);
    await becomes(page, { [voice]: sounding, [other]: silent } as Record<'A' | 'B', string>);
    await hearOnly(page, voice, DEFAULT_DESIGN);
    await hearPitch(page, voice, DEFAULT_DESIGN);
    await page.keyboard.press('Escape');
    await hearBoth(page, DEFAULT_DESIGN);
  }
  expect(requests.filter((url) => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
  // Closing complains of anything the console was told meanwhile.
  await close();
});
