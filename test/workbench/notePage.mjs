// A page of the real editor with one note in it: what the tests by keyboard share.
import fs from 'node:fs/promises';
import path from 'node:path';
import { newPage } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings } from '../../scripts/workbench/server.mjs';
import { handInSettings } from '../../scripts/workbench/webServer.mjs';

/** Opens `file` of `folder`; in the same browser window as `beside`, where one is given. */
export async function openNotePage(browser, server, { folder, file, pictures = null, theme = 'Dark Modern', extension = root, beside = null }) {
  const page = beside ? await beside.context().newPage() : await newPage(browser);
  await handInSettings(page, { ...quietSettings, 'workbench.colorTheme': theme });
  const widget = page.locator('.quick-input-widget');
  const input = widget.locator('input[type=text], input.input').first();
  const onDisk = () => fs.readFile(path.join(folder, file), 'utf8');
  /** Waits until the page, the file or anything else holds what `ask` asks for. */
  const until = async (what, ask, timeout = 20_000) => {
    for (const end = Date.now() + timeout; ;) {
      const answer = await ask();
      if (answer) return answer;
      if (Date.now() > end) throw new Error(`waited ${timeout / 1000} s for ${what}`);
      await page.waitForTimeout(50);
    }
  };
  const here = {
    page, widget, input, onDisk, until,
    picture: async (name) => { if (pictures) await page.screenshot({ path: path.join(pictures, `${name}.png`) }); },
    load: async () => {
      await page.goto(pageAddress(server, { folder, extension, file }));
      await page.locator('.monaco-editor .view-lines').first().waitFor({ timeout: 90_000 });
      await here.focus();
      await page.keyboard.press('Control+Home'); // A page that is loaded again stands where it stood.
      await page.locator('.codelens-decoration').first().waitFor({ timeout: 90_000 }).catch(async (error) => { // The extension has read the note.
        await here.picture('failed-load');
        throw error;
      });
    },
    focus: () => page.keyboard.press('Control+1'),
    /** Runs a command by its title. */
    command: async (title) => {
      await page.keyboard.press('F1');
      await input.waitFor({ timeout: 15_000 });
      await page.keyboard.type(`Evenwater: ${title}`);
      await widget.locator('.monaco-list-row', { hasText: title }).first().waitFor({ timeout: 15_000 });
      await page.waitForTimeout(200);
      await page.keyboard.press('Enter');
    },
    prompt: async (...keys) => {
      for (const key of keys.length > 0 ? keys : ['Control+Alt+Enter']) await page.keyboard.press(key);
      await widget.locator('.quick-input-title', { hasText: 'Log a reading' }).waitFor({ timeout: 30_000 });
      await page.waitForFunction(() => document.activeElement?.closest('.quick-input-widget') !== null, undefined, { timeout: 15_000 });
    },
    /** Notifications with these words, in the notification centre; the test's window shows no toasts. */
    notifications: async (words) => {
      if (await page.locator('.notifications-center .notification-list-item').count() === 0 && await page.locator('[id="status.notifications"] .codicon-bell-dot').count() > 0) {
        await page.locator('[id="status.notifications"]').click();
        await page.waitForTimeout(300);
      }
      return page.locator('.notifications-center .monaco-list-row', { hasText: words });
    },
    closed: () => widget.waitFor({ state: 'hidden', timeout: 20_000 }),
    diskHas: (pattern, timeout) => until(`${pattern} on disk`, async () => pattern.test(await onDisk()), timeout),
    says: (pattern, timeout) => until(`${pattern} in the prompt`, async () => pattern.test(await widget.innerText()), timeout),
  };
  return here;
}
