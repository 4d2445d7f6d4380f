// The desk by keyboard and pointer, where mocha cannot reach: suggestions open while typing inside blocks and claims of a note
// and nowhere else, a hover shows its chart, a problem's code leads to its explanation. Each check starts from the note as it is on disk.
import fs from 'node:fs/promises';
import path from 'node:path';
import { previewFrame } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings, startServer } from '../../scripts/workbench/server.mjs';
import { copyFixtures } from '../../scripts/workbench/suites.mjs';
import { handInSettings, startWebServer } from '../../scripts/workbench/webServer.mjs';
import { expect } from './checks.mjs';
import { command, cursorBehind, runParts, shows } from './deskPage.mjs';
import { linkedChecks } from './deskLinked.mjs';
import { mendChecks, refusedChecks } from './deskFixes.mjs';

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

/** The parts of a hover that are cut before anybody scrolls. */
const cutIn = (hover, parts) => hover.evaluate((box, wanted) => {
  const { bottom } = box.getBoundingClientRect();
  const all = [...box.querySelectorAll('img, p, .monaco-tokenized-source, code')];
  return wanted.filter((part) => !all.some((each) => (part === 'chart' ? each.tagName === 'IMG' : each.textContent.replaceAll('\u00a0', ' ').includes(part)) && each.getBoundingClientRect().bottom <= bottom));
}, parts);

/** Backgrounds of the small chart, by the workbench's own class for its theme. */
const grounds = { 'vs-dark': '#14181D', vs: '#FFFFFF' };

async function chartInHover({ page, pictures, name }) {
  const hover = await pointAt(page, '{0.24 mg/L = fall(mat.DO', 'Computed, and the text matches');
  const picture = hover.locator('img').first();
  await picture.waitFor({ timeout: 10_000 });
  const shown = await picture.evaluate((image) => ({ width: image.naturalWidth, height: image.naturalHeight, source: image.src.slice(0, 26), alternative: image.alt }));
  expect(shown.width === 320 && shown.height === 76 && shown.source.startsWith('data:image/svg+xml;base64,'), JSON.stringify(shown));
  expect(/mat\.DO: 8 readings from 20:00 to 23:30, lowest 7\.66 mg\/L, highest 8\.26 mg\/L/.test(shown.alternative), shown.alternative);
  const svg = Buffer.from((await picture.getAttribute('src')).split(',')[1], 'base64').toString();
  const theme = await page.locator('.monaco-workbench').first().evaluate((workbench, known) => known.find((each) => workbench.classList.contains(each)), Object.keys(grounds));
  expect(svg.includes(`fill="${grounds[theme]}"`), `in the theme ${theme} the chart has another ground: ${svg.slice(0, 200)}`);
  const cut = await cutIn(hover, ['chart', 'Computed, and the text matches', '0.24 ± 0.01 mg/L', 'fall(mat.DO, light-off..22:30)', 'The fall in the dissolved oxygen', 'highest 8.26 mg/L']);
  expect(cut.length === 0, `cut at the bottom of the hover: ${cut.join(' | ')}`);
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
  'a hover on a claim to fill in holds value, formula and chart beside its problem': async ({ page }) => {
    const hover = await pointAt(page, '{? = last(mat.DO', 'Not filled in yet');
    await hover.locator('img').first().waitFor({ timeout: 10_000 });
    const cut = await cutIn(hover, ['chart', 'Not filled in yet', '7.66 ± 0.12 mg/L', 'last(mat.DO)']);
    expect(cut.length === 0, `cut at the bottom of the hover: ${cut.join(' | ')}`);
    await page.keyboard.press('Escape');
  },
  'a hover on a reading shows its uncertainty, the step before it and its place in the night': async ({ page, pictures, name }) => {
    const hover = await pointAt(page, '22:30    8.0', 'dissolved oxygen, floating-mat tank');
    const words = (await hover.innerText()).replaceAll('\u00a0', ' ');
    for (const wanted of [/8\.02 ± 0\.1\d mg\/L/, /-0\.24 mg\/L since the reading above/]) expect(wanted.test(words), `${wanted} not in ${words}`);
    const svg = Buffer.from((await hover.locator('img').first().getAttribute('src')).split(',')[1], 'base64').toString();
    expect(svg.includes('r="6"'), 'the reading is not ringed');
    const cut = await cutIn(hover, ['chart', '0.24 mg/L since the reading above', '8.02 ± 0.12 mg/L', 'open.DO misread', 'highest 8.26 mg/L']);
    expect(cut.length === 0, `cut at the bottom of the hover: ${cut.join(' | ')}`);
    if (pictures) await page.screenshot({ path: path.join(pictures, `hover-reading-${name}.png`) });
    await page.keyboard.press('Escape');
  },
};

