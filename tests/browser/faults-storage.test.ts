/** A browser that keeps nothing, or something damaged; two tabs; a reload in mid-drag; everything forgotten. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { linkFor } from '../../src/app/address.ts';
import { rename, turnPitch } from '../../src/design/commands.ts';
import { decodeText, encodeText } from '../../src/design/decode.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { germanKeeping } from '../../src/words/de-keeping.ts';
import { words } from '../../src/words/en.ts';
import { classPage } from '../../src/words/en-class.ts';
import { keepingWords } from '../../src/words/en-keeping.ts';
import { oneBrowser, openPage, tapSound } from './support/browser.ts';
import { choose, designOn, saysInBoth } from './support/faults.ts';
import { advance, begin, goTo, lessonOf, titleOf } from './support/lesson-visit.ts';
import {
  becomes,
  button,
  dragTrimmer,
  hand,
  hearBoth,
  soundButton,
  trimmer,
  trimmerBox,
} from './support/visit.ts';

const site = inject('house').site;
const browser = oneBrowser();

const notice = (page: Page, text: string) => page.getByText(text, { exact: true });
const keptDesign = (page: Page) => page.evaluate(() => localStorage.getItem('lampnote.design'));
const keptNames = (page: Page) =>
  page.evaluate(async () => [
    ...Object.keys(localStorage),
    ...Object.keys(sessionStorage),
    ...(await indexedDB.databases()).map(({ name }) => name!),
    ...(await caches.keys()),
  ]);
/** The names of what lies aside. */
const laidAside = async (page: Page) => {
  const start = 'lampnote.aside.';
  return (await keptNames(page)).flatMap((name) =>
    name.startsWith(start) ? [name.slice(start.length)] : [],
  );
};

async function downloaded(page: Page, name: string): Promise<string> {
  const coming = page.waitForEvent('download');
  await button(page, name).click();
  return readFileSync(await (await coming).path(), 'utf8');
}

test.each<[string, () => void]>([
  [
    'is full',
    () => {
      Storage.prototype.setItem = () => {
        throw new DOMException('No room.', 'QuotaExceededError');
      };
    },
  ],
  [
    'may not be asked',
    () => {
      const get = () => {
        throw new DOMException('Access is denied.', 'SecurityError');
      };
      for (const store of ['localStorage', 'sessionStorage'])
        Object.defineProperty(globalThis, store, { get });
    },
  ],
])('a storage that %s is told once, the work goes on, and can be saved', async (_title, spoil) => {
  const { page, close } = await openPage(browser(), site, {
    prepare: async (unopened) => {
      await tapSound(unopened);
      await unopened.addInitScript(spoil);
    },
  });
  await trimmer(page, 'A').press('End');
  await saysInBoth(page, keepingWords.refused, germanKeeping.refused);
  const changed = turnPitch('A', 1)(DEFAULT_DESIGN);
  expect(await downloaded(page, keepingWords.save)).toBe(encodeText(changed));
  await button(page, keepingWords.close).click();
  await trimmer(page, 'B').press('End');
  await soundButton(page).click();
  await hearBoth(page, turnPitch('B', 1)(changed));
  expect(await notice(page, keepingWords.refused).count()).toBe(0);
  await close();
});

const whole = encodeText(rename('Mine')(DEFAULT_DESIGN));

