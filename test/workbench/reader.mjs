// What a screen reader is told in the real editor: names in the browser's own accessibility tree, with the editor set for screen readers.
import { expect } from './checks.mjs';
import { openDesk } from './readingsDesk.mjs';

export async function runReader(browser, { pictures = null } = {}) {
  const desk = await openDesk(browser, { pictures, settings: { 'editor.accessibilitySupport': 'on' } });
  const { page, widget, keys, picture } = desk;
  const devtools = await page.context().newCDPSession(page);
  /** The accessible names and roles of the elements that an expression gives. */
  const told = async (expression) => {
    const { result } = await devtools.send('Runtime.evaluate', { expression });
    if (!result.objectId) return null;
    const { nodes } = await devtools.send('Accessibility.getPartialAXTree', { objectId: result.objectId, fetchRelatives: false });
    return { name: nodes[0].name?.value ?? '', role: nodes[0].role?.value ?? '' };
  };
  /** The item in front of the prompt: what is spoken when it changes. */
  const inFront = async () => (await told('document.getElementById(document.activeElement?.getAttribute("aria-activedescendant"))'))?.name ?? '';
  const comesToFront = async (pattern) => {
    for (const end = Date.now() + 15_000; !pattern.test(await inFront()); await page.waitForTimeout(50)) expect(Date.now() < end, `in front stands ${await inFront()}, not ${pattern}`);
  };
  const { check } = desk;
  const prompt = async () => {
    await page.keyboard.press('Control+Alt+Enter');
    await widget.waitFor({ state: 'visible', timeout: 30_000 });
    await page.waitForFunction(() => document.activeElement?.closest('.quick-input-widget') !== null, undefined, { timeout: 15_000 });
  };
  const leave = async () => { await page.keyboard.press('Escape'); await widget.waitFor({ state: 'hidden', timeout: 20_000 }); };
  try {
    await check('the prompt says what it asks for, then each value typed with its change', async () => {
      await prompt();
      await comesToFront(/^1 of 3: mat\.DO, mat, in mg\/L/);
      await page.keyboard.type('21:30 8.26 ');
      await comesToFront(/^mat\.DO\s+8\.26 mg\/L, \+0\.01 since 21:00 \(8\.25\)/);
      await page.keyboard.type('24.7 ');
      await comesToFront(/^mat\.T\s+24\.7 °C, −0\.1 since 21:00 \(24\.8\)/);
      await leave();
    });
    await check('what looks wrong comes to the front, and again with what Enter does', async () => {
      await prompt();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('21:30 8.26 76.3 8.29');
      await comesToFront(/^mat\.T 76\.3 looks like °F/);
      await page.keyboard.press('Enter');
      await comesToFront(/^Enter once more logs it all the same, mat\.T 76\.3 looks like °F/);
      const names = await widget.locator('.monaco-list-row').evaluateAll((rows) => rows.map((row) => row.getAttribute('aria-label') ?? ''));
      expect(names.length >= 5, `the prompt has ${names.length} lines`);
      for (const name of names) expect(name !== '' && !/^(?:arrow-right|pass|warning|error|check|circle-outline)\b/.test(name), `an icon is read out: ${name}`);
      await picture('reader-warning');
      await leave();
    });
    await check('the note’s item in the status bar says claims and problems', async () => {
      const status = await told('[...document.querySelectorAll(".statusbar-item a")].find((each) => /Evenwater:/.test(each.getAttribute("aria-label") ?? ""))');
      expect(status?.role === 'button' && /Evenwater: .*claims.*; \d+ /.test(status.name), JSON.stringify(status));
    });
    await check('a hover opens by keyboard as text that can be walked through', async () => {
      await desk.cursorAt('8.24');
      await keys('Control+k', 'Control+i');
      await page.locator('.monaco-hover:not(.hidden)', { hasText: '8.24 mg/L' }).first().waitFor({ timeout: 15_000 });
      await page.keyboard.press('Alt+F2');
      await page.locator('.accessible-view', { hasText: '8.24 mg/L' }).first().waitFor({ timeout: 15_000 });
    });
  } finally {
    await desk.close();
  }
  return desk.count;
}
