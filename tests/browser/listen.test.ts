/** The built page under a visitor's hands: keyboard, mouse, files; and what comes out of the loudspeaker meanwhile. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { VOLUME } from '../../src/app/session.ts';
import { rheostatOhms } from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { turnPitch, turnThreshold } from '../../src/design/commands.ts';
import { decodeText, encodeText } from '../../src/design/decode.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { LIMITS } from '../../src/design/limits.ts';
import { DEFAULT_STAGE, stageLux } from '../../src/light/stage.ts';
import { formatQuantity } from '../../src/quantity/format.ts';
import { pairOf, VOICES, type VoiceId } from '../../src/quantity/units.ts';
import { Engine } from '../../src/sound/engine.ts';
import { words } from '../../src/words/en.ts';
import { designWith } from '../circuit/building.ts';
import { peakOf } from '../ear.ts';
import { settingsFrom } from '../sound/playing.ts';
import {
  hear,
  type OpenedPage,
  oneBrowser,
  openPage,
  type PageOptions,
  tapSound,
} from './support/browser.ts';
import {
  becomes,
  button,
  dragTrimmer,
  hand,
  hearBoth,
  hearOnly,
  hearPitch,
  press,
  soundButton,
  states,
  strip,
  tabTo,
  trimmer,
  trimmerBox,
} from './support/visit.ts';

const site = inject('house').site;
const browser = oneBrowser();

const visit = (options: PageOptions = {}): Promise<OpenedPage> =>
  openPage(browser(), site, { prepare: tapSound, ...options });

const { sounding, silent } = words.strip;
const bothSound = { A: sounding, B: sounding };
const ohmsOf = (design: Design, voice: VoiceId) =>
  formatQuantity(rheostatOhms(design.voices[voice].trimmer), 'Ω');
const undoTitle = (page: Page) => button(page, words.bar.undo).getAttribute('title');

/** Gives a text to the page as a file, through its own button. */
async function openFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await button(page, words.bar.open).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

