import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import type { Look } from '../../src/app/session.ts';
import { frequencyOfNote } from '../../src/plan/notes.ts';
import { words } from '../../src/words/en.ts';
import { pitchWords } from '../../src/words/en-pitch.ts';
import { foundWords } from '../../src/words/en-pitch-found.ts';
import { lineAt } from '../sound/spectrum.ts';
import { axeSource, faults } from './support/access.ts';
import { type Heard, hear, oneBrowser, openPage, tapSound } from './support/browser.ts';
import { button, press, strip, tabTo } from './support/visit.ts';

const browser = oneBrowser();

const visit = (hash: string) => openPage(browser(), `${inject('house').site}${hash}`, { prepare: tapSound });

const box = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const candidates = (page: Page) => page.getByRole('heading', { name: foundWords.table.heading });
const radio = (page: Page, place: number) =>
  page.getByRole('radio', { name: foundWords.table.choose(place), exact: true });

/** Types into the box that has the focus, in the place of what stands there, and leaves it. */
async function typeAnew(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Delete');
  await page.keyboard.type(text);
  await page.keyboard.press('Tab');
}

/** Strength of one frequency among the samples, against all there is. */
function lineShare({ samples, sampleRate, rms }: Heard, hertz: number): number {
  const windowed = Float64Array.from(
    samples,
    (value, i) => value * (1 - Math.cos((2 * Math.PI * i) / samples.length)),
  );
  return lineAt(windowed, hertz / sampleRate) / Math.max(rms, 1e-9);
}

test('with the keyboard alone: a blank wish is filled, a candidate found, heard and taken, and undo brings the old parts back', async () => {
  const { page, close } = await visit('#/listen');
  const before = await strip(page).textContent();
  await tabTo(page, page.getByRole('link', { name: words.places.names.pitch }));
  await page.keyboard.press('Enter');

  const noteA = box(page, pitchWords.wish.note('A'));
  await noteA.waitFor();
  await tabTo(page, noteA);
  await typeAnew(page, '');
  await page.getByText(pitchWords.problem.noteEmpty('A')).first().waitFor();
  expect(await button(page, pitchWords.search.go).isDisabled()).toBe(true);
  await page.keyboard.press('Shift+Tab');
  await typeAnew(page, 'G4');
  await typeAnew(page, 'C4');
  await page.getByRole('heading', { name: pitchWords.wanted.notes('G4', 'C4') }).waitFor();

  await tabTo(page, button(page, pitchWords.search.go));
  await page.keyboard.press('Enter');
  await candidates(page).waitFor();
  await tabTo(page, radio(page, 1));
  await press(page, 'ArrowDown');
  expect(await radio(page, 2).isChecked()).toBe(true);

  await tabTo(page, button(page, foundWords.hear.target));
  await page.keyboard.press('Enter');
  const [g4, c4] = [frequencyOfNote(67), frequencyOfNote(60)];
  const hearBothNotes = () =>
    hear(
      page,
      (sound) =>
        sound.samples.length > 0.6 * sound.sampleRate &&
        lineShare(sound, g4) > 0.3 &&
        lineShare(sound, c4) > 0.3,
      { seconds: 0.65 },
    );
  const heard = await hearBothNotes();
  // A quarter tone beside either note there is nothing.
  expect(lineShare(heard, g4 * 2 ** (1 / 24))).toBeLessThan(0.05);

  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await page.getByText(foundWords.shortlist.targets('G4', 'C4')).waitFor();
  // What is put on the shortlist goes on sounding: the latest second of sound is still the candidate's.
  await page.waitForFunction(
    (then) => (Reflect.get(globalThis, 'soundTap') as AnalyserNode).context.currentTime > then + 1,
    await page.evaluate(() => (Reflect.get(globalThis, 'soundTap') as AnalyserNode).context.currentTime),
  );
  await hearBothNotes();
  await page.keyboard.press('Shift+Tab');
  expect(await button(page, foundWords.detail.take).evaluate((element) => element.matches(':focus'))).toBe(
    true,
  );
  await page.keyboard.press('Enter');
  await page.getByText(foundWords.detail.taken).waitFor();
  await expect.poll(() => strip(page).textContent()).toContain(words.strip.voice('G4', 0, g4));
  expect(await strip(page).textContent()).toContain(words.strip.voice('C4', 0, c4));
  expect(await button(page, words.bar.undo).getAttribute('title')).toBe(
    words.bar.undoWhat(foundWords.detail.takeStep),
  );

  await page.keyboard.press('Control+z');
  const pitchesOf = (text: string | null) => text?.match(/[A-G]♯?\d .*? Hz/g);
  await expect.poll(async () => pitchesOf(await strip(page).textContent())).toEqual(pitchesOf(before));
  await close();
});

