// A whole night by keyboard with a clock of its own: a key, the digits, a separator a value, Enter. Then the prompt's ways
// for a tired keeper: value by value, left and taken up again, half a number, a word of a scale, late, over a stop rule.
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { openPreview, previewFrame } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { startServer } from '../../scripts/workbench/server.mjs';
import { checks, expect } from './checks.mjs';
import { openNotePage } from './notePage.mjs';

/** Invented. */
const plan = `# A night by keyboard

\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment, label: floating-mat tank}
  open: {role: control, label: open-surface tank}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 08:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
  T: {what: water temperature, unit: degC}
  P: {what: air pressure, unit: hPa, in: [room]}
stop if:
  - {when: mat.DO < 2.5 mg/L, do: run the air pump}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  open.DO  open.T  room.P
\`\`\`

The end.
`;
const fish = plan.replace('air pressure, unit: hPa, in: [room]', 'behaviour, scale: [calm, restless, rising, gasping], in: [mat]').replace('room.P', 'mat.P ');
const first = Date.parse('2026-03-14T20:00:20Z');
const half = 30 * 60_000;
const slots = 24;
const clock = (slot) => new Date(first + slot * half).toISOString().slice(11, 16);
const rowOf = (slot) => [(8.3 - slot * 0.11).toFixed(2), (24.9 - slot * 0.02).toFixed(1), (8.3 - slot * 0.01).toFixed(2), '24.6', (1008.1 - slot * 0.1).toFixed(1)];
const lineOf = (slot, row = rowOf(slot)) => new RegExp(`^${clock(slot)} +${row.join(' +').replaceAll('.', '\\.')}`, 'm');
const letters = 'abcdefghijklmnopqrstuvwxyz';

/** Our extension, with keys added to its manifest that each log a reading at one moment of that night. */
async function withNightClock(folder) {
  await fs.mkdir(folder);
  for (const name of ['dist', 'media', 'syntaxes', 'l10n', 'package.nls.json']) await fs.symlink(path.join(root, name), path.join(folder, name));
  const manifest = JSON.parse(await fs.readFile(path.join(root, 'package.json'), 'utf8'));
  const keys = [...letters].map((letter, slot) => ({ command: 'evenwater.logReading', key: `ctrl+alt+y ${letter}`, when: 'editorTextFocus', args: { now: first + slot * half } }));
  manifest.contributes.keybindings.push(...keys);
  await fs.writeFile(path.join(folder, 'package.json'), JSON.stringify(manifest));
  return folder;
}