/** Where the lines above blocks stand, those that say nothing, and where the value at a line's end stands. */
const beside = (page) => page.evaluate(() => {
  const top = (element) => Math.round(element.getBoundingClientRect().top);
  const lenses = [...document.querySelectorAll('.editor-instance .codelens-decoration')];
  return {
    lenses: lenses.map(top).join(' '), silent: lenses.filter((lens) => /^[\s–|]*$/u.test(lens.textContent)).length,
    value: [...document.querySelectorAll('.editor-instance .view-line')].filter((line) => /= 7\.66 mg\/L$/u.test(line.textContent.replaceAll('\u00a0', ' '))).map(top).join(' '),
  };
});

const keepStill = {
  'lines above blocks and values at line ends keep still while the plan is broken': async ({ page }) => {
    await page.setViewportSize({ width: 1400, height: 1700 });
    await cursorBehind(page, 'unit: mg/L');
    await shows(page, '= 7.66 mg/L');
    const before = JSON.stringify(await beside(page));
    expect(/"lenses":"\d+ \d+","silent":0,"value":"\d+"/.test(before), before);
    const same = async () => { const now = JSON.stringify(await beside(page)); expect(now === before, `${before} became ${now}`); };
    await page.keyboard.type('}', { delay: 60 });
    const problems = page.locator('.statusbar [id="status.problems"]').first();
    for (const end = Date.now() + 20_000; !/errors: [1-9]/i.test(await problems.getAttribute('aria-label')); await page.waitForTimeout(50)) {
      await same();
      expect(Date.now() < end, 'the plan is not broken');
    }
    await page.waitForTimeout(1500);
    await same();
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

const parts = [
  { file: 'night.tank.md', checks, reverts: true },
  { file: 'night.tank.md', checks: explanationLink },
  { file: 'night.tank.md', checks: explainProblem },
  { file: 'plain.md', checks: plainChecks },
  { file: 'night.tank.md', checks: mendChecks, reverts: true },
  { file: 'night.tank.md', checks: keepStill },
  { folder: 'test/workbench/desk', file: 'fahrenheit.tank.md', checks: refusedChecks },
];

/** Linked editing has an editor of its own: switched on, it answers between the keys that the other checks type. */
const linked = { settings: { 'editor.linkedEditing': true }, parts: [{ file: 'night.tank.md', checks: linkedChecks, reverts: true }] };

async function inNodeHost(browser, folder, { settings = {}, parts: each }, pictures) {
  const server = await startServer({ settings });
  try {
    return await runParts(each, { name: 'node-host', addressOf: (file) => pageAddress(server, { folder, file, extension: root }), browser, pictures });
  } finally {
    await server.stop();
  }
}

async function inWebHost(browser, folder, { settings = {}, parts: each }, pictures) {
  const web = await startWebServer({ folder, extension: root });
  const addressOf = (file) => {
    const payload = JSON.stringify([['skipWelcome', 'true'], ['openFile', `vscode-test-web://mount/${file}`]]);
    return `${web.origin}/?${new URLSearchParams({ payload })}`;
  };
  try {
    return await runParts(each, { name: 'web-host', addressOf, browser, pictures, prepare: (page) => handInSettings(page, { ...quietSettings, ...settings }) });
  } finally {
    await web.stop();
  }
}

/** The checks in the Node host's workbench and in the browser-only one. `pictures`: a folder for screenshots. */
export async function runDesk(browser, { pictures = null } = {}) {
  const notes = await copyFixtures();
  await fs.cp(path.join(root, 'test/workbench/desk'), notes.folder, { recursive: true });
  const total = { passed: 0, failed: 0, skipped: 0 };
  try {
    for (const run of [inNodeHost, inWebHost]) {
      for (const each of [{ parts }, linked]) {
        const count = await run(browser, notes.folder, each, pictures);
        for (const key of Object.keys(total)) total[key] += count[key];
      }
    }
    return total;
  } finally {
    await notes.remove();
  }
}
