// The editor set to German: what our extension shows is German, from the manifest to the preview. The editor's own words stay
// English, because the language pack of the test has none.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { newPage, openPreview, previewFrame } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings, startServer } from '../../scripts/workbench/server.mjs';
import { copyFixtures } from '../../scripts/workbench/suites.mjs';
import { handInSettings, startWebServer } from '../../scripts/workbench/webServer.mjs';
import { expect } from './checks.mjs';
import { putCursorBehind } from './cursor.mjs';
import { answer } from './keyboard.mjs';

const file = 'night.tank.md';
const note = readFileSync(path.join(root, 'test/workbench/workspace', file), 'utf8');

/** Puts the cursor behind the first `text` of the note, from wherever the keys go. */
async function cursorBehind(page, text) {
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+1'); // Back from a panel into the editor.
  await putCursorBehind(page, note, text);
}

/** What the hover at the end of the first `text` says, by keyboard. */
async function hoverBehind(page, text) {
  await cursorBehind(page, text);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Control+K');
  await page.keyboard.press('Control+I');
  const hover = page.locator('.monaco-hover:not(.hidden) .hover-contents').first();
  await hover.waitFor({ timeout: 15_000 });
  await page.waitForTimeout(500);
  return (await page.locator('.monaco-hover:not(.hidden)').first().innerText()).replaceAll('\u00a0', ' ');
}

/** Opens the palette from the editor; asked for again where a busy machine swallowed the key. */
async function openPalette(page, tries = 4) {
  const input = page.locator('.quick-input-widget input').first();
  for (let attempt = 1; ; attempt += 1) {
    await page.keyboard.press('Control+1'); // Back from the preview, which keeps keys to itself.
    await page.keyboard.press('F1');
    const open = await input.waitFor({ timeout: 5000 }).then(() => true, () => false);
    if (open) return;
    if (attempt === tries) throw new Error('The palette did not open.');
  }
}

/** Waits until `look` gives a text that matches; the last one in the error. */
async function says(look, pattern, timeout = 20_000) {
  let text = '';
  for (const end = Date.now() + timeout; Date.now() < end;) {
    text = (await look()).replaceAll('\u00a0', ' ');
    if (pattern.test(text)) return text;
    await new Promise((resolve) => { setTimeout(resolve, 100); });
  }
  throw new Error(`${pattern} was not said, but: ${text.slice(0, 400)}`);
}

