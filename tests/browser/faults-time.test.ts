/** The clock set, the time zone changed, the tab not looked at for long: the page goes on where it should. */
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { linkFor } from '../../src/app/address.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { DEFAULT_DAYLIGHT } from '../../src/design/room.ts';
import { words } from '../../src/words/en.ts';
import { answerWords } from '../../src/words/en-room-answer.ts';
import { oneBrowser, openPage, soundOf, tapSound } from './support/browser.ts';
import { designOn, measured, neverLouder, recordSound, startListening } from './support/faults.ts';
import { becomes, button, hand, hearBoth, soundButton, trimmer } from './support/visit.ts';

const site = inject('house').site;
const browser = oneBrowser();
const { sounding, silent } = words.strip;
/** Full scale at the usual −20 dB, with a quarter for the overshoot of band-limited edges. */
const LOUDEST = 0.125;

const lisbon: Design = {
  ...measured,
  room: {
    ...measured.room,
    daylight: { ...DEFAULT_DAYLIGHT, place: { latitude: 38.7, longitude: -9.1 } },
  },
};

test('the clock set and the time zone changed while the page is open change neither a room’s day nor what goes on', async () => {
  const { page, close } = await openPage(browser(), site + (await linkFor(lisbon, 'room')), {
    prepare: async (unopened) => {
      await tapSound(unopened);
      await unopened.addInitScript(() => {
        let ahead = 0;
        const Whole = Date;
        globalThis.Date = class extends Whole {
          constructor(...given: [] | [number]) {
            super(...((given.length === 0 ? [Whole.now() + ahead] : given) as [number]));
          }
          static override now() {
            return Whole.now() + ahead;
          }
        } as DateConstructor;
        Object.assign(globalThis, {
          setClock: (days: number) => {
            ahead = days * 24 * 3600 * 1000;
          },
        });
      });
    },
  });
  const answered = page.getByRole('region', { name: answerWords.set.heading, exact: true });
  await page.getByText(answerWords.batch.settable).first().waitFor();
  const said = await answered.textContent();
  const device = await page.context().newCDPSession(page);
  for (const [days, timezoneId] of [
    [400, 'Pacific/Kiritimati'],
    [-9000, 'America/St_Johns'],
  ] as const) {
    await device.send('Emulation.setTimezoneOverride', { timezoneId });
    await page.evaluate(
      (shift) => (Reflect.get(globalThis, 'setClock') as (days: number) => void)(shift),
      days,
    );
    await page.getByRole('link', { name: words.places.names.listen, exact: true }).click();
    await trimmer(page, 'A').press('ArrowUp');
    const edited = await designOn(page);
    expect(await page.evaluate(() => localStorage.getItem('lampnote.design'))).toBe(edited);
    await hand(page, 'A').press('End');
    await becomes(page, { A: silent, B: sounding });
    await hand(page, 'A').press('Home');
    await becomes(page, { A: sounding, B: sounding });
    await button(page, words.bar.undo).click();
    await page.getByRole('link', { name: words.places.names.room, exact: true }).click();
    await expect.poll(() => answered.textContent()).toBe(said);
  }
  await page.getByRole('link', { name: words.places.names.listen, exact: true }).click();
  await soundButton(page).click();
  await hearBoth(page, lisbon);
  await close();
});

/** As a browser does with a tab that is not looked at: no frames are drawn. */
const look = (page: Page, away: boolean) =>
  page.evaluate((hidden) => {
    Object.assign(globalThis, { isAway: hidden });
    document.dispatchEvent(new Event('visibilitychange'));
  }, away);

test('a tab not looked at for long comes back in its right state: the sound faded as it does, or kept on for an exhibition', async () => {
  const { page, close } = await openPage(browser(), site, {
    prepare: async (unopened) => {
      await unopened.clock.install();
      await tapSound(unopened);
      await recordSound(unopened);
      await unopened.addInitScript(() => {
        const { requestAnimationFrame: whole } = globalThis;
        const held: FrameRequestCallback[] = [];
        const isAway = () => Reflect.get(globalThis, 'isAway') === true;
        globalThis.requestAnimationFrame = (draw) => (isAway() ? held.push(draw) : whole(draw));
        document.addEventListener('visibilitychange', () => {
          if (!isAway()) for (const draw of held.splice(0)) whole(draw);
        });
        for (const [name, get] of [
          ['hidden', isAway],
          ['visibilityState', () => (isAway() ? 'hidden' : 'visible')],
        ] as const)
          Object.defineProperty(document, name, { get });
      });
    },
  });
  const design = await designOn(page);
  const heardFor = (isHeard: boolean) =>
    expect
      .poll(async () => (await soundOf(page)).rms, { timeout: 15_000 })
      .toSatisfy((rms: number) => (isHeard ? rms > 0.01 : rms < 1e-4));
  await soundButton(page).click();
  await hearBoth(page, DEFAULT_DESIGN);

  await look(page, true);
  await page.clock.fastForward('10:00');
  await heardFor(false);
  await look(page, false);
  await page.getByText(words.sound.faded).waitFor();
  await startListening(page);
  await hand(page, 'A').press('End');
  await becomes(page, { A: silent, B: sounding });
  await page.keyboard.press('Escape');
  await hearBoth(page, DEFAULT_DESIGN);
  await neverLouder(page, LOUDEST);

  await page.getByRole('checkbox', { name: words.sound.exhibition }).check();
  await look(page, true);
  await page.clock.fastForward('03:00:00');
  await heardFor(true);
  await look(page, false);
  await becomes(page, { A: sounding, B: sounding });
  await hearBoth(page, DEFAULT_DESIGN);
  expect(await page.getByText(words.sound.faded).count()).toBe(0);

  // Without sound the page's own model goes on from where it was.
  await page.keyboard.press('Shift+Escape');
  await hand(page, 'B').press('End');
  await becomes(page, { A: sounding, B: silent });
  await look(page, true);
  await page.clock.fastForward('30:00:00');
  await look(page, false);
  await hand(page, 'B').press('Home');
  await becomes(page, { A: sounding, B: sounding });
  expect(await designOn(page)).toBe(design);
  await close();
});
