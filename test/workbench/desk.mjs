// The desk by keyboard and pointer, where mocha cannot reach: suggestions open while typing inside blocks and claims of a note
// and nowhere else, a hover shows its chart, a problem's code leads to its explanation. Each check starts from the note as it is on disk.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { newPage, previewFrame } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings, startServer } from '../../scripts/workbench/server.mjs';
import { copyFixtures } from '../../scripts/workbench/suites.mjs';
import { handInSettings, startWebServer } from '../../scripts/workbench/webServer.mjs';
import { expect } from './checks.mjs';

/** The note that a page shows. */
const shownIn = new Map();

/** Puts the cursor behind the first `text` of the note as it stands on disk. */
async function cursorBehind(page, text) {
  const file = shownIn.get(page);
  const before = readFileSync(path.join(root, 'test/workbench/workspace', file), 'utf8').split(text, 1)[0];
  expect(before.length > 0, `${text} does not stand in ${file}`);
  const lines = `${before}${text}`.split('\n');
  await page.keyboard.press('Control+G');
  const input = page.locator('.quick-input-widget input').first();
  await input.waitFor({ timeout: 15_000 });
  await input.fill(`:${lines.length}:${lines.at(-1).length + 1}`);
  await page.keyboard.press('Enter');
  await page.locator('.statusbar [id="status.editor.selection"]', { hasText: `Ln ${lines.length}, Col ${lines.at(-1).length + 1}` }).first().waitFor({ timeout: 15_000 });
  await page.waitForFunction(() => document.activeElement?.closest('.editor-instance .monaco-editor') !== null, undefined, { timeout: 15_000 });
}

const suggestions = (page) => page.locator('.suggest-widget.visible .monaco-list-row');

/** Types behind `text` like a person, in the place of what is `erased` first, and tells which suggestions stand there then. */
async function suggestedWhileTyping(page, text, typed, { expected = true, erased = '' } = {}) {
  await cursorBehind(page, text);
  for (let each = 0; each < erased.length; each += 1) await page.keyboard.press('Backspace');
  await page.keyboard.type(typed, { delay: 60 });
  if (expected) await suggestions(page).first().waitFor({ timeout: 10_000 }).catch(() => {});
  else await page.waitForTimeout(1500);
  const labels = await suggestions(page).locator('.label-name').allInnerTexts();
  await page.keyboard.press('Escape');
  return labels.map((label) => label.trim());
}

/** Runs a command by its name, through the palette. */
async function command(page, title) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-widget input').first().waitFor({ timeout: 15_000 });
  await page.keyboard.type(title);
  await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first().waitFor({ timeout: 30_000 });
  await page.keyboard.press('Enter');
}

const opens = (text, typed, wanted, erased = '') => async ({ page }) => {
  const labels = await suggestedWhileTyping(page, text, typed, { erased });
  expect(labels.includes(wanted), `${wanted} is not among ${JSON.stringify(labels)}`);
};

/** Rests the pointer on a word of the editor. */
async function pointAt(page, line, word) {
  await cursorBehind(page, line);
  await page.keyboard.press('Control+K');
  await page.keyboard.press('Control+I'); // Show Hover, by keyboard.
  await page.locator('.monaco-hover:not(.hidden) .hover-contents').first().waitFor({ timeout: 15_000 });
  return page.locator('.monaco-hover:not(.hidden)').filter({ hasText: word }).first();
}

/** Backgrounds of the small chart, by the workbench's own class for its theme. */
const grounds = { 'vs-dark': '#14181D', vs: '#FFFFFF' };

