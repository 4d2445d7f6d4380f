// Changes readings by keyboard in a real editor (correct, leave out, mark, remark, event, seal), and brings tables in: by command, by
// paste and by dropping a logger's file. All data are invented.
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { newPage } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings, startServer } from '../../scripts/workbench/server.mjs';
import { handInSettings } from '../../scripts/workbench/webServer.mjs';

const plan = `# A night to change

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
const tabbed = 'time\topen.T\n2026-03-14 20:00\t24.7\n2026-03-14 20:30\t24.6\n';
const semicolons = 'Time;Pressure (hPa)\n14.03.2026 20:00;1009,4\n14.03.2026 20:30;1009,2\n';
const unclear = 'Stamp;open.T\n03/04/2026 20:10;24,9\n03/04/2026 20:20;24,9\n';
const logger = 'Logger 7\n\nStamp;Probe 1;Battery\n14/03/2026 20:10;76,6;3,9\n14/03/2026 20:20;oops;3,9\nlater;76,4;3,8\n14/03/2026 20:30;76,3;3,8\n';

function expect(holds, what) { if (!holds) throw new Error(what); }

export async function runChanges(browser, { pictures = null, theme = 'Dark Modern' } = {}) {
  const parent = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-changes-'));
  const folder = path.join(parent, 'notes');
  await fs.mkdir(folder);
  const file = path.join(folder, 'night.tank.md');
  const outside = path.join(parent, 'elsewhere.csv');
  await fs.writeFile(file, plan);
  await fs.writeFile(path.join(folder, 'plain.md'), '# Plain\n\nWords.\n');
  await fs.writeFile(path.join(folder, 'probe.csv'), logger);
  await fs.writeFile(path.join(folder, 'sure.csv'), tabbed.replaceAll('\t', ','));
  await fs.writeFile(path.join(folder, 'words.txt'), 'Only words, no table.\nAnd some more.\n');
  await fs.writeFile(outside, logger.replaceAll('76,', '75,'));
  const server = await startServer();
  const page = await newPage(browser);
  await handInSettings(page, { ...quietSettings, 'workbench.colorTheme': theme });
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'], { origin: server.origin });
  const count = { passed: 0, failed: 0, skipped: 0 };
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
  const check = async (name, act) => {
    try {
      await act();
      count.passed += 1;
      console.log(`  ok ${name}`);
    } catch (error) {
      count.failed += 1;
      console.log(`  not ok ${name}: ${error.message}`);
      await page.screenshot({ path: path.join(root, 'workbench/log', `changes-${count.failed}.png`) }).catch(() => {});
    }
    await keys('Escape', 'Escape');
  };
  try {
    await page.goto(pageAddress(server, { folder, extension: root, file: 'night.tank.md' }));
    await page.locator('.monaco-editor .view-lines').first().waitFor({ timeout: 90_000 });
    await page.locator('.codelens-decoration').first().waitFor({ timeout: 90_000 }); // The extension has read the note.
    await page.locator('.monaco-editor .view-line').first().click();

    await check('correct the reading at the cursor: what cannot be read is said while it is typed, the first value stays', async () => {
      await cursorAt('8.24');
      await command('Evenwater: Correct a Reading');
      await widget.locator('.quick-input-title', { hasText: '20:30 mat.DO 8.24' }).waitFor({ timeout: 15_000 });
      await page.keyboard.type('8.2x');
      await widget.getByText('cannot be read').waitFor({ timeout: 10_000 });
      await keys('Backspace');
      await page.keyboard.type('6');
      await widget.getByText('8.24->8.26').waitFor({ timeout: 10_000 });
      await picture('correct');
      await keys('Enter');
      await answer('Correct 20:30 mat.DO 8.24 to 8.26', 'misread');
      await diskHas(/\n20:30 +8\.24->8\.26 +24\.9 +8\.30 +; mat\.DO: misread\n/);
      await picture('corrected');
    });
    await check('with the cursor on a time, the time is corrected', async () => {
      await cursorAt('21:00 ');
      await command('Evenwater: Correct a Reading');
      await answer('Correct 21:00', '21:05');
      await answer('to 21:05', 'late');
      await diskHas(/\n21:00->21:05 +8\.25 .*; time: late\n/);
    });
    await check('beside the cells, the row\'s readings are offered; what is left out stays in the table', async () => {
      await cursorAt('; mat.DO: misread');
      await command('Evenwater: Leave a Reading Out');
      await widget.locator('.quick-input-title', { hasText: 'Which reading?' }).waitFor({ timeout: 15_000 });
      expect(await widget.locator('.monaco-list-row').count() === 3, 'not the three readings of the row');
      await pick('open.DO');
      await answer('Leave out 20:30 open.DO 8.30', 'probe out');
      await diskHas(/\n20:30 .*\(8\.30\) +; mat\.DO: misread; open\.DO: probe out\n/);
      // Once more: that it is left out already is said before a reason is asked.
      await cursorAt('(8.30)');
      await command('Evenwater: Leave a Reading Out');
      await (await notification('already left out')).waitFor({ timeout: 10_000 });
    });
    await check('doubtful without a reason; a remark; an event in the plan and in the remark of its row', async () => {
      await cursorAt('8.21');
      await command('Evenwater: Mark a Reading as Doubtful');
      await answer('Mark 20:00 mat.DO 8.21 as doubtful', '');
      await diskHas(/\n20:00 +8\.21\? +24\.9 +8\.31\n/);
      await command('Evenwater: Add a Remark');
      await answer('Add a remark to 20:00', 'lid open');
      await diskHas(/\n20:00 .*; lid open\n/);
      await command('Evenwater: Log an Event');
      await answer('Log an event', 'pump on');
      await widget.locator('.quick-input-title', { hasText: 'pump on' }).waitFor({ timeout: 15_000 });
      await keys('Control+a');
      await page.keyboard.type('2026-03-14T20:00');
      await keys('Enter');
      await widget.getByText('open', { exact: true }).first().waitFor({ timeout: 15_000 });
      await keys('Control+a', 'Enter');
      await diskHas(/events:\n {2}- at: 2026-03-14 20:00\n {4}what: pump on\n/);
      await diskHas(/\n20:00 .*; lid open; pump on\n/);
    });
    await check('a seal by command; a correction keeps it valid; a changed value is named with its row and column', async () => {
      await cursorAt('8.25');
      await command('Evenwater: Seal Readings');
      await diskHas(/\n# sealed \S+ sha256:/);
      await cursorAt('8.25');
      await command('Evenwater: Correct a Reading');
      await answer('mat.DO 8.25', '8.27');
      await answer('to 8.27', 'misread');
      await diskHas(/8\.25->8\.27/);
      expect(await page.locator('.squiggly-error').count() === 0, 'the correction broke the seal');
      await cursorAt('24.8');
      await keys('End', 'Home');
      await cursorAt('24.8');
      await keys('Backspace');
      await page.keyboard.type('3');
      await page.locator('.squiggly-error').first().waitFor({ timeout: 15_000 });
      await command('Problems: Focus on Problems View');
      await page.locator('.markers-panel', { hasText: /mat\.T/ }).waitFor({ timeout: 15_000 });
      const words = await page.locator('.markers-panel .monaco-list-row').allInnerTexts();
      expect(words.some((each) => /seal/i.test(each) && /mat\.T/.test(each)), words.join(' | '));
      await picture('seal-broken');
      await keys('Control+1');
      await keys('Control+z');
      await keys('Control+j', 'Control+1');
    });

    await fresh();
    await check('an import by command: everything in the preview, each line that is no row said, a unit changed, one step to undo', async () => {
      await cursorAt('The end.');
      await command('Evenwater: Import Readings');
      await pickFile(path.join(folder, 'probe.csv'));
      await preview();
      await widget.getByText('Say which column is the time').waitFor({ timeout: 10_000 });
      await pick('Probe 1');
      await pick('open.T');
      await preview();
      await widget.getByText('is no reading of open.T').waitFor({ timeout: 10_000 });
      await widget.getByText('later is no time').waitFor({ timeout: 10_000 });
      await picture('import');
      await pick('Probe 1');
      await pick('degF');
      await preview();
      await widget.getByText('open.T, °F').waitFor({ timeout: 10_000 });
      await pick('as a table');
      await diskHas(/\n2026-03-14T20:10 +76\.6\n2026-03-14T20:20 +- +; open\.T: oops\n# not read, line 6: later;76,4;3,8\n2026-03-14T20:30 +76\.3\n```/);
      const offer = await notification('Remember these columns');
      await picture('imported');
      await offer.locator('.monaco-button', { hasText: 'Remember' }).first().click();
      await answer('Name of the logger', 'garden probe');
      await page.waitForTimeout(500);
      await page.locator('.monaco-editor .view-line').first().click();
      await keys('Control+z');
      await save();
      await diskHas(/^(?:(?!2026-03-14T20:10)[^])*$/);
      await diskIsPlan('undo did not bring the note back');
    });
    await check('the logger that was remembered is proposed again; the file is pinned by its hash', async () => {
      await cursorAt('The end.');
      await command('Evenwater: Import Readings');
      await pickFile(path.join(folder, 'probe.csv'));
      await preview();
      await widget.getByText('garden probe').waitFor({ timeout: 10_000 });
      await widget.getByText('open.T, °F').waitFor({ timeout: 10_000 });
      await pick('Refer to the file');
      await diskHas(/```readings\nfrom: probe\.csv\ncolumns:\n {2}Stamp: time\n {2}Probe 1: open\.T\[degF\]\n[^]*sha256: [0-9a-f]{64}\n```/);
    });

    await fresh();
    await check('a paste of spreadsheet cells that surely are readings becomes a table; one step to undo', async () => {
      await cursorAt('The end.');
      await copy(tabbed);
      await keys('Control+v');
      await editorHas(/The end\.\n\n```readings\ntime +open\.T\n2026-03-14T20:00 +24\.7\n2026-03-14T20:30 +24\.6\n```\n/);
      await picture('pasted');
      await keys('Control+z');
      await editorHas(/The end\.\n$/);
      await diskIsPlan('undo did not bring the note back');
    });
    await check('semicolons with decimal commas', async () => {
      await cursorAt('The end.');
      await copy(semicolons);
      await keys('Control+v');
      await editorHas(/```readings\ntime +room\.P\n2026-03-14T20:00 +1009\.4\n2026-03-14T20:30 +1009\.2\n```\n/);
      await keys('Control+z');
    });
    await check('where something is unclear the paste stays plain, and the choices behind it offer the import with its preview', async () => {
      await editorHas(/The end\.\n$/);
      await cursorAt('The end.');
      await keys('End');
      await copy(`\n${unclear}`);
      await keys('Control+v');
      await editorHas(/The end\.\nStamp;open\.T\n03\/04\/2026 20:10;24,9\n/);
      await keys('Control+z');
      await editorHas(/The end\.\n$/);
      await keys('Control+v');
      await page.locator('.post-edit-widget').waitFor({ timeout: 15_000 });
      await keys('Control+.');
      await page.locator('.action-widget .monaco-list-row', { hasText: 'Import as Readings…' }).click();
      await preview();
      await pick('two ways');
      await pick('day, month');
      await preview();
      await pick('as a table');
      await editorHas(/The end\.\n\n```readings\ntime +open\.T\n2026-04-03T20:10 +24\.9\n/);
      await keys('Control+z');
      await editorHas(/The end\.\n$/);
    });
    await check('in plain Markdown nothing but text is pasted', async () => {
      await open('plain.md');
      await keys('Control+End');
      await copy(tabbed);
      await keys('Control+v');
      await page.waitForTimeout(600);
      await save();
      await page.waitForTimeout(600);
      expect(await fs.readFile(path.join(folder, 'plain.md'), 'utf8') === `# Plain\n\nWords.\n${tabbed}`, await fs.readFile(path.join(folder, 'plain.md'), 'utf8'));
      await open();
    });

    const drop = async (name, settle = preview) => {
      await command('View: Show Explorer');
      const source = page.locator('.explorer-folders-view .monaco-list-row', { hasText: name }).first();
      await source.waitFor({ timeout: 15_000 });
      const target = page.locator('.monaco-editor .view-line', { hasText: 'The end.' }).first();
      const [from, to] = [await source.boundingBox(), await target.boundingBox()];
      await page.mouse.move(from.x + 30, from.y + from.height / 2);
      await page.mouse.down();
      await page.mouse.move(from.x + 80, from.y + from.height / 2 + 10, { steps: 4 });
      await page.keyboard.down('Shift');
      await page.mouse.move(to.x + 40, to.y + to.height / 2, { steps: 12 });
      await page.waitForTimeout(600);
      await picture(`drop-${name}`);
      await page.mouse.up();
      await page.keyboard.up('Shift');
      await settle();
    };
    await fresh();
    await check('a logger\'s file dropped from the explorer shows the preview; the note refers to it; one step to undo', async () => {
      await drop('sure.csv');
      await picture('dropped-preview');
      await pick('Refer to the file');
      await editorHas(/The end\.\n\n```readings\nfrom: sure\.csv\n[^]*sha256: /);
      await picture('dropped');
      await keys('Control+z');
      await editorHas(/The end\.\n$/);
      await diskIsPlan('undo did not bring the note back');
    });
    await check('Escape in the preview of a drop leaves the note as it was', async () => {
      await drop('sure.csv');
      await keys('Escape');
      await page.waitForTimeout(500);
      await save();
      await diskIsPlan('the note has changed');
    });
    await check('a dropped text file that holds no table is dropped as always', async () => {
      await drop('words.txt', () => page.waitForTimeout(1500));
      expect(!await widget.isVisible(), 'a preview is shown');
      await editorHas(/words\.txt/);
      await keys('Control+z');
      await editorHas(/The end\.\n$/);
    });
    await check('a file from outside the folder is imported as a table, or copied beside the note and pinned', async () => {
      await cursorAt('The end.');
      await command('Evenwater: Import Readings');
      await pickFile(outside);
      await preview();
      await widget.getByText('Copy the file beside the note').waitFor({ timeout: 10_000 });
      await pick('Copy the file');
      await diskHas(/```readings\nfrom: elsewhere\.csv\n[^]*sha256: [0-9a-f]{64}\n```/);
      expect((await fs.readFile(path.join(folder, 'elsewhere.csv'))).equals(await fs.readFile(outside)), 'the copy is not the file');
    });
  } finally {
    await page.context().close();
    await server.stop();
    await fs.rm(parent, { recursive: true, force: true });
  }
  return count;
}
