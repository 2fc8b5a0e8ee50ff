import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { Engine } from '../../src/sound/engine.ts';
import { settingsFrom, steady } from '../sound/playing.ts';
import { designWith } from '../circuit/building.ts';
import { launch, type OpenedPage, openModulePage, withModule } from './support/browser.ts';
import type { OfflineTake, OfflineWish } from './support/offline.ts';

let browser: Browser; let opened: OpenedPage;
beforeAll(async () => { browser = await launch(); opened = await openModulePage(browser); });
afterAll(async () => { await browser.close(); });
const render = (wish: Partial<OfflineWish> & Pick<OfflineWish, 'start'>) => withModule(opened.page, '/tests/browser/support/offline.ts', ({ renderOffline }: typeof import('./support/offline.ts'), w: OfflineWish) => renderOffline(w), { messages: [], seconds: 1, sampleRate: 48000, gain: 1, patience: 15, ...wish });
test('x', async () => {
  const settings = settingsFrom(designWith());
  const other = settingsFrom(designWith({ timer: 'cmos' }));
  for (let i = 0; i < 15; i++) {
    const t0 = performance.now();
    const take = await render({ start: { settings, program: steady(300, 300) }, messages: [{ kind: 'aim', lux: { A: 2, B: 300 }, seconds: 0.05 }, { kind: 'settings', settings: other }] });
    const t1 = performance.now();
    const engine = new Engine(48000, settings, steady(300, 300));
    engine.aim({ A: 2, B: 300 }, 0.05); engine.setSettings(other);
    const out = new Float32Array(48000);
    engine.render(out);
    let worst = 0, at = -1;
    out.forEach((v, j) => { const w = v * (1 / other.jack.boundVolts); const d = Math.abs(w - take.samples[j]!); if (d > worst) { worst = d; at = j; } });
    console.log(i, worst, at, take.frames.length, (t1 - t0).toFixed(0), take.frames[0], take.frames.at(-1));
  }
});
