// A run in the real editor: quiet until it is started, a countdown, a word at the due time in one of two windows, *Later* and
// *Log now*, and the run back after the page is loaded again. The clock is the real one; the plan has a slot every two minutes.
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { startServer } from '../../scripts/workbench/server.mjs';
import { checks, expect } from './checks.mjs';
import { openNotePage } from './notePage.mjs';

const minute = 60_000;
const stamp = (instant) => new Date(instant).toISOString().slice(0, 16).replace('T', ' ');
const interval = 2;

/** Invented. A slot lies a minute or so behind, the next ones ahead. */
const planFrom = (start) => `# A run by the clock

\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: ${stamp(start)}, end: ${stamp(start + 30 * minute)}, every: ${interval} min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
\`\`\`

\`\`\`readings
time   mat.DO  open.DO
\`\`\`
`;

export async function runDue(browser, { pictures = null } = {}) {
  const folder = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-due-'));
  const file = 'run.tank.md';
  const server = await startServer();
  await fs.writeFile(path.join(folder, file), planFrom(Math.floor(Date.now() / minute) * minute));
  const one = await openNotePage(browser, server, { folder, file, pictures });
  const { check, count } = checks(one.picture);
  const item = (here) => here.page.locator('.statusbar-item[id*="evenwater.run"]').first();
  const said = async (here, words = 'are due') => (await here.notifications(words)).count();
  const waitUntilSaid = (here, words) => here.until('a word on what is due', () => said(here, words), (interval + 1) * minute);
  const press = async (here, button) => (await here.notifications('are due')).first().locator('.monaco-button', { hasText: button }).first().click();
  const itemText = async (here) => ((await item(here).count()) > 0 ? (await item(here).innerText()).replaceAll('\u00a0', ' ').trim() : '');
  try {
    await one.load();
    await check('nothing counts and nothing is said before the keeper starts the run', async () => {
      expect(await item(one).count() === 0, await itemText(one));
      expect(await said(one) === 0, 'somebody spoke');
    });
    await check('a started run counts down, and says at the due time what is due, with *Log now* and *Later*', async () => {
      await one.command('Start the Run');
      await one.until('the countdown', async () => /\d\d:\d\d (?:in \d+:\d\d|is due)/.test(await itemText(one)));
      await one.picture('run-countdown');
      await waitUntilSaid(one);
      expect(/is due/.test(await itemText(one)), await itemText(one));
      const words = await (await one.notifications('are due')).first().innerText();
      expect(/Log now/.test(words) && /Later/.test(words), words);
      await one.picture('run-due');
    });
    await check('*Log now* opens the prompt for that slot, and the logged slot is no longer due', async () => {
      await press(one, 'Log now');
      await one.widget.locator('.quick-input-title', { hasText: 'Log a reading' }).waitFor({ timeout: 15_000 });
      await one.page.keyboard.type('8.30 8.31');
      await one.page.keyboard.press('Enter');
      await one.diskHas(/^\d\d:\d\d(?::\d\d)? +8\.30 +8\.31$/m);
      await one.until('the next countdown', async () => /in \d+:\d\d/.test(await itemText(one)));
    });
    await check('a page that is loaded again has its run back', async () => {
      await one.load();
      await one.until('the countdown after the reload', async () => /\d\d:\d\d (?:in \d+:\d\d|is due)/.test(await itemText(one)), 30_000);
    });
    const other = await openNotePage(browser, server, { folder, file, pictures, beside: one.page });
    await check('of two windows on one note one speaks, and *Later* holds for both', async () => {
      await other.load();
      await other.until('the countdown in the second window', async () => /\d\d:\d\d (?:in \d+:\d\d|is due)/.test(await itemText(other)), 30_000);
      const next = await one.until('a countdown', async () => /(\d\d:\d\d) in \d+:\d\d/.exec(await itemText(one))?.[1], (interval + 1) * minute);
      const words = `readings of ${next}`;
      await one.until('somebody to speak', async () => await said(one, words) + await said(other, words) > 0, (interval + 1) * minute);
      await one.page.waitForTimeout(8000);
      const spoke = [await said(one, words), await said(other, words)];
      expect(spoke[0] + spoke[1] === 1, `${spoke.join(' and ')} spoke`);
      const speaker = spoke[0] === 1 ? one : other;
      await speaker.picture('run-due-two-windows');
      await (await speaker.notifications(words)).first().locator('.monaco-button', { hasText: 'Later' }).first().evaluate((button) => button.click());
      await one.page.waitForTimeout(8000);
      expect(await said(one, words) + await said(other, words) === 0, 'it was said again at once');
    });
    await check('a run that one window ends is over in the other', async () => {
      await one.page.bringToFront();
      await one.focus();
      await one.command('End the Run');
      await one.until('the countdown to go', async () => await item(one).count() === 0);
      await other.until('the countdown to go in the second window', async () => await item(other).count() === 0, 15_000);
    });
  } finally {
    await one.page.context().close();
    await server.stop();
    await fs.rm(folder, { recursive: true, force: true });
  }
  return count;
}
