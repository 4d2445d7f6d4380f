// Brings tables into a note in a real editor: by command, by paste, and by dropping a logger's file. All data are invented.
import fs from 'node:fs/promises';
import path from 'node:path';
import { expect } from './checks.mjs';
import { openDesk } from './readingsDesk.mjs';

const tabbed = 'time\topen.T\n2026-03-14 20:00\t24.7\n2026-03-14 20:30\t24.6\n';
const semicolons = 'Time;Pressure (hPa)\n14.03.2026 20:00;1009,4\n14.03.2026 20:30;1009,2\n';
const unclear = 'Stamp;open.T\n03/04/2026 20:10;24,9\n03/04/2026 20:20;24,9\n';
const logger = 'Logger 7\n\nStamp;Probe 1;Battery\n14/03/2026 20:10;76,6;3,9\n14/03/2026 20:20;oops;3,9\nlater;76,4;3,8\n14/03/2026 20:30;76,3;3,8\n';
const files = {
  'plain.md': '# Plain\n\nWords.\n', 'probe.csv': logger, 'sure.csv': tabbed.replaceAll('\t', ','),
  'words.txt': 'Only words, no table.\nAnd some more.\n', '../elsewhere.csv': logger.replaceAll('76,', '75,'),
};

export async function runImports(browser, options = {}) {
  const { page, widget, picture, keys, answer, command, cursorAt, diskHas, diskIsPlan, save, editorHas, open, fresh, notification, copy, pickFile, preview, pick, check, folder, count, close } = await openDesk(browser, { ...options, files });
  const outside = path.join(folder, '../elsewhere.csv');
  try {
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
      await keys('Escape', 'Control+1', 'Control+z');
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
    await close();
  }
  return count;
}
