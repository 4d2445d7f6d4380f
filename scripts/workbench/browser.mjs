// What the suites and the pictures do in the browser: start it, follow a mocha run, find the preview's frame.
import fs from 'node:fs/promises';
import path from 'node:path';
import { format } from 'node:util';
import { chromium } from 'playwright-core';
import { root } from './install.mjs';

const quietArguments = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update',
  '--disable-sync', '--disable-dev-shm-usage', '--force-color-profile=srgb', '--font-render-hinting=none',
];

export const launchBrowser = (executablePath) => chromium.launch({ executablePath, headless: true, args: quietArguments });

export const newPage = async (browser, viewport = { width: 1400, height: 900 }) => (
  await browser.newContext({ viewport, reducedMotion: 'reduce' })).newPage();

/**
 * Follows a mocha run in the extension host. Call before `goto`. Lines of the suite start with `@@`
 * (test/workbench/report.ts); everything else is the workbench's own log and goes to workbench/log/.
 * @returns {Promise<{ passed: number, failed: number, skipped: number }>} when the run has ended
 */
export async function followTests(page, name, timeout = 300_000) {
  const log = [];
  const count = { passed: 0, failed: 0, skipped: 0 };
  const words = { passed: 'passing', failed: 'failing', skipped: 'pending' };
  let end;
  const ended = new Promise((resolve) => { end = resolve; });
  await page.exposeFunction('codeAutomationLog', (type, values) => {
    const line = format(...values).replace(/\u001b\[[\d;]*m/g, ''); // Mocha colours its lines where CI is set.
    log.push(`[${type}] ${line}`);
    if (!line.startsWith('@@')) return;
    for (const key of Object.keys(count)) {
      const found = new RegExp(`^@@\\s*(\\d+) ${words[key]}`).exec(line);
      if (found) count[key] = Number(found[1]);
    }
    console.log(line.slice(2));
  });
  await page.exposeFunction('codeAutomationExit', (code) => end(code));
  page.on('crash', () => end('the page crashed'));
  page.on('pageerror', (error) => log.push(`[page error] ${error.stack}`));
  page.on('console', (message) => log.push(`[console ${message.type()}] ${message.text()}`));
  const timer = setTimeout(() => end(`no end after ${timeout / 1000} s`), timeout);
  return async () => {
    const code = await ended;
    clearTimeout(timer);
    const logFile = path.join(root, 'workbench/log', `${name}.log`);
    await fs.mkdir(path.dirname(logFile), { recursive: true });
    await fs.writeFile(logFile, log.join('\n'));
    const bad = code !== 0 || count.passed === 0;
    if (bad && count.failed === 0) { count.failed = 1; console.log(`The run ended badly: ${typeof code === 'string' ? code : `code ${code}`}, ${count.passed} tests passed.`); }
    if (bad) console.log(`The workbench's log: ${path.relative(root, logFile)}`);
    return count;
  };
}

/** The frame of the Markdown preview that holds `selector`. Every webview is two nested frames. */
export async function previewFrame(page, selector, timeout = 60_000) {
  for (const end = Date.now() + timeout; Date.now() < end;) {
    for (const frame of page.frames()) {
      if (frame === page.mainFrame() || frame.isDetached()) continue;
      if (await frame.locator(selector).count().catch(() => 0) > 0) return frame;
    }
    await page.waitForTimeout(100);
  }
  throw new Error(`No preview with ${selector} within ${timeout / 1000} s.`);
}

/** Opens the Markdown preview beside the active editor by its own button. */
export async function openPreview(page) {
  await page.locator('.editor-actions a[aria-label*="Open Preview to the Side"]').first().click({ timeout: 60_000 });
}