async function chartInHover({ page, pictures, name }) {
  const hover = await pointAt(page, '{0.24 mg/L = fall(mat.DO', 'Computed, and the text matches');
  const picture = hover.locator('img').first();
  await picture.waitFor({ timeout: 10_000 });
  const shown = await picture.evaluate((image) => ({ width: image.naturalWidth, height: image.naturalHeight, source: image.src.slice(0, 26), alternative: image.alt }));
  expect(shown.width === 320 && shown.height === 110 && shown.source.startsWith('data:image/svg+xml;base64,'), JSON.stringify(shown));
  expect(/mat\.DO: 8 readings from 20:00 to 23:30, lowest 7\.66 mg\/L, highest 8\.26 mg\/L/.test(shown.alternative), shown.alternative);
  const svg = Buffer.from((await picture.getAttribute('src')).split(',')[1], 'base64').toString();
  const theme = await page.locator('.monaco-workbench').first().evaluate((workbench, known) => known.find((each) => workbench.classList.contains(each)), Object.keys(grounds));
  expect(svg.includes(`fill="${grounds[theme]}"`), `in the theme ${theme} the chart has another ground: ${svg.slice(0, 200)}`);
  if (pictures) await page.screenshot({ path: path.join(pictures, `hover-${name}-${theme}.png`) });
  await page.keyboard.press('Escape');
}

const checks = {
  'a letter opens suggestions in the plan': opens('water depth: 28 cm', '\nv', 'volume'),
  'a letter opens suggestions in a head of readings': opens('open.DO      open.T', 'o', 'open.T', 'open.T'),
  'a letter opens suggestions in named results': opens('first-loss = percent-fall(mat.DO, light-off..22:30)', '\nx = 2 *f', 'fall'),
  'a letter opens suggestions in a figure': opens('show: [mat.DO, open.DO', ',m', 'mat.T'),
  'a letter opens suggestions inside a claim': opens('{0.24 mg/L = ', 'p', 'percent-fall', ''),
  'a letter in a note’s prose opens nothing': async ({ page }) => {
    const labels = await suggestedWhileTyping(page, 'Nothing else is claimed here.', ' fall', { expected: false });
    expect(labels.length === 0, `suggested in prose: ${JSON.stringify(labels)}`);
  },
  'a hover on a series shows its chart, in the colours of the theme': (place) => chartInHover(place),
  'a hover on a reading shows its uncertainty, the step before it and its place in the night': async ({ page, pictures, name }) => {
    const hover = await pointAt(page, '22:30    8.0', 'dissolved oxygen, floating-mat tank');
    const words = (await hover.innerText()).replaceAll('\u00a0', ' ');
    for (const wanted of [/8\.02 ± 0\.1\d mg\/L/, /-0\.24 mg\/L since the reading above/]) expect(wanted.test(words), `${wanted} not in ${words}`);
    const svg = Buffer.from((await hover.locator('img').first().getAttribute('src')).split(',')[1], 'base64').toString();
    expect(svg.includes('r="6"'), 'the reading is not ringed');
    if (pictures) await page.screenshot({ path: path.join(pictures, `hover-reading-${name}.png`) });
    await page.keyboard.press('Escape');
  },
};

/** What opens another editor: each on a page of its own. */
const explanationLink = {
  'a problem’s code leads to its explanation': async ({ page }) => {
    await cursorBehind(page, '{? = last(mat.DO)}');
    await page.keyboard.press('ArrowLeft');
    const opened = page.locator('.tab.active', { hasText: 'claim-unfilled.md' });
    // A hover is drawn again as its parts arrive, and a click may miss: it is asked for anew.
    for (let attempt = 0; attempt < 8 && await opened.count() === 0; attempt += 1) {
      await page.keyboard.press('Control+K');
      await page.keyboard.press('Control+I');
      const code = page.locator('.monaco-hover:not(.hidden) a.code-link:visible', { hasText: 'claim-unfilled' }).first();
      await code.waitFor({ timeout: 5000 }).catch(() => {});
      // The link may run over two lines: its first piece is clicked.
      const place = await code.evaluate((link) => { const box = link.getClientRects()[0]; return box ? [box.x + box.width / 2, box.y + box.height / 2] : null; }, undefined, { timeout: 2000 }).catch(() => null);
      if (place) await page.mouse.click(...place);
      await opened.waitFor({ timeout: 3000 }).catch(() => {});
    }
    expect(await opened.count() > 0, 'the explanation was not opened');
    await page.locator('.editor-instance .view-line', { hasText: 'warning, with a fix' }).first().waitFor({ timeout: 20_000 });
  },
};

