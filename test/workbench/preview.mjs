// Looks into the built-in Markdown preview, where mocha cannot see: what stands there, what stays alive while typing, and that nothing is blocked.
import path from 'node:path';
import { newPage, openPreview, previewFrame } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';
import { pageAddress, quietSettings, startServer } from '../../scripts/workbench/server.mjs';
import { copyFixtures } from '../../scripts/workbench/suites.mjs';
import { handInSettings, startWebServer } from '../../scripts/workbench/webServer.mjs';
import { expect } from './checks.mjs';
import { cursorAt } from './cursor.mjs';

/** Each check gets the page and the preview's frame; it throws when something is not as it should be. */
const checks = {
  'the plan card names both tanks': async ({ frame }) => {
    const card = await frame.locator('.evenwater-block-protocol').first().innerText();
    for (const words of ['floating-mat tank', 'open-surface tank', 'water lettuce']) expect(card.toLowerCase().includes(words), `the plan card lacks ${words}: ${card.slice(0, 300)}`);
  },
  'the chart is drawn, in a shadow root, with a text alternative': async ({ frame }) => {
    const chart = await frame.locator('.evenwater-chart').first().evaluate((element) => ({
      marks: element.shadowRoot?.querySelectorAll('svg path').length ?? 0, role: element.getAttribute('role'),
      label: element.getAttribute('aria-label') ?? '', height: element.getBoundingClientRect().height,
    }));
    expect(chart.marks > 4, `the chart has ${chart.marks} paths`);
    expect(chart.role === 'img' && chart.label.length > 40, `role ${chart.role}, text alternative ${JSON.stringify(chart.label)}`);
    expect(chart.height > 100, `the chart is ${chart.height} px high`);
  },
  'the readings table holds deltas': async ({ frame }) => {
    const table = await frame.locator('.evenwater-block-readings').first().innerText();
    expect(/[−-]0\.24/.test(table), `no step of −0.24 in the table: ${table.slice(0, 400)}`);
  },
  'claims carry their marks and formulas': async ({ frame }) => {
    const claims = await frame.locator('[data-formula]').evaluateAll((all) => all.map((element) => ({ formula: element.getAttribute('data-formula'), text: element.textContent, title: element.getAttribute('title') })));
    const fall = claims.find((claim) => claim.formula?.startsWith('fall(mat.DO'));
    expect(fall?.text?.includes('0.24 mg/L'), `claims: ${JSON.stringify(claims).slice(0, 400)}`);
    expect(await frame.getByText('7.66 mg/L').count() > 0, 'the unfilled claim does not show its value');
  },
  'the methods paragraph is there': async ({ frame }) => {
    const text = await frame.locator('.evenwater-block-methods').first().innerText();
    expect(text.length > 200 && /optical probe/.test(text), `methods: ${text.slice(0, 300)}`);
  },
  'ten edits leave the chart alive and the page where it was': async ({ page, frame }) => {
    const place = () => frame.evaluate(() => {
      const chart = document.querySelector('.evenwater-figure .evenwater-chart');
      globalThis.drawnBefore ??= chart.shadowRoot.querySelector('svg');
      return { scroll: Math.round(scrollY), top: Math.round(chart.getBoundingClientRect().top), same: chart.shadowRoot.querySelector('svg') === globalThis.drawnBefore };
    });
    await typeAt(page, 'Paragraphs below make', async () => {
      await page.waitForTimeout(1500); // The preview follows the cursor first.
      const before = await place();
      for (let edit = 1; edit <= 10; edit += 1) {
        await page.keyboard.type(` ${edit}`);
        await frame.getByText(new RegExp(`Paragraphs below make.* ${edit}$`)).first().waitFor({ timeout: 20_000 });
        const after = await place();
        expect(after.same, `edit ${edit}: the chart was drawn again`);
        expect(Math.abs(after.top - before.top) <= 2 && Math.abs(after.scroll - before.scroll) <= 2, `edit ${edit}: moved from ${JSON.stringify(before)} to ${JSON.stringify(after)}`);
      }
      expect(before.scroll > 0, 'the page was not scrolled, so this proves little');
    });
  },
  'an edited reading draws the chart again and marks the claim': async ({ page, frame }) => {
    await typeAt(page, '22:30    8.02', async () => {
      await page.keyboard.press('Home');
      for (let step = 0; step < '22:30    8.0'.length; step += 1) await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Delete');
      await page.keyboard.type('4');
    });
    await frame.locator('.evenwater-claim.evenwater-mismatch').first().waitFor({ timeout: 20_000 });
    await frame.waitForFunction(() => {
      const svg = document.querySelector('.evenwater-figure .evenwater-chart')?.shadowRoot?.querySelector('svg');
      return svg && svg !== globalThis.drawnBefore;
    }, undefined, { timeout: 20_000 });
  },
  'a block with an error says what and where; a click on its line shows it in the editor, and its menu goes there': async ({ page, frame }) => {
    const { problem, line } = await misspell(page, frame);
    expect((await problem.innerText()).includes(`line ${line}`), await problem.innerText());
    await page.locator('.monaco-editor .view-lines').first().click();
    await page.keyboard.press('Control+End');
    const shown = () => page.locator('.editor-instance .margin .line-numbers').allInnerTexts();
    for (const end = Date.now() + 15_000; (await shown()).includes(String(line)); await page.waitForTimeout(100)) expect(Date.now() < end, 'the editor shows every line at once');
    await problem.locator('.evenwater-to-source').click();
    for (const end = Date.now() + 15_000; !(await shown()).includes(String(line)); await page.waitForTimeout(100)) expect(Date.now() < end, `the editor shows lines ${(await shown()).join(' ')}, not ${line}`);
    await goThere(page, line, (item) => item.click());
    // By keyboard alone: Tab to the line's button, Enter for its menu, Down and Enter for the command.
    await page.keyboard.press('Control+End');
    await frame.locator('body').click({ position: { x: 3, y: 3 } });
    const focused = () => frame.evaluate(() => document.activeElement?.className ?? '');
    for (let tabs = 0; await focused() !== 'evenwater-to-source'; tabs += 1) {
      expect(tabs < 40, 'the line is not reached by Tab');
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await goThere(page, line, async () => {
      await page.waitForFunction(() => document.activeElement?.closest('.monaco-menu') !== null, undefined, { timeout: 15_000 });
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
    });
    await page.locator('.monaco-editor .view-lines').first().click();
    await typeAt(page, '  water dept: 28 cm', async () => {
      await backspace(page, ': 28 cm'.length);
      await page.keyboard.type('h: 28 cm');
    });
    await frame.locator('.evenwater-problem', { hasText: 'water dept' }).first().waitFor({ state: 'detached', timeout: 20_000 });
  },
  'the chart follows the theme without a new page': async ({ frame }) => {
    const colours = () => frame.evaluate(() => [...document.querySelector('.evenwater-figure .evenwater-chart').shadowRoot.querySelectorAll('svg [stroke]')].map((each) => each.getAttribute('stroke')).join());
    const before = await colours();
    await frame.evaluate(() => {
      const dark = document.body.classList.contains('vscode-dark');
      document.body.classList.remove('vscode-dark', 'vscode-light');
      document.body.classList.add(dark ? 'vscode-light' : 'vscode-dark');
    });
    for (const end = Date.now() + 15_000; await colours() === before;) {
      expect(Date.now() < end, 'the colours stayed the same');
      await frame.waitForTimeout(100);
    }
  },
  'no content-policy banner, and nothing was blocked': async ({ frame, blocked }) => {
    const banner = await frame.locator('#code-csp-warning').count();
    expect(banner === 0, 'the banner "Some content has been disabled" is shown');
    expect(blocked.length === 0, `blocked: ${blocked.join(' | ')}`);
  },
};

/** Misspells a key of the plan; the problem in the preview and its line in the note. */
async function misspell(page, frame) {
  await typeAt(page, '  water depth: 28 cm', async () => {
    await backspace(page, 'depth: 28 cm'.length);
    await page.keyboard.type('dept: 28 cm');
  });
  const problem = frame.locator('.evenwater-problem', { hasText: 'water dept' }).first();
  await problem.waitFor({ timeout: 20_000 });
  return { problem, line: Number(await problem.getAttribute('data-line')) + 1 };
}

/** Takes the command from the open menu of a problem, and waits until the cursor stands at the problem and the editor has the keyboard. */
async function goThere(page, line, take) {
  const items = page.locator('.monaco-menu .action-item:not(.disabled)');
  await items.filter({ hasText: 'Go to This Line in the Editor' }).first().waitFor({ timeout: 15_000 });
  expect(await items.count() === 1, `the menu holds ${(await items.allInnerTexts()).join(' | ')}`);
  await page.waitForTimeout(300); // The editor's menus take no click in their first tenth of a second.
  await take(items.first());
  await cursorAt(page, line, 5);
  await page.waitForFunction(() => document.activeElement?.closest('.editor-instance .monaco-editor') !== null, undefined, { timeout: 15_000 });
}

/** With the preview's own setting for double clicks on, a click goes there at once. */
const clicksGoThere = {
  'a click on a problem’s line puts the cursor there where double clicks do': async ({ page, frame }) => {
    const { problem, line } = await misspell(page, frame);
    await page.keyboard.press('Control+End');
    await page.waitForTimeout(1500); // The preview follows the cursor first.
    await problem.locator('.evenwater-to-source').click();
    await cursorAt(page, line, 1);
    expect(await page.locator('.monaco-menu').count() === 0, 'the menu opened all the same');
  },
};

async function backspace(page, count) {
  for (let each = 0; each < count; each += 1) await page.keyboard.press('Backspace');
}

/** Puts the cursor at the end of the line that holds `text` in the editor, and acts. */
async function typeAt(page, text, act) {
  await page.locator('.monaco-editor .view-lines').first().click();
  await page.keyboard.press('Control+F');
  const box = page.locator('.find-widget textarea, .find-widget input').first();
  await box.fill(text);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.press('End');
  await act();
}

async function runIn(name, address, browser, { prepare = async () => {}, wanted = checks } = {}) {
  const count = { passed: 0, failed: 0, skipped: 0 };
  const page = await newPage(browser, { width: 1600, height: 900 });
  const blocked = [];
  page.on('console', (message) => { if (/Content Security Policy/i.test(message.text()) && /evenwater|unsafe-eval|script/i.test(message.text())) blocked.push(message.text().slice(0, 200)); });
  try {
    await prepare(page);
    await page.goto(address);
    await page.locator('.monaco-editor[data-uri$="night.tank.md"]').first().waitFor({ timeout: 90_000 });
    await openPreview(page);
    const frame = await previewFrame(page, '.evenwater-chart svg', 120_000); // Playwright looks into open shadow roots.
    for (const [title, check] of Object.entries(wanted)) {
      try {
        await check({ page, frame, blocked });
        count.passed += 1;
        console.log(`    ✔ ${name}: ${title}`);
      } catch (error) {
        count.failed += 1;
        console.log(`    ✘ ${name}: ${title}\n      ${error.message}`);
      }
    }
  } catch (error) {
    count.failed += 1;
    console.log(`    ✘ ${name}: ${error.message}`);
    await page.screenshot({ path: path.join(root, 'workbench/log', `preview-${name}.png`) }).catch(() => {});
  } finally {
    await page.context().close();
  }
  return count;
}

/** The checks in the Node host's workbench and in the browser-only one. */
export async function runPreview(browser) {
  const notes = await copyFixtures();
  const server = await startServer();
  const web = await startWebServer({ folder: notes.folder, extension: root });
  try {
    const first = await runIn('node host', pageAddress(server, { folder: notes.folder, file: 'night.tank.md', extension: root }), browser);
    const payload = JSON.stringify([['skipWelcome', 'true'], ['openFile', 'vscode-test-web://mount/night.tank.md']]);
    const second = await runIn('web host', `${web.origin}/?${new URLSearchParams({ payload })}`, browser, { prepare: (page) => handInSettings(page, quietSettings) });
    const withDoubleClicks = { ...quietSettings, 'markdown.preview.doubleClickToSwitchToEditor': true };
    const third = await runIn('web host', `${web.origin}/?${new URLSearchParams({ payload })}`, browser, { prepare: (page) => handInSettings(page, withDoubleClicks), wanted: clicksGoThere });
    return { passed: first.passed + second.passed + third.passed, failed: first.failed + second.failed + third.failed, skipped: 0 };
  } finally {
    await server.stop();
    await web.stop();
    await notes.remove();
  }
}