export async function runNight(browser, { pictures = null } = {}) {
  const parent = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-night-'));
  const folder = path.join(parent, 'notes');
  await fs.mkdir(folder);
  const extension = await withNightClock(path.join(parent, 'extension'));
  await fs.writeFile(path.join(folder, 'night.tank.md'), plan);
  await fs.writeFile(path.join(folder, 'fish.tank.md'), fish);
  const server = await startServer();
  const night = await openNotePage(browser, server, { folder, file: 'night.tank.md', pictures, extension });
  const { page, picture } = night;
  const { count, check } = checks(picture);
  let pressed = 0;
  const key = async (name) => { pressed += 1; await page.keyboard.press(name); };
  const type = async (text) => { for (const letter of text) await key(letter === ' ' ? 'Space' : letter); };
  const ask = (slot, here = night) => here.prompt('Control+Alt+y', letters[slot]);
  const lensSays = (text) => night.until(`"${text}" above the table`, async () => (await page.locator('.codelens-decoration').allInnerTexts()).join('\n').replaceAll('\u00a0', ' ').includes(text), 6000);
  try {
    await night.load();
    await check(`${slots} rows of a night: digits, one separator a value, one Enter; the line above the table follows each`, async () => {
      for (let slot = 0; slot < slots - 4; slot += 1) {
        await ask(slot);
        pressed = 0;
        await type(rowOf(slot).join(' '));
        if (slot === 8) { await page.waitForTimeout(800); await picture('night-prompt'); }
        await key('Enter');
        expect(pressed === rowOf(slot).join('').length + 4 + 1, `${pressed} keys`);
        await night.diskHas(lineOf(slot));
        await night.closed();
        await lensSays(`${slot + 1} of 25 slots read`);
      }
      await picture('night-rows');
    });
    await check('value by value: Enter asks for the next one; Escape keeps what is typed, and it stands there again', async () => {
      const slot = slots - 4;
      const [oxygen, ...others] = rowOf(slot);
      await ask(slot);
      await type(oxygen);
      await key('Enter');
      await night.says(/2 of 5: mat\.T, floating-mat tank, in °C/);
      await type(others[0]);
      await picture('night-cell-by-cell');
      await key('Escape');
      await night.closed();
      await ask(slot);
      await night.until('what was typed', async () => await night.input.inputValue() === `${oxygen} ${others[0]}`);
      await key('Enter');
      for (const value of others.slice(1)) { await type(value); await key('Enter'); } // As fast as the machine can.
      await night.diskHas(lineOf(slot));
      await night.closed();
    });
    await check('half a number raises no alarm; a pause does; what looks wrong needs Enter twice', async () => {
      const slot = slots - 3;
      await ask(slot);
      await type(`${rowOf(slot)[0]} 76.3`);
      const words = await night.widget.innerText();
      expect(!words.includes('°F'), `too early: ${words}`);
      await night.says(/looks like °F in a column in °C/, 5000);
      await lensSays(`${slot} of 25 slots read`); // While the prompt stands, too.
      await picture('night-warning');
      await type(` ${rowOf(slot).slice(2).join(' ')}`);
      await key('Enter');
      await night.says(/Enter once more/);
      expect(!(await night.onDisk()).includes('76.3'), 'it was logged');
      await picture('night-warning-enter');
      await key('Escape');
      await night.closed();
    });
    await check('a late row is logged at its true time and says so; a planned time that nobody read is named', async () => {
      const slot = slots - 2;
      await ask(slot);
      await page.keyboard.press('Control+a');
      await type(`${clock(slot).slice(0, 3)}${Number(clock(slot).slice(3)) + 7 < 10 ? '0' : ''}${Number(clock(slot).slice(3)) + 7} - ${rowOf(slot).slice(1).join(' ')} ; probe slipped`);
      await picture('night-late-prompt');
      await key('Enter');
      await night.diskHas(/^\d\d:[03]7 +- +.*; probe slipped$/m);
      await night.closed();
      await lensSays('1 late');
      await lensSays('1 missed');
      const shown = () => page.locator('.monaco-editor .view-lines').innerText().then((text) => text.replaceAll('\u00a0', ' '));
      await page.keyboard.press('Control+End');
      await night.until('the hint of a late row', async () => (await shown()).includes('7 min late'));
      await night.until('the hint of a missed slot', async () => (await shown()).includes(`${clock(slot - 1)} not read`));
      await picture('night-late');
    });
    await check('the preview marks the late row and the planned time that nobody read', async () => {
      await openPreview(page);
      const frame = await previewFrame(page, '.evenwater-missed');
      const words = await frame.locator('.evenwater-readings').first().innerText();
      expect(/7 min late/.test(words) && words.includes(`${clock(slots - 3)} not read`), words.slice(-400));
      await frame.locator('.evenwater-missed').first().scrollIntoViewIfNeeded();
      await picture('night-preview');
      await page.locator('.tabs-container .tab').first().click(); // Out of the preview, which keeps its keys.
    });
    await check('a row over a stop rule is logged, and the rule is said until it is read', async () => {
      const slot = slots - 1;
      await ask(slot);
      await type(`2.41 ${rowOf(slot).slice(1).join(' ')}`);
      await key('Enter');
      await page.waitForTimeout(400);
      if (await night.widget.isVisible()) await key('Enter');
      const box = page.locator('.monaco-dialog-box');
      await box.waitFor({ timeout: 20_000 });
      expect(/STOP RULE CROSSED.*run the air pump/s.test(await box.innerText()), await box.innerText());
      expect((await night.onDisk()).includes('2.41'), 'the row is not on disk');
      await picture('night-stop-rule');
      await page.keyboard.press('Enter');
      await box.waitFor({ state: 'hidden', timeout: 10_000 });
    });
    await check('a word of a scale completes as it is typed; no word is chosen by Enter alone', async () => {
      const fishes = await openNotePage(browser, server, { folder, file: 'fish.tank.md', pictures, extension, beside: page });
      await fishes.load();
      await fishes.prompt('Control+Alt+y', 'a');
      await fishes.page.keyboard.type('8.30 24.9 8.31 24.6 ');
      await fishes.page.keyboard.press('Enter');
      await fishes.page.keyboard.press('Enter');
      expect(await fishes.input.inputValue() === '8.30 24.9 8.31 24.6 ', await fishes.input.inputValue());
      await fishes.page.keyboard.type('r');
      await fishes.page.waitForTimeout(300);
      await fishes.picture('night-word');
      await fishes.page.keyboard.press('Enter');
      await fishes.until('the whole word', async () => await fishes.input.inputValue() === '8.30 24.9 8.31 24.6 restless ');
      await fishes.page.keyboard.press('Enter');
      await fishes.diskHas(/^20:00 +8\.30 +24\.9 +8\.31 +24\.6 +restless$/m);
      await fishes.page.close();
    });
    if (pictures) {
      for (const theme of ['Light Modern', 'Dark High Contrast', 'Light High Contrast']) {
        const other = await openNotePage(browser, server, { folder, file: 'night.tank.md', pictures, theme, extension });
        await other.load();
        await ask(slots, other);
        await other.page.keyboard.press('Control+a');
        await other.page.keyboard.type('5.60 76.3 8.0 ');
        await other.page.waitForTimeout(800);
        await other.picture(`night-${theme.toLowerCase().replaceAll(' ', '-')}`);
        await other.page.context().close();
      }
    }
  } finally {
    await page.context().close();
    await server.stop();
    await fs.rm(parent, { recursive: true, force: true });
  }
  return count;
}
