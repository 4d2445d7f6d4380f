// Changes readings by keyboard in a real editor: correct, leave out, mark, remark, event, seal. Then brings tables in.
import { runImports } from './imports.mjs';
import { expect } from './checks.mjs';
import { openDesk } from './readingsDesk.mjs';

export async function runChanges(browser, options = {}) {
  const first = await runByHand(browser, options);
  const second = await runImports(browser, options);
  return { passed: first.passed + second.passed, failed: first.failed + second.failed, skipped: 0 };
}

async function runByHand(browser, options) {
  const { page, widget, picture, keys, answer, command, cursorAt, diskHas, notification, pick, check, count, close } = await openDesk(browser, options);
  try {
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
  } finally {
    await close();
  }
  return count;
}