test('a kept design that does not read is laid aside as it was, told, and saved; the settings that read are taken', async () => {
  const { page, close } = await openPage(browser(), site);
  for (const [kept, settings, volume] of [
    ['\u0000ÿ{', '{"look":"purple","volumeDb":-40}', -40],
    [whole.slice(0, 500), '{"look":"dark","volu', -20],
    [whole.replace(/"version": \d+/, '"version": 99'), '[]', -20],
    // Whoever comes next may wear headphones.
    ['[]', '{"volumeDb":-8}', -20],
  ] as const) {
    expect(decodeText(kept).ok).toBe(false);
    await page.evaluate(
      ([design, session]) => {
        localStorage.clear();
        localStorage.setItem('lampnote.design', design!);
        localStorage.setItem('lampnote.session', session!);
      },
      [kept, settings],
    );
    await page.reload();
    await saysInBoth(page, keepingWords.unread, germanKeeping.unread);
    const slider = page.getByRole('slider', { name: words.bar.volume, exact: true });
    expect(await slider.getAttribute('aria-valuetext')).toBe(words.bar.volumeText(volume));
    await trimmer(page, 'A').press('End');
    const design = await designOn(page);
    await page.reload();
    // The new work is kept, and so is what did not read.
    await notice(page, keepingWords.unread).waitFor();
    expect(await designOn(page)).toBe(design);
    expect(await downloaded(page, keepingWords.saveAside)).toBe(kept);
    await button(page, keepingWords.letGo).click();
    await notice(page, keepingWords.unread).waitFor({ state: 'hidden' });
    await page.reload();
    await trimmer(page, 'A').waitFor();
    expect(await notice(page, keepingWords.unread).count()).toBe(0);
  }
  await close();
});

test('of two tabs neither overwrites the other unseen: each edit is kept until somebody chooses', async () => {
  const { page: first, close } = await openPage(browser(), site);
  const failures: string[] = [];
  first.context().on('weberror', (error) => failures.push(error.error().message));
  const second = await first.context().newPage();
  await second.goto(site);
  await trimmer(second, 'A').press('End');
  const theirs = await designOn(second);
  await saysInBoth(first, keepingWords.elsewhere, germanKeeping.elsewhere);

  await trimmer(first, 'B').press('End');
  const mine = await designOn(first);
  expect(mine).not.toBe(theirs);
  expect(await keptDesign(first)).toBe(theirs);
  await first.reload();
  await notice(first, keepingWords.elsewhere).waitFor();
  expect(await designOn(first)).toBe(mine);

  // What a living tab has laid aside is not offered to another, nor can it be let go there; a doubled tab lays aside its own.
  const twin = await first.context().newPage();
  await twin.goto(site);
  const [name, ...rest] = await laidAside(first);
  expect(rest).toEqual([]);
  await twin.evaluate((own) => sessionStorage.setItem('lampnote.own', own), name!);
  await twin.reload();
  expect(await designOn(twin)).toBe(mine);
  await expect.poll(() => laidAside(first), { timeout: 10_000 }).toHaveLength(2);
  expect(await twin.getByText(keepingWords.aside(DEFAULT_DESIGN.name)).count()).toBe(0);
  await trimmer(twin, 'A').press('Home');
  const theTwins = await designOn(twin);
  await twin.close();

  // A tab closed without a choice leaves its design to the next.
  const third = await first.context().newPage();
  await third.goto(site);
  await saysInBoth(third, keepingWords.aside(DEFAULT_DESIGN.name), germanKeeping.aside(DEFAULT_DESIGN.name));
  expect(await designOn(third)).toBe(theirs);
  await button(third, keepingWords.open).click();
  expect(await designOn(third)).toBe(theTwins);
  await button(third, words.bar.undo).click();
  await third.close();

  await button(first, keepingWords.mine).click();
  await notice(first, keepingWords.elsewhere).waitFor({ state: 'hidden' });
  expect(await keptDesign(first)).toBe(mine);
  await button(second, keepingWords.theirs).click();
  expect(await designOn(second)).toBe(mine);
  await button(second, words.bar.undo).click();
  expect(await designOn(second)).toBe(theirs);

  // What "mine" replaced lies beside it, and is one step away.
  await button(first, keepingWords.open).click();
  expect(await designOn(first)).toBe(theirs);
  await expect.poll(() => notice(first, keepingWords.elsewhere).count()).toBe(0);
  await button(first, words.bar.undo).click();
  expect(await designOn(first)).toBe(mine);
  expect(failures).toEqual([]);
  await close();
});

const openReady = (page: Page, place: number) =>
  page.getByRole('combobox', { name: words.bar.designs, exact: true }).selectOption(String(place));

