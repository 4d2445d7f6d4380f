// Logs by keyboard in a real editor, as at three in the morning: the key, the digits, Enter; what looks wrong needs Enter twice.
// Then ends the extension host with SIGKILL while rows are written: what was said to be logged is on disk.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { newPage } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, startServer } from '../../scripts/workbench/server.mjs';
import { checks, expect } from './checks.mjs';
import { runDue } from './due.mjs';
import { runNight } from './night.mjs';

const half = 30 * 60_000;
/** The run began some hours ago, so that each typed clock time is nearest to now where it is meant. */
const start = Math.floor(Date.now() / half) * half - 18 * half;
const stamp = (instant) => new Date(instant).toISOString().slice(0, 16).replace('T', ' ');
/** Invented. */
const plan = `# A night by keyboard

\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment, plants: water lettuce}
  open: {role: control, plants: none}
schedule: {start: ${stamp(start)}, end: ${stamp(start + 40 * half)}, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
  T: {what: water temperature, unit: degC}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  open.DO  open.T
\`\`\`

The end.
`;
const clock = (slot) => stamp(start + slot * half).slice(11);
const rowOf = (slot) => [(8.3 - slot * 0.03).toFixed(2), (24.9 - slot * 0.01).toFixed(1), (8.3 - slot * 0.01).toFixed(2), '24.6'];

