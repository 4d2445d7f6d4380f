// Linked editing in the real editor, for whoever has switched it on: a named result and its uses change together, and nothing else does.
import { expect } from './checks.mjs';
import { cursorBehind, shows } from './deskPage.mjs';

const linkedPlaces = (page) => page.locator('.editor-instance .linked-editing-decoration');

/** Waits until so many places are linked. */
async function linked(page, count) {
  for (const end = Date.now() + 15_000; await linkedPlaces(page).count() !== count; await page.waitForTimeout(50)) {
    expect(Date.now() < end, `${await linkedPlaces(page).count()} places are linked, not ${count}`);
  }
}

/** Puts the cursor behind `text` and waits until the editor has linked the name there; what was linked before has gone first. */
async function linkedBehind(page, text) {
  await cursorBehind(page, '## What happened');
  await linked(page, 0);
  await cursorBehind(page, text);
  await linked(page, 2);
}

export const linkedChecks = {
  'a result that is renamed where it stands takes its claim along, and back in one step': async ({ page }) => {
    await linkedBehind(page, '\nfirst-loss');
    await page.keyboard.type('es', { delay: 60 });
    await shows(page, 'first-losses = percent-fall(', '{2.9 % = first-losses}');
    await page.keyboard.press('Control+Z');
    await shows(page, 'first-loss = percent-fall(', '{2.9 % = first-loss}');
  },
  'and from the claim': async ({ page }) => {
    await linkedBehind(page, '{2.9 % = first-loss');
    await page.keyboard.press('Backspace');
    await page.keyboard.type('t', { delay: 60 });
    await shows(page, 'first-lost = percent-fall(', '{2.9 % = first-lost}');
  },
  'a character that no name holds ends it': async ({ page }) => {
    await linkedBehind(page, '\nfirst-loss');
    await page.keyboard.type(' + 1', { delay: 60 });
    await shows(page, 'first-loss + 1 = percent-fall(', '{2.9 % = first-loss}');
  },
  'a tank is not linked: it is renamed with F2, which checks the new name first': async ({ page }) => {
    await cursorBehind(page, 'percent-fall(mat');
    await page.waitForTimeout(1500);
    expect(await linkedPlaces(page).count() === 0, 'the tank is linked');
    await page.keyboard.type('s', { delay: 60 });
    await shows(page, 'percent-fall(mats.DO', 'show: [mat.DO, open.DO]');
  },
};
