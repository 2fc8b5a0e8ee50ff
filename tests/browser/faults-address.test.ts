/** The page at an address that is not secure: the browser withholds sound, camera and microphone, and the page says so. */
import { readFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import path from 'node:path';
import { expect, inject, test } from 'vitest';
import { linkFor } from '../../src/app/address.ts';
import { encodeText } from '../../src/design/decode.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { germanPage } from '../../src/words/de-page.ts';
import { words } from '../../src/words/en.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { pitchWords } from '../../src/words/en-pitch.ts';
import { foundWords } from '../../src/words/en-pitch-found.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { designOn, saysInBoth } from './support/faults.ts';
import { serve } from './support/served.ts';
import { becomes, button, hand, soundButton } from './support/visit.ts';

const house = inject('house');
const browser = oneBrowser();
/** Where other devices would reach this machine; a machine without a network has no such address. */
const here = Object.values(networkInterfaces())
  .flatMap((addresses) => addresses ?? [])
  .find(({ internal, family }) => !internal && family === 'IPv4')?.address;

test.skipIf(here === undefined)(
  'over plain http the page says what is withheld, offers the one file, and does everything else',
  async () => {
    const served = await serve(house.siteFolder, here);
    const { page, close } = await openPage(browser(), served.address);
    expect(await page.evaluate(() => isSecureContext)).toBe(false);
    const { insecure } = words.sound.trouble;
    await saysInBoth(page, insecure, germanPage.sound.trouble.insecure);
    expect(await soundButton(page).isDisabled()).toBe(true);
    const coming = page.waitForEvent('download');
    await page.getByRole('link', { name: words.oneFile, exact: true }).click();
    const oneFile = readFileSync(await (await coming).path(), 'utf8');
    expect(oneFile).toBe(readFileSync(path.join(house.singleFolder, 'index.html'), 'utf8'));

    await page.getByRole('radio', { name: words.light.sources.camera, exact: true }).check({ force: true });
    await button(page, words.camera.open).click();
    await saysInBoth(page, words.camera.refused.insecure, germanPage.camera.refused.insecure);
    await page.getByRole('radio', { name: words.light.sources.stage, exact: true }).check({ force: true });
    await hand(page, 'A').press('End');
    await becomes(page, { A: words.strip.silent, B: words.strip.sounding });
    await page.keyboard.press('Shift+Escape');
    await page.getByText(insecure).waitFor();

    await button(page, words.bar.copyLink).click();
    await page.getByText(await linkFor(DEFAULT_DESIGN)).waitFor();
    await page.getByRole('link', { name: words.places.names.pitch, exact: true }).click();
    await button(page, pitchWords.search.go).click();
    await page.getByRole('heading', { name: foundWords.table.heading }).waitFor();
    await page.getByRole('link', { name: words.places.names.kit, exact: true }).click();
    const { sound } = kitViewWords;
    await page.getByRole('radio', { name: kitViewWords.sheetNames.sound, exact: true }).check();
    await button(page, sound.listen(sound.points.now)).click();
    await page.getByRole('alert').getByText(sound.refused.insecure).waitFor();
    expect(await designOn(page)).toBe(encodeText(DEFAULT_DESIGN));
    await close();
    await served.cut();
  },
);