export async function runLogging(browser, { pictures = null, kills = 5, rows = 10 } = {}) {
  const folder = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-logging-'));
  const file = path.join(folder, 'night.tank.md');
  await fs.writeFile(file, plan);
  await fs.writeFile(path.join(folder, 'probe.csv'), 'Stamp;mat.DO;Temp\n03/04/2026 20:10;8,28;24,9\n03/04/2026 20:20;8,27;24,9\n');
  const server = await startServer();
  const page = await newPage(browser);
  const onDisk = () => fs.readFile(file, 'utf8');
  const widget = page.locator('.quick-input-widget');
  const input = widget.locator('input[type=text], input.input').first();
  const picture = async (name) => { if (pictures) await page.screenshot({ path: path.join(pictures, `${name}.png`) }); };
  const holds = (text, slot) => new RegExp(`^${clock(slot)} +${rowOf(slot).join(' +').replaceAll('.', '\\.')}$`, 'm').test(text);
  const whole = (text) => text.startsWith(plan.slice(0, plan.indexOf('```readings'))) && text.endsWith('```\n\nThe end.\n');
  const openNote = async () => {
    await page.goto(pageAddress(server, { folder, extension: root, file: 'night.tank.md' }));
    await page.locator('.monaco-editor .view-lines').first().waitFor({ timeout: 90_000 });
    await page.locator('.codelens-decoration').first().waitFor({ timeout: 90_000 }); // The extension has read the note.
    await page.locator('.monaco-editor .view-line').first().click();
  };
  const prompt = async () => {
    await page.keyboard.press('Control+Alt+Enter');
    await widget.waitFor({ state: 'visible', timeout: 30_000 });
  };
  const waitFor = async (slot, timeout = 20_000) => {
    for (const end = Date.now() + timeout; Date.now() < end;) {
      if (holds(await onDisk(), slot)) return true;
      await page.waitForTimeout(30);
    }
    return false;
  };
  const { count, check } = checks(picture);
  try {
    await openNote();
    await check(`${rows} rows by keyboard: a key, the row, Enter; each on disk`, async () => {
      for (let slot = 0; slot < rows; slot += 1) {
        await prompt();
        await page.keyboard.type(`${clock(slot)} ${rowOf(slot).join(' ')}`);
        if (slot === rows - 1) { await page.waitForTimeout(400); await picture('logging'); }
        await page.keyboard.press('Enter');
        expect(await waitFor(slot), `row ${slot} is not on disk:\n${(await onDisk()).split('```readings')[1]}`);
      }
      expect(whole(await onDisk()), 'the file is torn');
    });
    let told = 0;
    let offered = 0;
    await check(`${kills} extension hosts killed while a row is written: nothing acknowledged is missing`, async () => {
      for (let kill = 0; kill < kills; kill += 1) {
        const slot = rows + kill;
        await prompt();
        await page.keyboard.type(`${clock(slot)} ${rowOf(slot).join(' ')}`);
        await page.waitForTimeout(300);
        const hosts = extensionHosts(server.pid);
        expect(hosts.length > 0, 'no extension host was found');
        await page.keyboard.press('Enter');
        // Every other one dies the moment its row stands in the journal; the others at some moment after Enter.
        if (kill % 2 === 0) await journalEntry(server.directory);
        else await page.waitForTimeout([20, 900][(kill >> 1) % 2]);
        const said = await page.getByText(`Evenwater: logged ${clock(slot)}`).count();
        for (const pid of hosts) process.kill(pid, 'SIGKILL');
        if (said > 0) { told += 1; expect(holds(await onDisk(), slot), `row ${slot} was said to be logged and is not on disk`); }
        await page.waitForTimeout(500);
        expect(whole(await onDisk()), 'the file is torn');
        await openNote();
        if (holds(await onDisk(), slot)) continue;
        // Not on disk: then it stands in the journal, or the key never reached the extension.
        // The offer waits in the notification centre.
        const write = page.locator('.notifications-center .monaco-button', { hasText: 'Write Them' }).first();
        for (const end = Date.now() + 15_000; Date.now() < end && await write.count() === 0;) {
          await page.waitForTimeout(500);
          if (await write.count() === 0 && await page.locator('[id="status.notifications"] .codicon-bell-dot').count() > 0) await page.locator('[id="status.notifications"]').click();
        }
        if (await write.count() > 0) {
          offered += 1;
          await picture('offered');
          await write.first().click();
          expect(await waitFor(slot), `row ${slot} was offered and not written`);
        }
      }
      expect(kills < 3 || offered > 0, 'no kill fell between journal and note, so this proves little');
      const text = await onDisk();
      for (let slot = 0; slot < rows; slot += 1) expect(holds(text, slot), `row ${slot} is gone`);
      const lines = text.split('\n').filter((line) => /^\d\d:\d\d /.test(line));
      expect(new Set(lines.map((line) => line.slice(0, 5))).size === lines.length, 'a row stands twice');
      console.log(`     ${told} said to be logged before the kill, ${offered} offered from the journal, ${lines.length} rows in the end`);
    });
    await check('what looks wrong is shown, and one Enter does not log it', async () => {
      await prompt();
      await page.keyboard.type(`${clock(rows + kills)} 8.0 76.3 8.2 24.6`);
      await page.waitForTimeout(300);
      await page.keyboard.press('Enter');
      await page.waitForTimeout(500);
      const words = await widget.innerText();
      expect(/°F/.test(words) && /once more/.test(words), words);
      await picture('warning');
      expect(!(await onDisk()).includes('76.3'), 'it was logged');
      await page.keyboard.press('Enter');
      for (let wait = 0; wait < 100 && !(await onDisk()).includes('76.3'); wait += 1) await page.waitForTimeout(100);
      expect((await onDisk()).includes('76.3'), 'the second Enter did not log it');
    });
    await check('an import asks where dates can be read in two ways', async () => {
      await page.keyboard.press('F1');
      await page.keyboard.type('Evenwater: Import Readings');
      await page.waitForTimeout(700);
      await page.keyboard.press('Enter');
      await page.waitForTimeout(1500);
      // The simple file dialog of the browser's workbench is a line of text.
      await input.fill(path.join(folder, 'probe.csv'));
      await page.waitForTimeout(700);
      await page.keyboard.press('Enter');
      await widget.getByText('two ways').waitFor({ timeout: 20_000 });
      await picture('import');
      await page.keyboard.press('Escape');
    });
  } finally {
    await page.context().close();
    await server.stop();
    await fs.rm(folder, { recursive: true, force: true });
  }
  for (const suite of [runNight, runDue]) {
    const more = await suite(browser, { pictures });
    for (const key of Object.keys(count)) count[key] += more[key];
  }
  return count;
}

/** Resolves when a row stands in the journal of the extension's storage, or after three seconds. */
async function journalEntry(directory) {
  for (const end = Date.now() + 3000; Date.now() < end;) {
    const names = await fs.readdir(directory, { recursive: true }).catch(() => []);
    if (names.some((name) => /[\\/]journal[\\/].*\.json$/.test(name))) return;
  }
}

/** Extension hosts of our own server: processes of its group, by what they are started as. */
function extensionHosts(group) {
  const lines = execFileSync('ps', ['-eo', 'pid=,pgid=,args='], { encoding: 'utf8' }).split('\n');
  return lines.map((line) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line)).filter((found) => found && Number(found[2]) === group && found[3].includes('--type=extensionHost')).map((found) => Number(found[1]));
}
