import { inject, test } from 'vitest';
import { launch, openPage } from './support/browser.ts';
test('x', async () => {
  const browser = await launch();
  for (let i = 0; i < 2; i++) {
  const { page, close } = await openPage(browser, inject('house').site);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const { metrics } = await cdp.send('Performance.getMetrics');
  console.log(metrics.filter((m: any) => /Duration|Timestamp|Navigation|DomContent/.test(m.name)).map((m: any) => `${m.name} ${m.value.toFixed(2)}`).join(', '));
  console.log(await page.evaluate(() => [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource'), ...performance.getEntriesByType('paint')].map((e: any) => `${e.name.slice(-40)} ${e.startTime.toFixed(0)} ${e.responseStart?.toFixed(0)} ${e.responseEnd?.toFixed(0)} ${e.domInteractive?.toFixed(0)} ${e.loadEventEnd?.toFixed(0)} ${e.encodedBodySize}`).join('\n')));
  await close(); }
  await browser.close();
});
