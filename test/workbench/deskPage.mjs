// What the checks of the desk share: pages with one note each, the cursor behind a text of it, commands by name.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { newPage } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { putCursorBehind } from './cursor.mjs';

/** The text on disk of the note that a page shows. */
const shownIn = new Map();

/** Puts the cursor behind the first `text` of the note as it stands on disk. */
export const cursorBehind = (page, text) => putCursorBehind(page, shownIn.get(page), text);

/** Runs a command by its name, through the palette. */
export async function command(page, title) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-widget input').first().waitFor({ timeout: 15_000 });
  await page.keyboard.type(title);
  await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first().waitFor({ timeout: 30_000 });
  await page.keyboard.press('Enter');
}

/** Takes the note back to what is on disk. */
async function revert(page) {
  await command(page, 'File: Revert File');
  await page.locator('.tab.active:not(.dirty)').first().waitFor({ timeout: 15_000 });
}

/** The lines that the editor shows, from top to bottom. */
export const linesShown = async (page) => (await page.locator('.editor-instance .view-line').evaluateAll((lines) => lines
  .map((line) => [line.getBoundingClientRect().top, line.textContent]).sort((a, b) => a[0] - b[0]).map(([, text]) => text)))
  .map((line) => line.replaceAll('\u00a0', ' '));

/** Waits until the lines shown hold every one of `texts`. */
export async function shows(page, ...texts) {
  let lines = [];
  for (const end = Date.now() + 15_000; Date.now() < end;) {
    lines = await linesShown(page);
    if (texts.every((text) => lines.some((line) => line.includes(text)))) return;
    await page.waitForTimeout(50);
  }
  throw new Error(`not shown: ${texts.filter((text) => !lines.some((line) => line.includes(text))).join(' | ')}, but ${lines.filter((line) => line.trim() !== '').join(' ⏎ ').slice(0, 800)}`);
}

/**
 * Runs the checks of each part on a page of its own. A part is `{ folder, file, checks, reverts }`: the file's folder in the
 * repository, and whether each check starts from the note as it is on disk.
 */
export async function runParts(parts, { name, addressOf, browser, pictures, prepare = async () => {} }) {
  const count = { passed: 0, failed: 0, skipped: 0 };
  const failed = async (page, title, error) => {
    count.failed += 1;
    console.log(`    ✘ ${name}: ${title}${error.message}`);
    await page.screenshot({ path: path.join(root, 'workbench/log', `desk-${name}-${count.failed}.png`) }).catch(() => {});
  };
  for (const { folder = 'test/workbench/workspace', file, checks, reverts = false } of parts) {
    const page = await newPage(browser, { width: 1400, height: 1000 });
    shownIn.set(page, readFileSync(path.join(root, folder, file), 'utf8'));
    try {
      await prepare(page);
      await page.goto(addressOf(file));
      await page.locator(`.monaco-editor[data-uri$="${file}"] .view-line`).first().waitFor({ timeout: 90_000 });
      if (file.endsWith('.tank.md')) await page.locator('.codelens-decoration').first().waitFor({ timeout: 60_000 });
      else await page.waitForTimeout(5000);
      await page.locator('.monaco-editor .view-lines').first().click();
      for (const [title, check] of Object.entries(checks)) {
        try {
          await check({ page, pictures, name });
          count.passed += 1;
          console.log(`    ✔ ${name}: ${title}`);
        } catch (error) {
          await failed(page, `${title}\n      `, error);
          await page.keyboard.press('Escape');
        }
        if (reverts) await revert(page);
      }
    } catch (error) {
      await failed(page, '', error);
    } finally {
      await page.context().close();
    }
  }
  return count;
}
