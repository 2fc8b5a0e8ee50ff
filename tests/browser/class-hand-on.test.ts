/** What a class takes with it from the built page: printed sheets, links and their code, the sound a link asks for. */
import { expect, inject, test } from 'vitest';
import { LESSONS } from '../../src/lesson/lessons.ts';
import { words } from '../../src/words/en.ts';
import { classPage } from '../../src/words/en-class.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { titleOf } from './support/lesson-visit.ts';
import { button, soundButton } from './support/visit.ts';

const browser = oneBrowser();
const visit = (hash: string) => openPage(browser(), `${inject('house').site}${hash}`);
const { handOver: says, sheets } = classPage;

test('a link for a typed https address, which stands on the sheets; sheets by class word and number, alone on paper', async () => {
  const { page, close } = await visit('#/class');
  // On this computer only the page says why it gives no link.
  await page.getByText(says.why['this computer only'], { exact: true }).waitFor();
  const address = page.getByRole('textbox', { name: says.hosted, exact: true });
  await address.fill('http://school.example/');
  await address.press('Enter');
  await page.getByText(says.hostedWrong('http://school.example/'), { exact: true }).waitFor();
  await address.fill('https://school.example/lampnote/');
  await address.press('Enter');
  await page.getByRole('img', { name: says.code, exact: true }).waitFor();
  const link = new URL((await page.locator('class-link code').textContent())!);
  expect(link.href).toBe(`https://school.example/lampnote/#/class?lesson=${LESSONS[0]!.id}&sound=muted`);

  await page.evaluate(() => {
    // What of the code is drawn at that moment is what comes out of a printer.
    window.print = () => {
      const code = document.querySelector('.paper qr-code')?.shadowRoot?.querySelector('path');
      document.body.setAttribute('data-printed', code?.getAttribute('d')?.slice(0, 1) ?? 'nothing');
    };
  });
  const word = page.getByRole('textbox', { name: sheets.word, exact: true });
  /** Prints for a class word, and gives the first sheet's questions; the paper lies there until the next. */
  const printed = async (text: string): Promise<string> => {
    await page.evaluate(() => {
      window.dispatchEvent(new Event('afterprint'));
      document.body.removeAttribute('data-printed');
    });
    await page.emulateMedia({ media: 'screen' });
    expect(await page.locator('.paper').count()).toBe(0);
    await word.fill(text);
    await button(page, sheets.print).press('Enter');
    await page.locator('body[data-printed]').waitFor();
    await page.emulateMedia({ media: 'print' });
    return (await page.locator('.paper .sheet ol').first().textContent())!;
  };
  const sizeOf = () =>
    page
      .locator('.paper li')
      .first()
      .evaluate((li) => Number.parseFloat(getComputedStyle(li).fontSize));
  const maple = await printed('Maple');
  expect(await printed('Oak')).not.toBe(maple);
  expect(await printed(' maple ')).toBe(maple);
  expect(await page.locator('.paper .sheet').count()).toBe(20);
  expect(await page.locator('lamp-note').isVisible()).toBe(false);
  expect(await page.locator('.paper .sheet').first().isVisible()).toBe(true);
  expect(await page.locator('.paper .running').first().textContent()).toContain('maple');
  expect(await page.locator('body').getAttribute('data-printed')).toBe('M');
  const usual = await sizeOf();
  await page.emulateMedia({ media: 'screen' });
  await page.getByRole('radio', { name: sheets.sizes.large, exact: true }).check();
  expect(await printed('Maple')).toBe(maple);
  expect(await sizeOf()).toBeGreaterThan(1.5 * usual);

  // The same part of the address opens that lesson here; with sound=off nobody can switch it on. The word is kept.
  await page.emulateMedia({ media: 'screen' });
  await page.reload();
  expect(await word.inputValue()).toBe('Maple');
  await page.evaluate(
    (hash) => {
      location.hash = hash;
    },
    link.hash.replace('muted', 'off'),
  );
  await page.getByRole('heading', { name: titleOf(LESSONS[0]!), exact: true }).waitFor();
  expect(await soundButton(page).first().isDisabled()).toBe(true);
  await page.keyboard.press('s');
  expect(await soundButton(page).first().isDisabled()).toBe(true);
  await close();
});

test('a link with sound=on starts the sound with the first press', async () => {
  const { page, close } = await visit('#/class?sound=on');
  await page.keyboard.press('Tab');
  await soundButton(page, words.bar.soundOff).first().waitFor();
  await close();
});
