// A note with a few readings in the real editor, and what a keeper does there by keyboard: run a command, answer, go to a cell, save.
// All data are invented.
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { newPage } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings, startServer } from '../../scripts/workbench/server.mjs';
import { handInSettings } from '../../scripts/workbench/webServer.mjs';
import { checks, expect } from './checks.mjs';

export const plan = `# A night to change

\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment, plants: water lettuce}
  open: {role: control, plants: none}
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 2026-03-15 08:00, end: 2026-03-15 08:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
  T: {what: water temperature, unit: degC}
  P: {what: air pressure, unit: hPa, in: room}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  open.DO
20:00    8.21   24.9     8.31
20:30    8.24   24.9     8.30
21:00    8.25   24.8     8.30
\`\`\`

The end.
`;

/** Opens the plan, with other files beside it (or, by a path with `..`, above it), in a workbench of its own. */
export async function openDesk(browser, { pictures = null, theme = 'Dark Modern', files = {}, settings = {} }) {
  const parent = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-changes-'));
  const folder = path.join(parent, 'notes');
  await fs.mkdir(folder);
  const file = path.join(folder, 'night.tank.md');
  await fs.writeFile(file, plan);
  for (const [name, text] of Object.entries(files)) await fs.writeFile(path.join(folder, name), text);
  const server = await startServer({ settings });
  const page = await newPage(browser);
  await handInSettings(page, { ...quietSettings, 'workbench.colorTheme': theme });
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'], { origin: server.origin });
  const onDisk = () => fs.readFile(file, 'utf8');
  const widget = page.locator('.quick-input-widget');
  const input = widget.locator('input[type=text], input.input').first();
  const rowOf = (text) => widget.locator('.monaco-list-row', { hasText: text }).first();
  const picture = async (name) => { if (pictures) await page.screenshot({ path: path.join(pictures, `${name}.png`) }); };
  const keys = async (...all) => { for (const key of all) { await page.keyboard.press(key); await page.waitForTimeout(120); } };

  /** Types into the question with this title, and answers it. */
  const answer = async (title, text) => {
    await widget.locator('.quick-input-title', { hasText: title }).waitFor({ timeout: 15_000 });
    await page.waitForTimeout(200);
    await page.keyboard.type(text);
    await page.waitForTimeout(350);
    await page.keyboard.press('Enter');
  };
  const command = async (name) => {
    await page.keyboard.press('F1');
    await input.waitFor({ timeout: 15_000 });
    await page.keyboard.type(name);
    await rowOf(name.replace('Evenwater: ', '')).waitFor({ timeout: 15_000 });
    await page.waitForTimeout(200);
    await page.keyboard.press('Enter');
  };
  /** Puts the cursor behind the first letter of a text in the active editor's file. */
  const cursorAt = async (text, name = file) => {
    const lines = (await fs.readFile(name, 'utf8')).split('\n');
    const line = lines.findIndex((each) => each.includes(text));
    expect(line >= 0, `${text} is not in the file`);
    await page.keyboard.press('Control+g');
    await input.waitFor({ timeout: 15_000 });
    await page.keyboard.type(`${line + 1}:${lines[line].indexOf(text) + 2}`);
    await page.waitForTimeout(150);
    await page.keyboard.press('Enter');
    await page.waitForTimeout(150);
  };
  const diskHas = async (pattern, timeout = 15_000) => {
    for (const end = Date.now() + timeout; Date.now() < end;) {
      if (pattern.test(await onDisk())) return;
      await page.waitForTimeout(60);
    }
    throw new Error(`${pattern} is not on disk:\n${(await onDisk()).split('```readings').slice(1).join('```readings')}`);
  };
  /** The note stands on disk as it was at the start. */
  const diskIsPlan = async (why) => {
    for (const end = Date.now() + 10_000; Date.now() < end && await onDisk() !== plan;) await page.waitForTimeout(100);
    expect(await onDisk() === plan, `${why}:\n${await onDisk()}`);
  };
  const save = () => page.keyboard.press('Control+s');
  /** The text of the active editor, by saving it. */
  const editorHas = async (pattern) => { await page.waitForTimeout(500); await save(); await diskHas(pattern); };
  const open = async (name = 'night.tank.md') => {
    await page.keyboard.press('Control+p');
    await input.waitFor({ timeout: 15_000 });
    await page.keyboard.type(name);
    await rowOf(name).waitFor({ timeout: 15_000 });
    await page.waitForTimeout(300);
    await page.keyboard.press('Enter');
    await page.locator('.tab.active', { hasText: name }).waitFor({ timeout: 15_000 });
    await page.waitForTimeout(300);
  };
  const fresh = async () => {
    await save();
    await page.waitForTimeout(300);
    await fs.writeFile(file, plan);
    await page.waitForTimeout(900);
  };
  /** A notification with this text: they wait in the notification centre. */
  const notification = async (text) => {
    const found = page.locator('.notifications-center .notification-list-item, .notification-toast', { hasText: text }).first();
    for (const end = Date.now() + 15_000; Date.now() < end && await found.count() === 0;) {
      await page.waitForTimeout(400);
      if (await found.count() === 0 && await page.locator('[id="status.notifications"] .codicon-bell-dot').count() > 0) await page.locator('[id="status.notifications"]').click();
    }
    expect(await found.count() > 0, `no notification says ${text}`);
    return found;
  };
  const copy = (text) => page.evaluate((words) => navigator.clipboard.writeText(words), text);
  const pickFile = async (address) => {
    await page.waitForTimeout(1200);
    await input.fill(address); // The simple file dialog of the browser's workbench is a line of text.
    await page.waitForTimeout(800);
    await page.keyboard.press('Enter');
  };
  const preview = () => widget.getByText('Cells are separated by').waitFor({ timeout: 20_000 });
  const pick = async (text) => { await page.waitForTimeout(250); await page.keyboard.type(text); await page.waitForTimeout(350); await page.keyboard.press('Enter'); await page.waitForTimeout(350); };
  const failed = (name) => page.screenshot({ path: path.join(root, 'workbench/log', `changes-${name}.png`) }).catch(() => {});
  const { count, check } = checks(failed, () => keys('Escape', 'Escape'));
  const close = async () => {
    await page.context().close();
    await server.stop();
    await fs.rm(parent, { recursive: true, force: true });
  };
  await page.goto(pageAddress(server, { folder, extension: root, file: 'night.tank.md' }));
  await page.locator('.monaco-editor .view-lines').first().waitFor({ timeout: 90_000 });
  await page.locator('.codelens-decoration').first().waitFor({ timeout: 90_000 }); // The extension has read the note.
  await page.locator('.monaco-editor .view-line').first().click();
  return { page, widget, rowOf, picture, keys, answer, command, cursorAt, diskHas, diskIsPlan, save, editorHas, open, fresh, notification, copy, pickFile, preview, pick, check, folder, count, close };
}