const explainProblem = {
  'Explain Problem opens the reference at the problem under the cursor': async ({ page }) => {
    await cursorBehind(page, '{? = last(mat.DO)}');
    await page.keyboard.press('ArrowLeft');
    await command(page, 'Evenwater: Explain Problem');
    const frame = await previewFrame(page, '#claim-unfilled', 60_000);
    await frame.waitForFunction(() => {
      const { top } = document.querySelector('#claim-unfilled').getBoundingClientRect();
      return top > -100 && top < innerHeight;
    }, undefined, { timeout: 20_000 });
  },
};

const plainChecks = {
  'a letter in plain Markdown opens nothing, in fences neither': async ({ page }) => {
    const labels = await suggestedWhileTyping(page, 'braces', ' fal', { expected: false });
    expect(labels.length === 0, `suggested in plain Markdown: ${JSON.stringify(labels)}`);
  },
};

async function runIn(name, addressOf, browser, pictures, prepare = async () => {}) {
  const count = { passed: 0, failed: 0, skipped: 0 };
  for (const [file, wanted] of [['night.tank.md', checks], ['night.tank.md', explanationLink], ['night.tank.md', explainProblem], ['plain.md', plainChecks]]) {
    const page = await newPage(browser, { width: 1400, height: 1000 });
    shownIn.set(page, file);
    try {
      await prepare(page);
      await page.goto(addressOf(file));
      await page.locator(`.monaco-editor[data-uri$="${file}"] .view-line`).first().waitFor({ timeout: 90_000 });
      if (file === 'night.tank.md') await page.locator('.codelens-decoration').first().waitFor({ timeout: 60_000 });
      else await page.waitForTimeout(5000);
      await page.locator('.monaco-editor .view-lines').first().click();
      for (const [title, check] of Object.entries(wanted)) {
        try {
          await check({ page, pictures, name });
          if (wanted === checks) await command(page, 'File: Revert File');
          count.passed += 1;
          console.log(`    ✔ ${name}: ${title}`);
        } catch (error) {
          count.failed += 1;
          console.log(`    ✘ ${name}: ${title}\n      ${error.message}`);
          await page.screenshot({ path: path.join(root, 'workbench/log', `desk-${name}-${count.failed}.png`) }).catch(() => {});
          await page.keyboard.press('Escape');
          if (wanted === checks) await command(page, 'File: Revert File').catch(() => {});
        }
      }
    } catch (error) {
      count.failed += 1;
      console.log(`    ✘ ${name}: ${error.message}`);
      await page.screenshot({ path: path.join(root, 'workbench/log', `desk-${name}.png`) }).catch(() => {});
    } finally {
      await page.context().close();
    }
  }
  return count;
}

/** The checks in the Node host's workbench and in the browser-only one. `pictures`: a folder for screenshots. */
export async function runDesk(browser, { pictures = null } = {}) {
  const notes = await copyFixtures();
  const server = await startServer();
  const web = await startWebServer({ folder: notes.folder, extension: root });
  try {
    const first = await runIn('node-host', (file) => pageAddress(server, { folder: notes.folder, file, extension: root }), browser, pictures);
    const second = await runIn('web-host', (file) => {
      const payload = JSON.stringify([['skipWelcome', 'true'], ['openFile', `vscode-test-web://mount/${file}`]]);
      return `${web.origin}/?${new URLSearchParams({ payload })}`;
    }, browser, pictures, (page) => handInSettings(page, quietSettings));
    return { passed: first.passed + second.passed, failed: first.failed + second.failed, skipped: 0 };
  } finally {
    await server.stop();
    await web.stop();
    await notes.remove();
  }
}