describe('with the keyboard alone', () => {
  test('sound is switched on, a hand silences one voice, Escape lifts it, Shift and Escape end the sound', async () => {
    const { page, close } = await visit();
    await tabTo(page, soundButton(page));
    await page.keyboard.press('Enter');
    await hearBoth(page, DEFAULT_DESIGN);
    expect(await states(page)).toEqual(bothSound);

    await tabTo(page, hand(page, 'A'));
    await press(page, 'PageUp', 9);
    await press(page, 'ArrowRight', 5);
    await hearOnly(page, 'B', DEFAULT_DESIGN);
    await becomes(page, { A: silent, B: sounding });

    await page.keyboard.press('Escape');
    await hearBoth(page, DEFAULT_DESIGN);
    await becomes(page, bothSound);

    await page.keyboard.press('Shift+Escape');
    await hear(page, ({ state, peak }) => state === 'closed' && peak === 0);
    expect(await soundButton(page).isVisible()).toBe(true);
    await close();
  });

  test('the space bar presses too, and the drawing itself takes A, B, L and Escape', async () => {
    const { page, close } = await visit();
    await tabTo(page, soundButton(page));
    await page.keyboard.press('Space');
    await hearBoth(page, DEFAULT_DESIGN);
    await tabTo(page, page.getByRole('group', { name: words.light.stageName }));
    await page.keyboard.press('b');
    await hearOnly(page, 'A', DEFAULT_DESIGN);
    await page.keyboard.press('a');
    await becomes(page, { A: silent, B: silent });
    await hear(page, ({ rms, state }) => state === 'running' && rms < 1e-5);
    await page.keyboard.press('Escape');
    await hearBoth(page, DEFAULT_DESIGN);
    await page.keyboard.press('l');
    await becomes(page, { A: silent, B: silent });
    await page.keyboard.press('l');
    await becomes(page, bothSound);
    await close();
  });

  test('a pitch trimmer is turned by arrows and by typing, and the tone follows the model within 0.1 cent', async () => {
    const { page, close } = await visit();
    await tabTo(page, soundButton(page));
    await page.keyboard.press('Enter');
    await tabTo(page, hand(page, 'B'));
    await page.keyboard.press('End');
    await hearPitch(page, 'A', DEFAULT_DESIGN);

    await tabTo(page, trimmer(page, 'A'));
    const { rotation } = DEFAULT_DESIGN.voices.A.trimmer;
    await press(page, 'ArrowUp', 5);
    // The first step goes to the next whole per cent.
    const turned = turnPitch('A', (Math.floor(rotation * 100 + 1e-6) + 5) / 100)(DEFAULT_DESIGN);
    await hearPitch(page, 'A', turned);
    await press(page, 'Shift+ArrowDown', 3);
    await hearPitch(page, 'A', turnPitch('A', turned.voices.A.trimmer.rotation - 0.003)(DEFAULT_DESIGN));

    const box = trimmerBox(page, 'A');
    const type = async (text: string) => {
      await tabTo(page, box);
      await page.keyboard.press('Control+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await type('18k');
    const { trimmer: part } = DEFAULT_DESIGN.voices.A;
    const end = rheostatOhms(part, 0);
    const typed = turnPitch('A', (18_000 - end) / (part.ohms - end))(DEFAULT_DESIGN);
    expect(await box.inputValue()).toBe(formatQuantity(18_000, 'Ω'));
    await hearPitch(page, 'A', typed);
    await type('47 %');
    const share = turnPitch('A', 0.47)(DEFAULT_DESIGN);
    expect(await box.inputValue()).toBe(ohmsOf(share, 'A'));
    await hearPitch(page, 'A', share);

    await type('a little');
    const said = words.field.problem({ kind: 'unreadable', read: 'a little', quantity: 'resistance' });
    await page.getByText(said).waitFor();
    expect(said).toContain('4k7');
    expect(await box.inputValue()).toBe('a little');
    expect(await box.getAttribute('aria-invalid')).toBe('true');
    await hearPitch(page, 'A', share);
    await page.keyboard.press('Escape');
    expect(await box.inputValue()).toBe(ohmsOf(share, 'A'));
    await type('900k');
    const refused = page.getByText(words.field.rotationOrOhms('900k', 900_000, { min: end, max: part.ohms }));
    await refused.waitFor();
    await hearPitch(page, 'A', share);
    // Another place of the trimmer takes the refused text away.
    await button(page, words.bar.undo).click();
    await refused.waitFor({ state: 'detached' });
    expect(await box.inputValue()).toBe(formatQuantity(18_000, 'Ω'));
    await close();
  });
});

describe('sound', () => {
  /** Counts what could sound, from before the page's own first line on. */
  const countContexts = async (page: Page) => {
    await tapSound(page);
    await page.addInitScript(() => {
      const made: boolean[] = [];
      Object.assign(globalThis, { made });
      globalThis.AudioContext = class extends AudioContext {
        constructor(options?: AudioContextOptions) {
          super(options);
          made.push(navigator.userActivation.isActive);
        }
      };
    });
  };
  const contextsMade = (page: Page) => page.evaluate(() => Reflect.get(globalThis, 'made') as boolean[]);

  test('does not begin, nor is its module asked for, before the press that wants it', async () => {
    const { page, requests, close } = await visit({ prepare: countContexts });
    await becomes(page, bothSound);
    const before = requests.length;
    await trimmer(page, 'A').press('ArrowUp');
    await hand(page, 'A').press('End');
    await becomes(page, { A: silent, B: sounding });
    expect(await contextsMade(page)).toEqual([]);
    expect(requests.length).toBe(before);
    await soundButton(page).press('Enter');
    await hear(page, ({ rms }) => rms > 0.01);
    expect(await contextsMade(page)).toEqual([true]);
    expect(requests.length).toBeGreaterThan(before);
    await close();
  });

  test('is the model’s, sample by sample, risen in a straight ramp of at least 30 ms, and never loud', async () => {
    const { page, close } = await visit();
    const { samples, sampleRate } = await caughtStart(page);
    expect(peakOf({ samples, sampleRate })).toBeLessThanOrEqual(0.125);
    // An overshoot is a matter of single samples.
    const beyond = samples.filter((sample) => Math.abs(sample) > 0.1);
    expect(beyond.length).toBeLessThan(0.01 * samples.length);

    const settings = settingsFrom(DEFAULT_DESIGN);
    const model = new Float32Array(samples.length + sampleRate);
    new Engine(sampleRate, settings, { kind: 'steady', lux: stageLux(DEFAULT_STAGE) }).render(model);
    const full = 10 ** (VOLUME.usual / 20) / settings.jack.boundVolts;
    const first = samples.findIndex((sample) => sample !== 0);
    expect(first).toBeGreaterThan(0);
    // The worklet ran for a while behind a shut gain: how long tells the place where the ends agree.
    const tail = samples.length - 500;
    let ahead = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let shift = -first; shift < sampleRate - first; shift += 1) {
      let apart = 0;
      for (let n = tail; n < samples.length; n += 1)
        apart = Math.max(apart, Math.abs(samples[n]! - full * model[n + shift]!));
      if (apart < least) [least, ahead] = [apart, shift];
    }
    expect(least).toBeLessThan(1e-6);

    /** The gain at each moment that can tell it, as a share of the usual one. */
    const gains = [...samples.keys()].slice(first, tail).flatMap((n) => {
      const whole = full * model[n + ahead]!;
      return Math.abs(whole) > 0.02 ? [{ seconds: n / sampleRate, share: samples[n]! / whole }] : [];
    });
    const at = (share: number) => gains.find((gain) => gain.share >= share)!.seconds;
    expect(at(0.9) - at(0.1)).toBeGreaterThanOrEqual(0.8 * 0.03);
    // Straight: half way in the middle, neither before nor after.
    expect((at(0.5) - at(0.1)) / (at(0.9) - at(0.1))).toBeCloseTo(0.5, 1);
    gains.slice(1).forEach(({ share }, i) => {
      expect(share).toBeGreaterThan(gains[i]!.share - 1e-3);
      expect(share).toBeLessThan(1.001);
    });
    await close();
  });

  test('dies away before it is cut off', async () => {
    const { page, close } = await visit();
    await soundButton(page).press('Enter');
    await hearBoth(page, DEFAULT_DESIGN);
    const last = page.evaluate(
      () =>
        new Promise<Float32Array>((resolve) => {
          const tap = Reflect.get(globalThis, 'soundTap') as AnalyserNode;
          let latest = new Float32Array();
          const look = () => {
            if (tap.context.state !== 'running') return resolve(latest);
            latest = new Float32Array(tap.fftSize);
            tap.getFloatTimeDomainData(latest);
            setTimeout(look, 5);
          };
          look();
        }),
    );
    await page.keyboard.press('Shift+Escape');
    const samples = await last;
    expect(samples.some((sample) => Math.abs(sample) > 0.04)).toBe(true);
    expect(samples.subarray(-200).every((sample) => Math.abs(sample) < 1e-4)).toBe(true);
    await close();
  });

  test('that was stopped while it was still starting does not come', async () => {
    const { page, close } = await visit();
    let deliver = () => {};
    const held = new Promise<void>((resolve) => {
      deliver = resolve;
    });
    await page.route('**/*.js', async (route) => {
      await held;
      await route.continue();
    });
    await soundButton(page).press('Enter');
    await soundButton(page, words.bar.soundStarting).waitFor();
    await page.keyboard.press('Shift+Escape');
    deliver();
    const { soundOn, soundOff } = words.bar;
    await page.getByRole('button', { name: new RegExp(`^(${soundOn}|${soundOff})$`) }).waitFor();
    expect(await soundButton(page, soundOff).count()).toBe(0);
    await hear(page, ({ state, peak }) => peak === 0 && (state === 'none' || state === 'closed'));
    await close();
  });

  test.each([
    [
      'module',
      (page: Page) => page.route('**/*.js', (route) => route.abort()),
      [/Failed to load|Failed to fetch|net::ERR_FAILED/],
    ],
    [
      'unsupported',
      (page: Page) => page.evaluate(() => Reflect.deleteProperty(BaseAudioContext.prototype, 'audioWorklet')),
      [],
    ],
  ] as const)('that cannot come says why (%s), and the page works on', async (trouble, spoil, allow) => {
    const { page, close } = await visit({ allow });
    await spoil(page);
    await soundButton(page).press('Enter');
    await page.getByText(words.sound.trouble[trouble]).waitFor();
    expect(await soundButton(page).isEnabled()).toBe(true);
    await hand(page, 'A').press('End');
    await becomes(page, { A: silent, B: sounding });
    await close();
  });

  test('that is steady for 20 seconds fades and says so, a key brings it back, and an exhibition keeps it', async () => {
    const { page, close } = await visit({
      prepare: async (unopened) => {
        await unopened.clock.install();
        await tapSound(unopened);
      },
    });
    await soundButton(page).press('Enter');
    await hearBoth(page, DEFAULT_DESIGN);
    const faded = page.getByText(words.sound.faded);
    await page.clock.fastForward(15_000);
    await audioPasses(page, 0.3);
    expect(await faded.count()).toBe(0);
    await page.clock.fastForward(6_000);
    await faded.waitFor();
    await hear(page, ({ rms, state }) => state === 'running' && rms < 1e-4);
    await page.keyboard.press('Tab');
    await faded.waitFor({ state: 'hidden' });
    await hearBoth(page, DEFAULT_DESIGN);

    await page.getByRole('checkbox', { name: words.sound.exhibition }).press('Space');
    await page.clock.fastForward(60_000);
    await audioPasses(page, 0.5);
    expect(await faded.count()).toBe(0);
    await hearBoth(page, DEFAULT_DESIGN);
    await close();
  });
});

/** Waits until the sound has gone on for some seconds of its own clock. */
async function audioPasses(page: Page, seconds: number): Promise<void> {
  await page.evaluate((wanted) => {
    const { context } = Reflect.get(globalThis, 'soundTap') as AnalyserNode;
    const end = context.currentTime + wanted;
    return new Promise<void>((resolve) => {
      const look = () => (context.currentTime >= end ? resolve() : requestAnimationFrame(look));
      look();
    });
  }, seconds);
}

/** Switches the sound on and gives what was heard from the silence before it. */
async function caughtStart(page: Page): Promise<{ samples: Float32Array; sampleRate: number }> {
  const caught = page.evaluate(
    () =>
      new Promise<{ samples: Float32Array; sampleRate: number }>((resolve) => {
        const samples = new Float32Array(32768);
        const look = () => {
          const tap: unknown = Reflect.get(globalThis, 'soundTap');
          if (tap instanceof AnalyserNode) {
            tap.getFloatTimeDomainData(samples);
            const first = samples.findIndex((sample) => sample !== 0);
            if (first >= 0 && first < samples.length / 2)
              return resolve({ samples, sampleRate: tap.context.sampleRate });
          }
          requestAnimationFrame(look);
        };
        look();
      }),
  );
  await soundButton(page).press('Enter');
  return caught;
}

describe('with the mouse', () => {
  /** Where the sensor's own words stand in the drawing: straight below the sensor. */
  const sensorIn = async (page: Page, voice: VoiceId) => {
    const label = page
      .getByRole('group', { name: words.light.stageName })
      .getByText(new RegExp(`^${voice} .*lx$`));
    const box = (await label.boundingBox())!;
    return { x: box.x + box.width / 2, y: box.y };
  };

  test('a hand dragged over a sensor silences its voice, and dragged away gives it back', async () => {
    const { page, close } = await visit();
    await soundButton(page).click();
    await hearBoth(page, DEFAULT_DESIGN);
    const drawing = page.getByRole('group', { name: words.light.stageName });
    await drawing.scrollIntoViewIfNeeded();
    const edge = (await drawing.boundingBox())!;
    const { x, y } = await sensorIn(page, 'A');
    const height = y - edge.height / 4;
    await page.mouse.move(edge.x + 5, height);
    await page.mouse.down();
    await page.mouse.move(x, height, { steps: 8 });
    await hearOnly(page, 'B', DEFAULT_DESIGN);
    await becomes(page, { A: silent, B: sounding });
    await page.mouse.move(edge.x + 5, height, { steps: 8 });
    await page.mouse.up();
    await hearBoth(page, DEFAULT_DESIGN);

    // With nothing holding it there, a hand goes back when it is let go.
    await page.getByRole('checkbox', { name: words.light.stays }).uncheck();
    await drawing.scrollIntoViewIfNeeded();
    const again = await sensorIn(page, 'A');
    await page.mouse.move(again.x, again.y - edge.height / 4);
    await page.mouse.down();
    await becomes(page, { A: silent, B: sounding });
    await page.mouse.up();
    await becomes(page, bothSound);
    await close();
  });

  test('one drag of a trimmer is one step to undo and redo, and Escape in the middle of one leaves no trace', async () => {
    const { page, close } = await visit();
    const before = await trimmerBox(page, 'A').inputValue();
    expect(await undoTitle(page)).toBe(words.bar.undoWhat(null));
    const canvas = page.locator('live-traces canvas');
    await canvas.evaluate((element) => {
      element.dataset['drawn'] = 'before';
    });
    await dragTrimmer(page);
    await page.mouse.up();
    // The traces went on in the same drawing: to make it anew at each move costs more than all the rest.
    expect(await canvas.getAttribute('data-drawn')).toBe('before');
    const after = await trimmerBox(page, 'A').inputValue();
    expect(after).not.toBe(before);
    expect(await undoTitle(page)).toBe(words.bar.undoWhat(words.labels.turned('A')));
    await page.keyboard.press('Control+z');
    expect(await trimmerBox(page, 'A').inputValue()).toBe(before);
    expect(await button(page, words.bar.undo).isDisabled()).toBe(true);
    await page.keyboard.press('Control+Shift+z');
    expect(await trimmerBox(page, 'A').inputValue()).toBe(after);
    expect(await button(page, words.bar.redo).isDisabled()).toBe(true);

    await hand(page, 'B').press('End');
    await becomes(page, { A: sounding, B: silent });
    await button(page, words.bar.undo).click();
    await dragTrimmer(page);
    expect(await trimmerBox(page, 'A').inputValue()).not.toBe(before);
    await page.keyboard.press('Escape');
    expect(await trimmerBox(page, 'A').inputValue()).toBe(before);
    await page.mouse.move(10, 10, { steps: 3 });
    await page.mouse.up();
    expect(await trimmerBox(page, 'A').inputValue()).toBe(before);
    expect(await undoTitle(page)).toBe(words.bar.undoWhat(null));
    expect(await hand(page, 'B').getAttribute('aria-valuetext')).toMatch(/^100/);
    await page.keyboard.press('Escape');
    await becomes(page, bothSound);
    await close();
  });
});

describe('files and keeping', () => {
  test('a saved design opens again as it was', async () => {
    const { page, close } = await visit();
    await trimmer(page, 'A').press('End');
    const download = page.waitForEvent('download');
    await button(page, words.bar.save).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/^[\p{L}\p{N}-]+\.json$/u);
    const text = readFileSync(await file.path(), 'utf8');
    const changed = turnPitch('A', 1)(DEFAULT_DESIGN);
    expect(decodeText(text)).toEqual({ ok: true, design: changed });
    await button(page, words.bar.undo).click();
    expect(await trimmerBox(page, 'A').inputValue()).toBe(ohmsOf(DEFAULT_DESIGN, 'A'));
    await openFile(page, 'mine.json', text);
    await page.getByText(words.notice.opened(changed.name)).waitFor();
    expect(await trimmerBox(page, 'A').inputValue()).toBe(ohmsOf(changed, 'A'));
    await button(page, words.bar.undo).click();
    expect(await trimmerBox(page, 'A').inputValue()).toBe(ohmsOf(DEFAULT_DESIGN, 'A'));
    await close();
  });

  const wrong = structuredClone(DEFAULT_DESIGN) as { voices: { A: { raOhms: number } } };
  wrong.voices.A.raOhms = -5;

  test('a file that is no design, or has one wrong value, is refused with the reason, and the design stays', async () => {
    const { page, close } = await visit();
    await trimmer(page, 'A').press('End');
    const mine = await trimmerBox(page, 'A').inputValue();
    const step = await undoTitle(page);
    const alert = page.getByRole('alert');
    for (const [name, text, reason] of [
      ['cut-off.json', encodeText(DEFAULT_DESIGN).slice(0, 300), words.notice.notJson],
      ['recipe.json', '{"format": "recipe"}', words.notice.notDesign],
      [
        'wrong.json',
        JSON.stringify(wrong),
        words.notice.at('voices.A.raOhms', '-5', words.notice.accepts.number(LIMITS.raOhms)),
      ],
    ] as const) {
      await openFile(page, name, text);
      await alert.getByText(words.notice.refused(name)).waitFor();
      expect(await alert.textContent()).toContain(reason);
      expect(await trimmerBox(page, 'A').inputValue()).toBe(mine);
      expect(await undoTitle(page)).toBe(step);
      await button(page, words.notice.dismiss).click();
      await alert.waitFor({ state: 'hidden' });
    }
    await close();
  });

  test('the design and the look are there again after a reload', async () => {
    const { page, close } = await visit();
    await trimmer(page, 'B').press('End');
    await page.getByRole('radio', { name: words.bar.looks.dark }).check();
    const mine = await trimmerBox(page, 'B').inputValue();
    expect(mine).not.toBe(ohmsOf(DEFAULT_DESIGN, 'B'));
    await page.reload();
    expect(await trimmerBox(page, 'B').inputValue()).toBe(mine);
    expect(await page.getByRole('radio', { name: words.bar.looks.dark }).isChecked()).toBe(true);
    await close();
  });

  const presets = readdirSync('presets')
    .filter((name) => name.endsWith('.json'))
    .map((name) => {
      const decoded = decodeText(readFileSync(`presets/${name}`, 'utf8'));
      if (!decoded.ok) throw new Error(`${name} does not decode`);
      return decoded.design;
    });

  test('each ready design opens and sounds as its model', async () => {
    const { page, close } = await visit();
    await trimmer(page, 'A').press('End');
    await soundButton(page).click();
    expect(presets.length).toBeGreaterThanOrEqual(2);
    for (const design of presets) {
      const { name } = design;
      await page.getByRole('combobox', { name: words.bar.designs }).selectOption({ label: name });
      await page.getByText(words.notice.opened(name)).waitFor();
      expect(await page.getByRole('textbox', { name: words.bar.name }).inputValue()).toBe(name);
      // A voice that sounds in shade gets its hand.
      for (const id of VOICES)
        await hand(page, id).press(design.voices[id].polarity === 'shade' ? 'End' : 'Home');
      const { A, B } = instrumentOf(design).voices;
      // Voices in a simple ratio beat: their lines cannot be told apart, so that both are on must do.
      const beat = [1, 2, 3, 4].some((n) => Math.abs(n * A.cycle.frequency - B.cycle.frequency) < 5);
      if (beat) await becomes(page, bothSound);
      else
        await hearBoth(
          page,
          design,
          pairOf((id) => (design.voices[id].polarity === 'shade' ? 5 : 300)),
        );
    }
    await close();
  });
});