const checks = {
  'lenses': async ({ page, shoot }) => {
    await says(async () => (await page.locator('.codelens-decoration').allInnerTexts()).join('\n'), /Beleg|Messzeiten/);
    await shoot();
  },
  'problems': async ({ page, shoot }) => {
    await page.keyboard.press('Control+Shift+M');
    await says(async () => (await page.locator('.markers-panel').first().innerText()), /nicht ausgefüllt; `last\(mat\.DO\)` ergibt/);
    await shoot();
  },
  'a hover on a claim': async ({ page, shoot }) => {
    const text = await hoverBehind(page, '{0.24 mg/L = fall');
    await shoot();
    expect(/Berechnet, und der Text stimmt/.test(text) && /[Dd]er Abfall/.test(text), text);
    await page.keyboard.press('Escape');
  },
  'a hover on a key of the plan': async ({ page, shoot }) => {
    const text = await hoverBehind(page, 'water depth');
    await shoot();
    expect(/Höhe der Wassersäule/.test(text), text);
    await page.keyboard.press('Escape');
  },
  'suggestions': async ({ page, shoot }) => {
    await cursorBehind(page, 'first-loss = ');
    await page.keyboard.press('Control+Space');
    await page.locator('.suggest-widget.visible .monaco-list-row').first().waitFor({ timeout: 15_000 });
    await page.keyboard.type('percent-f', { delay: 40 });
    const details = page.locator('.suggest-details-container');
    if (!await details.isVisible()) await page.keyboard.press('Control+Space');
    await says(() => details.innerText(), /Abfall im Zeitraum in Prozent des ersten Messwerts/);
    await shoot();
    await page.keyboard.press('Escape');
    for (let typed = 'percent-f'.length; typed > 0; typed -= 1) await page.keyboard.press('Backspace');
  },
  'commands in the palette': async ({ page, shoot }) => {
    await page.keyboard.press('F1');
    await page.keyboard.type('Evenwater: Notiz');
    await says(() => page.locator('.quick-input-widget').innerText(), /Evenwater: Notiz prüfen/);
    await shoot();
    await page.keyboard.press('Escape');
  },
  'problems in the preview of an English note': async ({ page, shoot }) => {
    await cursorBehind(page, '= percent-fall');
    await page.keyboard.type('s');
    await openPreview(page);
    const frame = await previewFrame(page, '.evenwater-claim');
    const said = await says(() => frame.locator('body').innerText(), /Eine Funktion „percent-falls“ gibt es nicht/);
    await frame.locator('text=percent-falls').first().scrollIntoViewIfNeeded();
    await shoot();
    expect(said.includes('lights-off'), 'what the note says is no longer English');
  },
  'a new note': async ({ page, shoot }) => {
    const before = await page.locator('.tab').count();
    await page.keyboard.press('Control+1');
    await openPalette(page);
    await page.keyboard.type('Evenwater: Neuer Versuch');
    await page.locator('.quick-input-list .monaco-list-row', { hasText: 'Neuer Versuch' }).first().waitFor({ timeout: 30_000 });
    await page.keyboard.press('Enter');
    const list = page.locator('.quick-input-list');
    await says(() => list.innerText(), /Sauerstoff über Nacht/);
    // The line at the end of the list turns the language, and turns it back.
    const chosen = () => list.locator('.monaco-list-row.focused').first().innerText();
    await says(chosen, /Sauerstoff über Nacht/);
    await page.keyboard.press('ArrowUp');
    await says(chosen, /Sprache der Notiz: Deutsch/);
    for (const language of ['English', 'Deutsch']) {
      await page.keyboard.press('Enter');
      await says(chosen, new RegExp(`Sprache der Notiz: ${language}`));
    }
    await answer(page, 1, 'Sauerstoff über Nacht');
    for (let step = 2; step <= 10; step += 1) await answer(page, step, '');
    await page.locator('.tab.active', { hasText: 'sauerstoff-über-nacht.tank.md' }).waitFor({ timeout: 30_000 });
    expect(await page.locator('.tab').count() > before, 'no tab was opened');
    const lines = page.locator('.editor-group-container.active .view-lines').first();
    for (const written of [/# Senkt\s+eine\s+Schwimmpflanzendecke/, /language: de/, /label: Becken mit freier Oberfläche/]) await says(() => lines.innerText(), written);
    await says(async () => (await page.locator('.codelens-decoration').allInnerTexts()).join('\n'), /Plan: keine Probleme/, 60_000);
    await openPreview(page);
    await says(async () => (await previewFrame(page, '.evenwater-plan')).locator('body').innerText(), /Licht aus um 22:00 Uhr/);
    await shoot();
  },
};

/** What the bundle for browsers has to bring along by itself: its strings, its words, its help. */
const inWebHost = ['lenses', 'problems', 'suggestions', 'problems in the preview of an English note'];

/** Runs checks in one page; `prefix` keeps the pictures of two hosts apart. */
async function runChecks(page, { address, names, prefix, pictures, before = async () => {} }) {
  const count = { passed: 0, failed: 0, skipped: 0 };
  const picture = (folder, name) => page.screenshot({ path: path.join(folder, `${prefix}-${name.replace(/\W+/g, '-')}.png`) });
  try {
    await before();
    await page.goto(address);
    await page.locator('.codelens-decoration').first().waitFor({ timeout: 90_000 });
    await page.locator('.monaco-editor .view-lines').first().click();
    for (const name of names) {
      try {
        await checks[name]({ page, shoot: async () => { if (pictures) await picture(pictures, name); } });
        count.passed += 1;
        console.log(`    ✔ ${name}`);
      } catch (error) {
        count.failed += 1;
        console.log(`    ✘ ${name}\n      ${error.message}`);
        await picture(path.join(root, 'workbench/log'), name).catch(() => {});
        await page.keyboard.press('Escape');
      }
    }
  } catch (error) {
    count.failed += 1;
    console.log(`    ✘ ${error.message}`);
    await picture(path.join(root, 'workbench/log'), 'start').catch(() => {});
  } finally {
    await page.context().close();
  }
  return count;
}

const size = { width: 1500, height: 1000 };

async function inNode(browser, pictures) {
  const notes = await copyFixtures();
  const server = await startServer({ locale: 'de' });
  try {
    return await runChecks(await newPage(browser, size), {
      address: pageAddress(server, { folder: notes.folder, file, extension: root }), names: Object.keys(checks), prefix: 'german', pictures,
    });
  } finally {
    await server.stop();
    await notes.remove();
  }
}

async function inWeb(browser, pictures) {
  const notes = await copyFixtures();
  const server = await startWebServer({ folder: notes.folder, extension: root });
  const page = await newPage(browser, size);
  const payload = JSON.stringify([['skipWelcome', 'true'], ['openFile', `vscode-test-web://mount/${file}`]]);
  const before = async () => {
    await handInSettings(page, quietSettings);
    // What a language pack's messages say of themselves when a browser has loaded them.
    await page.addInitScript(() => { globalThis._VSCODE_NLS_LANGUAGE = 'de'; });
  };
  try {
    return await runChecks(page, { address: `${server.origin}/?${new URLSearchParams({ payload })}`, names: inWebHost, prefix: 'german-web', pictures, before });
  } finally {
    await server.stop();
    await notes.remove();
  }
}

/** `pictures`: a folder for screenshots. */
export async function runGerman(browser, { pictures = null } = {}) {
  const first = await inNode(browser, pictures);
  console.log('    in the web host:');
  const second = await inWeb(browser, pictures);
  return { passed: first.passed + second.passed, failed: first.failed + second.failed, skipped: 0 };
}
