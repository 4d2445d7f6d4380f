// `npm run pictures`: makes the README's pictures again: the sample in the workbench, editor and preview side by side.
// `node scripts/pictures.mjs --all --to DIR` takes every picture in every theme, to look at.
import fs from 'node:fs/promises';
import path from 'node:path';
import { installMissing, root, run } from './install.mjs';
import { prepareWorkbench } from './workbench/install.mjs';

const themes = {
  dark: 'Dark Modern', light: 'Light Modern', 'high-contrast': 'Default High Contrast', 'high-contrast-light': 'Default High Contrast Light',
};
const sample = 'overnight-oxygen.tank.md';
const to = process.argv.includes('--to') ? path.resolve(process.argv[process.argv.indexOf('--to') + 1]) : path.join(root, 'media/pictures');
/** The pictures that the README shows; with --all every one in every theme. */
const wanted = new Set(['note-and-preview-dark', 'plan-light', 'chart-light', 'chart-high-contrast']);
const wants = (name) => process.argv.includes('--all') || wanted.has(name);

installMissing();
if (run(process.execPath, ['scripts/build.mjs']) !== 0) process.exit(1);
const prepared = prepareWorkbench();
if (prepared.reason) {
  console.error(`No pictures: ${prepared.reason}.`);
  process.exit(1);
}
const { launchBrowser, newPage, openPreview, previewFrame } = await import('./workbench/browser.mjs');
const { quietSettings } = await import('./workbench/server.mjs');
const { copyFixtures } = await import('./workbench/suites.mjs');
const { handInSettings, startWebServer } = await import('./workbench/webServer.mjs');

/** Puts the line that holds `text` to the top of the editor, with the cursor in it. */
async function showLine(page, text) {
  await page.locator('.monaco-editor .view-lines').first().click();
  await page.keyboard.press('Control+F');
  await page.locator('.find-widget textarea, .find-widget input').first().fill(text);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Home');
}

async function settle(page) {
  await page.locator('.notification-toast .codicon-notifications-clear').first().click({ timeout: 500 }).catch(() => {});
  await page.waitForTimeout(1200);
}

/** The pictures of one theme: plan and chart, prose with a claim that stopped matching, a hover. */
async function photograph(browser, theme) {
  const notes = await copyFixtures('samples');
  const settings = {
    ...quietSettings, 'workbench.colorTheme': themes[theme], 'editor.fontSize': 13, 'editor.lineNumbers': 'off', 'editor.folding': false,
    'editor.glyphMargin': false, 'workbench.activityBar.location': 'hidden', 'window.commandCenter': false, 'window.title': '${activeEditorShort}',
  };
  const server = await startWebServer({ folder: notes.folder, extension: root });
  const page = await newPage(browser, { width: 1440, height: 900 });
  const shoot = async (name) => {
    if (!wants(`${name}-${theme}`)) return;
    await settle(page);
    await page.screenshot({ path: path.join(to, `${name}-${theme}.png`) });
    console.log(path.relative(root, path.join(to, `${name}-${theme}.png`)));
  };
  try {
    await handInSettings(page, settings);
    const payload = JSON.stringify([['skipWelcome', 'true'], ['openFile', `vscode-test-web://mount/${sample}`]]);
    await page.goto(`${server.origin}/?${new URLSearchParams({ payload })}`);
    await page.locator(`.monaco-editor[data-uri$="${sample}"]`).first().waitFor({ timeout: 90_000 });
    await page.keyboard.press('Control+B');
    await openPreview(page);
    const frame = await previewFrame(page, '.evenwater-chart svg', 120_000);
    await shoot('plan');

    await showLine(page, '```figure');
    await frame.locator('.evenwater-figure').last().scrollIntoViewIfNeeded();
    await page.waitForTimeout(800);
    await shoot('chart');

    // A reading is changed: claims stop matching, and the hover says what they were computed from.
    await showLine(page, '07:30         5.83');
    for (let step = 0; step < '07:30         5.8'.length; step += 1) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Delete');
    await page.keyboard.type('1');
    await showLine(page, 'meter showed the lowest value');
    await page.locator('.squiggly-error').first().waitFor({ timeout: 20_000 });
    await frame.locator('.evenwater-claim.evenwater-mismatch').first().waitFor({ timeout: 20_000 });
    await page.mouse.move(10, 10);
    await page.locator('.squiggly-error').first().hover({ force: true });
    await page.locator('.monaco-hover-content').first().waitFor({ timeout: 10_000 });
    await shoot('note-and-preview');
  } finally {
    await page.context().close();
    await server.stop();
    await notes.remove();
  }
}

await fs.mkdir(to, { recursive: true });
const browser = await launchBrowser(prepared.chromium);
for (const theme of Object.keys(themes)) {
  if (['plan', 'chart', 'note-and-preview'].some((name) => wants(`${name}-${theme}`))) await photograph(browser, theme);
}

// The extension's icon, from its drawing: the marketplace takes no SVG.
const icon = await newPage(browser, { width: 256, height: 256 });
await icon.setContent(`<style>body{margin:0}svg{display:block}</style>${await fs.readFile(path.join(root, 'media/icon.svg'), 'utf8')}`);
await icon.screenshot({ path: path.join(root, 'media/icon.png'), omitBackground: true });
await browser.close();