test('a gate at its trip point is called chattering, and the words change no more than three times a second', async () => {
  const { A: lux } = stageLux(DEFAULT_STAGE);
  const design = tripAt(lux, {
    ...designWith({ voices: { hysteresisOhms: null } }),
    noise: DEFAULT_DESIGN.noise,
  });
  const { page, close } = await visit();
  await openFile(page, 'trip.json', encodeText(design));
  await soundButton(page).press('Enter');
  // Independent noise every 1/3 ms stands on the other side every second time: 3000 / 4 changes there and back.
  const rate = async () => Number(/\d+/.exec((await states(page)).A)?.[0]);
  await expect.poll(rate, { timeout: 10_000 }).toBeGreaterThan(650);
  expect(await rate()).toBeLessThan(850);
  await page.getByText(words.why.chatter('A')).waitFor();
  const seen = await strip(page).evaluate(
    (element) =>
      new Promise<{ time: number; text: string }[]>((resolve) => {
        const rows: { time: number; text: string }[] = [];
        const look = (time: number) => {
          // The level beside the gates is no picture of them.
          const text = (element.textContent ?? '').replaceAll(/−\d+.dB/g, '');
          if (text !== rows.at(-1)?.text) rows.push({ time, text });
          if (time > rows[0]!.time + 3000) resolve(rows);
          else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      }),
  );
  const changes = seen.slice(1).map(({ time }) => time);
  // On the whole three times a second; a busy computer may show one change late and so nearer to the next.
  expect(changes.length).toBeLessThanOrEqual(9);
  const inOneSecond = changes.map((from) => changes.filter((t) => t >= from && t < from + 1000).length);
  // Three flashes would be six changes.
  expect(Math.max(0, ...inOneSecond)).toBeLessThanOrEqual(4);
  await close();
});

/** The design with its shared threshold turned until voice A trips at a light. */
function tripAt(lux: number, design: Design): Design {
  let [low, high] = [0, 1];
  const at = (rotation: number) => turnThreshold('A', rotation)(design);
  const trip = (rotation: number) => instrumentOf(at(rotation)).voices.A.tripLux.on ?? 0;
  const rises = trip(1) > trip(0);
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (trip(middle) < lux === rises) low = middle;
    else high = middle;
  }
  return at(low);
}

