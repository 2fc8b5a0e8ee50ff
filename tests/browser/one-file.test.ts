/** The one-file page, opened from a disk: it plays as the served one does. */
import { expect, inject, test } from 'vitest';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { words } from '../../src/words/en.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
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

test('while a board is planned the page draws on, and a press turns the board over before the plan is there', async () => {
  const { page, close } = await openPage(browser(), `${inject('house').singleFile}#/kit`);
  const { board, sheetNames } = kitViewWords;
  await page.getByRole('radio', { name: sheetNames.board, exact: true }).check();
  await page.locator('board-picture').first().waitFor();
  const sizes = await page.getByRole('combobox', { name: board.options, exact: true }).elementHandle();
  const copper = await page.getByRole('radio', { name: board.sides.copper, exact: true }).elementHandle();
  const before = await page.locator('plan-panel').evaluate(
    async (panel, [select, side]) => {
      const text = (selector: string) => panel.shadowRoot?.querySelector(selector)?.textContent?.trim();
      const frame = () => new Promise((drawn) => requestAnimationFrame(drawn));
      const list = select as HTMLSelectElement;
      list.selectedIndex = (list.selectedIndex + 1) % list.options.length;
      list.dispatchEvent(new Event('change', { bubbles: true }));
      // So many that the plan has surely been begun.
      for (let i = 0; i < 4; i++) await frame();
      (side as HTMLInputElement).click();
      await frame();
      return [text('h2'), text('[role=status]')];
    },
    [sizes, copper],
  );
  expect(before).toEqual([board.heading.copper, board.replanning]);
  await page.getByText(board.replanning).waitFor({ state: 'hidden' });
  await close();
});
