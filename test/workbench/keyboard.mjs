// Drives *New Experiment* by keyboard alone, from the command palette to a plan without problems, in both hosts.
import path from 'node:path';
import { newPage } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings, startServer } from '../../scripts/workbench/server.mjs';
import { copyFixtures } from '../../scripts/workbench/suites.mjs';
import { handInSettings, startWebServer } from '../../scripts/workbench/webServer.mjs';

/** Answers in the order of the questions; an empty one is skipped. */
const answers = ['Overnight oxygen', 'Does a lid lower the minimum?', '', 'left, right', '', 'Zwolle, 52.51, 6.09', '2026-06-01 20:00', '', 'often', ''];

const input = (page) => page.locator('.quick-input-widget input[type="text"], .quick-input-widget input.input').first();

/** Types into the question at `step`; presses nothing but keys. */
export async function answer(page, step, text) {
  await page.locator('.quick-input-widget .quick-input-title', { hasText: new RegExp(`\\(?${step}/10`) }).waitFor({ timeout: 30_000 });
  await page.waitForFunction(() => document.activeElement?.closest('.quick-input-widget') !== null, undefined, { timeout: 15_000 });
  if (text !== '') await page.keyboard.type(text);
  await page.waitForTimeout(250);
  await page.keyboard.press('Enter');
}

async function drive(page) {
  await page.locator('.monaco-editor').first().waitFor({ timeout: 90_000 });
  await page.locator('.editor-instance .view-line').first().waitFor({ timeout: 90_000 });
  await page.keyboard.press('F1');
  await input(page).waitFor({ timeout: 15_000 });
  await page.keyboard.type('Evenwater: New Experiment');
  await page.locator('.quick-input-list .monaco-list-row', { hasText: 'New Experiment' }).first().waitFor({ timeout: 30_000 });
  await page.keyboard.press('Enter');
  for (const [index, text] of answers.entries()) {
    await answer(page, index + 1, text);
    if (text !== 'often') continue;
    // The wrong answer stays until it is mended.
    await page.locator('.quick-input-message', { hasText: /cannot be read/ }).waitFor({ timeout: 15_000 });
    for (let count = 0; count < text.length; count += 1) await page.keyboard.press('Backspace');
    await answer(page, index + 1, '20 min');
  }
  await page.locator('.tab.active', { hasText: 'does-a-lid-lower-the-minimum.tank.md' }).waitFor({ timeout: 30_000 });
  const editor = page.locator('.editor-instance .monaco-editor').last();
  await editor.getByText('Does a lid lower the minimum?').first().waitFor({ timeout: 30_000 });
  await page.locator('.codelens-decoration', { hasText: 'Plan: no problems' }).first().waitFor({ timeout: 60_000 });
  const problems = await page.locator('.statusbar [id="status.problems"]').first().getAttribute('aria-label');
  // The instructions that the author is to write over are information before the first reading.
  if (/\b(?:errors|warnings): [1-9]/i.test(problems ?? 'errors: 1')) throw new Error(`the new plan has other problems: ${problems}`);
}

async function runIn(name, address, browser, prepare = async () => {}) {
  const page = await newPage(browser, { width: 1400, height: 900 });
  try {
    await prepare(page);
    await page.goto(address);
    await drive(page);
    console.log(`    ✔ ${name}: New Experiment by keyboard alone`);
    return 0;
  } catch (error) {
    console.log(`    ✘ ${name}: New Experiment by keyboard alone\n      ${error.message}`);
    await page.screenshot({ path: path.join(root, 'workbench/log', `keyboard-${name}.png`) }).catch(() => {});
    return 1;
  } finally {
    await page.context().close();
  }
}

/** In the Node host's workbench and in the browser-only one. */
export async function runKeyboard(browser) {
  const notes = await copyFixtures();
  const server = await startServer();
  const web = await startWebServer({ folder: notes.folder, extension: root });
  try {
    const first = await runIn('node-host', pageAddress(server, { folder: notes.folder, file: 'plain.md', extension: root }), browser);
    const payload = JSON.stringify([['skipWelcome', 'true'], ['openFile', 'vscode-test-web://mount/plain.md']]);
    const second = await runIn('web-host', `${web.origin}/?${new URLSearchParams({ payload })}`, browser, (page) => handInSettings(page, quietSettings));
    return { passed: 2 - first - second, failed: first + second, skipped: 0 };
  } finally {
    await server.stop();
    await web.stop();
    await notes.remove();
  }
}