test('the wish begins with what the design sounds; where they part, the page says so and takes it back', async () => {
  const { page, close } = await visit('#/pitch');
  const noteA = box(page, pitchWords.wish.note('A'));
  const atHand = page.getByText(pitchWords.wish.atHand({ A: 'A3', B: 'E4' }));
  await noteA.waitFor();
  expect(await noteA.inputValue()).toBe('A3');
  expect(await atHand.count()).toBe(0);
  await noteA.fill('C4');
  await noteA.press('Enter');
  await atHand.waitFor();
  await button(page, pitchWords.wish.takeAtHand).click();
  await atHand.waitFor({ state: 'detached' });
  expect(await noteA.inputValue()).toBe('A3');
  await close();
});

const place = ['lamp-note', 'place-pitch'];

const look = (page: Page, name: Look) =>
  page.getByRole('radio', { name: words.bar.looks[name], exact: true }).check();

const resistors = (page: Page) =>
  page.getByRole('combobox', { name: pitchWords.drawer.resistors, exact: true });

test('lines that do not read, a stopped search and a drawer in which nothing fits are told, and axe finds nothing', async () => {
  const { page, close } = await visit('#/pitch');
  await page.evaluate(axeSource);
  const lines = box(page, pitchWords.drawer.lines);

  // Lines that do not read stay as typed, and are named; the rest is kept.
  await lines.fill('4k7 1% x40\nbanana\n10k');
  await button(page, pitchWords.drawer.apply).click();
  await page.getByText(pitchWords.drawer.bad(1)).waitFor();
  await page.getByText(pitchWords.drawer.holds(2, 0, 0)).waitFor();
  expect(await lines.inputValue()).toBe('4k7 1% x40\nbanana\n10k');

  // A search of many values leaves the time to stop it.
  await resistors(page).selectOption('E48');
  await button(page, pitchWords.search.go).click();
  await page.getByRole('progressbar').waitFor();
  await button(page, pitchWords.search.stop).click();
  await page.getByText(pitchWords.search.stopped).waitFor();
  const found = await faults(page, place);

  await lines.fill('4k7\n10k\n20k trimmer\n1u film');
  await page.getByRole('radio', { name: pitchWords.drawer.uses.have }).check();
  await button(page, pitchWords.search.go).click();
  await page.getByText(pitchWords.search.none('A')).waitFor();
  expect([...found, ...(await faults(page, place))]).toEqual([]);
  await close();
});

test('axe finds nothing in the results, folded out, in each look, wide and narrow', async () => {
  const { page, close } = await visit('#/pitch');
  await page.evaluate(axeSource);
  await resistors(page).selectOption('E6');
  await button(page, pitchWords.search.go).click();
  await candidates(page).waitFor();
  await button(page, foundWords.detail.keep).click();
  await page.getByRole('checkbox', { name: foundWords.abx.blind }).check();
  await button(page, foundWords.abx.isFirst).click();
  await page.locator('details').evaluateAll((all) => {
    for (const fold of all) (fold as HTMLDetailsElement).open = true;
  });
  const found: Record<string, readonly string[]> = {};
  for (const name of ['light', 'dark', 'projector'] as const) {
    await look(page, name);
    found[name] = await faults(page, place, name === 'light' ? 'all' : 'look');
  }
  await look(page, 'light');
  await page.setViewportSize({ width: 320, height: 720 });
  found['narrow'] = await faults(page, place, 'look');
  expect(found).toEqual({ light: [], dark: [], projector: [], narrow: [] });
  await close();
});