test('a design that another took the place of is there after a reload, unless it was a ready one or came back', async () => {
  const { page, close } = await openPage(browser(), site);
  await openReady(page, 1);
  await openReady(page, 2);
  expect(await laidAside(page)).toEqual([]);
  await trimmer(page, 'A').press('End');
  const mine = await designOn(page);
  await openReady(page, 1);
  expect(await laidAside(page)).toHaveLength(1);
  // Until then Undo does.
  expect(await button(page, keepingWords.open).count()).toBe(0);
  await page.reload();
  const { name } = JSON.parse(mine) as { name: string };
  await saysInBoth(page, keepingWords.aside(name), germanKeeping.aside(name));
  await button(page, keepingWords.open).click();
  expect(await designOn(page)).toBe(mine);
  expect(await laidAside(page)).toEqual([]);

  await openReady(page, 1);
  await button(page, words.bar.undo).click();
  await page.reload();
  expect(await designOn(page)).toBe(mine);
  expect(await laidAside(page)).toEqual([]);
  // The last three of such are enough.
  for (const place of [0, 1, 2, 3, 4]) {
    await openReady(page, place);
    await trimmer(page, 'A').press(place % 2 === 0 ? 'End' : 'Home');
  }
  await openReady(page, 5);
  expect(await laidAside(page)).toHaveLength(3);
  await close();
});

test('where settings still find room and the design does not, that stays said, and the page is not left unasked', async () => {
  const { page, close } = await openPage(browser(), site, {
    prepare: (unopened) =>
      unopened.addInitScript(() => {
        const { setItem } = Storage.prototype;
        Storage.prototype.setItem = function (key, value) {
          if (value.length > 500) throw new DOMException('No room.', 'QuotaExceededError');
          setItem.call(this, key, value);
        };
      }),
  });
  await trimmer(page, 'A').press('End');
  await notice(page, keepingWords.refused).waitFor();
  const mine = await designOn(page);
  await page.getByRole('slider', { name: words.bar.volume, exact: true }).press('ArrowDown');
  await page.getByRole('radio', { name: words.bar.looks.dark, exact: true }).dispatchEvent('click');
  expect(JSON.parse((await page.evaluate(() => localStorage.getItem('lampnote.session')))!)).toMatchObject({
    look: 'dark',
  });
  expect(await notice(page, keepingWords.refused).count()).toBe(1);

  const asked: string[] = [];
  page.once('dialog', async (dialog) => {
    asked.push(dialog.type());
    await dialog.dismiss();
  });
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => asked).toEqual(['beforeunload']);
  expect(await designOn(page)).toBe(mine);

  // In a lesson, too, it is one's own that the note saves, and that is asked for.
  await goTo(page, 'class');
  await begin(page, lessonOf('comparison'));
  await expect.poll(() => designOn(page)).not.toBe(mine);
  expect(await downloaded(page, keepingWords.save)).toBe(mine);
  await close();
});

test('a lesson goes on after a reload at the step where it was', async () => {
  const { page, close } = await openPage(browser(), site);
  const lesson = lessonOf('why-a-shadow-stops-it');
  await goTo(page, 'class');
  await begin(page, lesson);
  await page.keyboard.press(' ');
  await advance(page).press('Enter');
  await page.reload();
  await page
    .getByRole('button', { name: classPage.goOn(titleOf(lesson), 2, lesson.steps.length), exact: true })
    .press('Enter');
  await expect
    .poll(() => page.evaluate(() => sessionStorage.getItem('lampnote.sitting')))
    .toContain(lesson.id);
  await close();
});

test('a page taken out as it was put by follows the light again and tells what another tab has kept meanwhile', async () => {
  const { page, close } = await openPage(browser(), site, { prepare: tapSound });
  await soundButton(page).click();
  await hearBoth(page, DEFAULT_DESIGN);
  await page.evaluate(
    (text) => {
      window.dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }));
      localStorage.setItem('lampnote.design', text);
    },
    encodeText(rename('Theirs')(DEFAULT_DESIGN)),
  );
  await soundButton(page).waitFor();
  await page.evaluate(() => window.dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true })));
  await notice(page, keepingWords.elsewhere).waitFor();
  await hand(page, 'A').press('End');
  await becomes(page, { A: words.strip.silent, B: words.strip.sounding });
  await hand(page, 'A').press('Home');
  await soundButton(page).click();
  await hearBoth(page, DEFAULT_DESIGN);
  await close();
});