test('drawings fit the paper, and are as wide as the screen again after it', async () => {
  const { page, close } = await visit({ viewport: { width: 1600, height: 900 } });
  const drawing = page.locator('svg.chart').first();
  await drawing.waitFor();
  await page.evaluate(() => {
    const widths = (root: ParentNode): number[] =>
      [...root.querySelectorAll('*')].flatMap((one) => [
        ...(one.matches('svg.chart') ? [one.getBoundingClientRect().width] : []),
        ...(one.shadowRoot ? widths(one.shadowRoot) : []),
      ]);
    const seen: Record<string, number[]> = { before: widths(document) };
    for (const moment of ['beforeprint', 'afterprint'])
      window.addEventListener(moment, () => {
        seen[moment] = widths(document);
      });
    Object.assign(globalThis, { seen });
  });
  await page.pdf({ format: 'A4' });
  const seen = await page.evaluate(() => Reflect.get(globalThis, 'seen') as Record<string, number[]>);
  // A4 between margins of 10 mm and the page's own, 28 px at each side.
  const paper = ((210 - 2 * 10) * 96) / 25.4 - 2 * 28;
  expect(Math.max(...seen['before']!)).toBeGreaterThan(paper);
  expect(seen['beforeprint']).toHaveLength(seen['before']!.length);
  for (const width of seen['beforeprint']!) expect(width).toBeLessThanOrEqual(paper);
  expect(seen['afterprint']).toEqual(seen['before']);
  await close();
});
