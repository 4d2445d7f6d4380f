// The cursor of the active editor, by keyboard. A busy machine now and then swallows a key, so a place is asked for again, as a person would.
import { expect } from './checks.mjs';

/** Waits until the cursor stands there, both counted from 1. */
export const cursorAt = (page, line, column, timeout = 15_000) => page.locator('.statusbar [id="status.editor.selection"]', { hasText: `Ln ${line}, Col ${column}` }).first().waitFor({ timeout });

/** Puts the cursor behind the first `text` of `note`, which the active editor shows. */
export async function putCursorBehind(page, note, text) {
  const [before] = note.split(text, 1);
  expect(before.length < note.length, `${text} does not stand in the note`);
  const lines = `${before}${text}`.split('\n');
  const [line, column] = [lines.length, lines.at(-1).length + 1];
  const input = page.locator('.quick-input-widget input').first();
  const tries = 4;
  for (let attempt = 1; ; attempt += 1) {
    try {
      await page.keyboard.press('Control+G');
      await input.waitFor({ timeout: 5000 });
      await input.fill(`:${line}:${column}`, { timeout: 5000 });
      await page.keyboard.press('Enter');
      await cursorAt(page, line, column, 5000);
      await page.waitForFunction(() => document.activeElement?.closest('.editor-instance .monaco-editor') !== null, undefined, { timeout: 5000 });
      return;
    } catch (error) {
      if (attempt === tries) throw error;
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+1'); // Back from a panel or a box into the editor.
    }
  }
}