test('a reload in the middle of a drag keeps the value last shown, with nothing to undo', async () => {
  // Come by a link: the link must not take the place of what was done since.
  const linked = rename('From a link')(DEFAULT_DESIGN);
  const { page, close } = await openPage(browser(), site + (await linkFor(linked)));
  await notice(page, words.notice.opened(linked.name)).waitFor();
  const before = await trimmerBox(page, 'A').inputValue();
  await dragTrimmer(page);
  // A moving hand is followed as often as it can be read.
  let shown = before;
  await expect
    .poll(async () => {
      const last = shown;
      shown = await trimmerBox(page, 'A').inputValue();
      return shown !== before && shown === last;
    })
    .toBe(true);
  await page.reload();
  expect(await trimmerBox(page, 'A').inputValue()).toBe(shown);
  expect(await button(page, words.bar.undo).isDisabled()).toBe(true);
  // The hand that let go after the reload changes nothing.
  await page.mouse.move(5, 5);
  await page.mouse.up();
  expect(await trimmerBox(page, 'A').inputValue()).toBe(shown);
  await trimmer(page, 'A').press('End');
  await button(page, words.bar.undo).click();
  expect(await trimmerBox(page, 'A').inputValue()).toBe(shown);

  // So is what was still being typed.
  const name = page.getByRole('textbox', { name: words.bar.name, exact: true });
  await name.fill('Half a na');
  await page.reload();
  expect(await name.inputValue()).toBe('Half a na');
  await close();
});

test('everything is forgotten when asked twice, and nothing is kept again before something changes', async () => {
  const { page, close } = await openPage(browser(), site);
  const { forget } = keepingWords;
  await trimmer(page, 'A').press('End');
  await page.getByRole('radio', { name: words.bar.looks.dark, exact: true }).dispatchEvent('click');
  await choose(page, 'de');
  await choose(page, 'en');
  await page.evaluate(async () => {
    for (const store of [localStorage, sessionStorage])
      for (const name of ['lampnote.later', 'another page']) store.setItem(name, 'kept');
    await caches.open('lampnote-files');
    await new Promise((opened) => {
      indexedDB.open('lampnote').onsuccess = ({ target }) => {
        (target as IDBOpenDBRequest).result.close();
        opened(null);
      };
    });
  });
  const others = ['another page', 'another page'];
  const ours = ['lampnote.design', 'lampnote.session', 'lampnote.later', 'lampnote.later', 'lampnote-files'];
  expect((await keptNames(page)).toSorted()).toEqual([...others, ...ours, 'lampnote'].toSorted());

  await button(page, forget.press).press('Enter');
  await saysInBoth(page, forget.asks, germanKeeping.forget.asks);
  await page.keyboard.press('Escape');
  expect(await button(page, forget.press).evaluate((element) => element.matches(':focus'))).toBe(true);
  await page.keyboard.press('Enter');
  await button(page, forget.yes).press('Enter');
  await notice(page, forget.done).waitFor();
  // Looking round, moving the light and hearing it are no changes of what is kept.
  await hand(page, 'A').press('End');
  await becomes(page, { A: words.strip.silent, B: words.strip.sounding });
  await page.getByRole('link', { name: words.places.names.room, exact: true }).click();
  await page.locator('place-room h2').first().waitFor();
  expect(await keptNames(page)).toEqual(others);
  await page.reload();
  await notice(page, forget.told).waitFor();
  expect(await designOn(page)).toBe(encodeText(DEFAULT_DESIGN));
  expect(await keptNames(page)).toEqual(others);

  await choose(page, 'de');
  expect(await keptNames(page)).toContain('lampnote.session');
  await button(page, germanKeeping.forget.press).click();
  await button(page, germanKeeping.forget.yes).click();
  await notice(page, germanKeeping.forget.done).waitFor();
  await choose(page, 'en');
  await notice(page, forget.told).waitFor();
  await close();
});
