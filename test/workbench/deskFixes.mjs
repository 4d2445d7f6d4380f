// Quick fixes in the real editor: the preferred one by its key, all safe ones at once, each one step to undo; and what cannot be
// mended says why to whoever asks.
import { expect } from './checks.mjs';
import { command, cursorBehind, shows } from './deskPage.mjs';

const menu = (page) => page.locator('.action-widget .monaco-list-row.action');

/** Writes a comma for the point of a number that ends in two decimals. */
async function comma(page, text) {
  await cursorBehind(page, text.slice(0, -3));
  await page.keyboard.press('Delete');
  await page.keyboard.type(',');
  await shows(page, text.replace('.', ','));
}

export const mendChecks = {
  'Auto Fix takes the preferred fix, and one step undoes it': async ({ page }) => {
    await comma(page, '23:00    7.84');
    await command(page, 'Auto Fix...');
    await shows(page, '23:00    7.84');
    await page.keyboard.press('Control+Z');
    await shows(page, '23:00    7,84');
  },
  'Fix All mends every decimal comma, and one step undoes all of it': async ({ page }) => {
    await comma(page, '23:00    7.84');
    await comma(page, '23:30    7.66');
    await command(page, 'Fix All');
    await shows(page, '23:00    7.84', '23:30    7.66');
    await page.keyboard.press('Control+Z');
    await shows(page, '23:00    7,84', '23:30    7,66');
  },
};

export const refusedChecks = {
  'a fix that would break a seal is not offered; the way that keeps it is, with the reason': async ({ page, pictures, name }) => {
    await cursorBehind(page, 'time   lid.T');
    await page.keyboard.press('Control+.');
    await menu(page).first().waitFor({ timeout: 15_000 });
    const offered = await menu(page).allInnerTexts();
    if (pictures) await page.screenshot({ path: `${pictures}/fix-sealed-${name}.png` });
    expect(offered.some((each) => each.includes('The table is sealed: correct the reading instead')), offered.join(' | '));
    expect(offered.length === 1, offered.join(' | '));
    await page.keyboard.press('Enter');
    await page.locator('.quick-input-widget .quick-input-title', { hasText: 'Which reading?' }).waitFor({ timeout: 15_000 });
    await page.keyboard.press('Escape');
  },
  'Fix All says why there is nothing to mend': async ({ page, pictures, name }) => {
    await cursorBehind(page, 'time   lid.T');
    await command(page, 'Fix All');
    await page.locator('.monaco-editor-overlaymessage', { hasText: 'There is nothing that could be mended without changing a value.' }).first().waitFor({ timeout: 15_000 });
    if (pictures) await page.screenshot({ path: `${pictures}/fix-all-reason-${name}.png` });
    await page.keyboard.press('Escape');
  },
  'Refactor says why a sentence becomes no statement': async ({ page, pictures, name }) => {
    await cursorBehind(page, 'The keeper slept');
    await command(page, 'Refactor...');
    const disabled = page.locator('.action-widget .monaco-list-row.option-disabled', { hasText: 'Nothing that this note computes fits the sentence.' });
    await disabled.first().waitFor({ timeout: 15_000 });
    if (pictures) await page.screenshot({ path: `${pictures}/refactor-reason-${name}.png` });
    await page.keyboard.press('Escape');
  },
};
