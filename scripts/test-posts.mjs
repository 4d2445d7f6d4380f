// The published posts: held against golden files, looked at by axe in a browser in light, dark and high contrast, on a page and a phone;
// and the preview's content, looked at by axe in the editor's four themes.
// `node scripts/test-posts.mjs [--to DIR]`; EVENWATER_APPROVE=1 writes the golden files again; --to keeps the pictures.
import fs from 'node:fs/promises';
import { existsSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { createRequire } from 'node:module';
import { register } from 'tsx/esm/api';
import { root } from './install.mjs';

register();
const { readNoteFile, stemOf } = await import('../src/cli/noteFiles.ts');
const { publishPost } = await import('../src/publish/post.ts');
const { publishMarkdown } = await import('../src/publish/markdown/markdownPost.ts');
const { recheckPost } = await import('../src/publish/recheck.ts');
const { previewPage, previewThemes } = await import('./previewPages.mjs');

const notes = ['samples/overnight-oxygen.tank.md', 'samples/heater-failure.tank.md', 'samples/naechtlicher-ausstroemer.tank.md', 'test/fixtures/posts/logger-night.tank.md', 'test/fixtures/posts/twee-nachten.tank.md', 'test/fixtures/posts/wasserlinsen.tank.md'];
const golden = path.join(root, 'test/fixtures/posts/golden');
const approve = process.env.EVENWATER_APPROVE === '1';
const to = process.argv.includes('--to') ? path.resolve(process.argv[process.argv.indexOf('--to') + 1]) : null;
const count = { passed: 0, failed: 0, skipped: 0 };

async function check(name, body) {
  try {
    await body();
    count.passed += 1;
    console.log(`  ✔ ${name}`);
  } catch (error) {
    count.failed += 1;
    console.log(`  ✘ ${name}\n    ${String(error instanceof Error ? error.message : error).replaceAll('\n', '\n    ')}`);
  }
}

/** A post as people compare it: a tag and its text a line; the style sheet, the paths of drawings and the bytes of files left out. */
const readable = (html) => html.replace(/<style>[\s\S]*?<\/style>/, '<style></style>').replace(/;base64,[A-Za-z0-9+/=]+/g, ';base64,…')
  .replace(/<(path|rect|line|circle|g|clipPath|defs)\b[^>]*>|<\/(?:path|rect|line|circle|g|clipPath|defs)>/g, '')
  .replace(/(<text[^>]*?) (?:transform|font-family|style|fill|opacity)="[^"]*"/g, '$1').replace(/<text[^>]*>/g, '<text>')
  .replace(/(?<=>)(?=<(?!\/))/g, '\n').replace(/\n{2,}/g, '\n');

function firstDifference(was, is) {
  const [a, b] = [was.split('\n'), is.split('\n')];
  const line = a.findIndex((each, index) => each !== b[index]);
  const at = line < 0 ? a.length : line;
  return `differs from its golden file at line ${at + 1}:\n- ${a[at] ?? '(end)'}\n+ ${b[at] ?? '(end)'}\nEVENWATER_APPROVE=1 node scripts/test-posts.mjs writes the golden files again.`;
}

async function hold(name, text) {
  const file = path.join(golden, name);
  if (approve) {
    await fs.mkdir(golden, { recursive: true });
    await fs.writeFile(file, text);
    return;
  }
  const was = await fs.readFile(file, 'utf8').catch(() => '');
  if (was !== text) throw new Error(firstDifference(was, text));
}

/** Opens everything that folds, and says what axe finds that is serious, and a contrast below what is asked for. */
async function graveFaults(page, axe, contrast = 4.5) {
  await page.evaluate(() => { for (const each of document.querySelectorAll('details')) each.open = true; });
  await page.evaluate(axe);
  const found = await page.evaluate((enhanced) => globalThis.axe.run(document, { resultTypes: ['violations'], rules: { 'color-contrast-enhanced': { enabled: enhanced } } }), contrast >= 7);
  return found.violations.filter((each) => each.impact === 'serious' || each.impact === 'critical')
    .map((each) => `${each.impact} ${each.id}: ${each.help}\n${each.nodes.slice(0, 3).map((node) => `${node.target.join(' ')} ${node.failureSummary ?? ''}`).join('\n')}`).join('\n');
}

console.log('posts');
const posts = new Map();
for (const name of notes) {
  const file = await readNoteFile(path.join(root, name));
  const stem = stemOf(name);
  const options = { stem, toolVersion: '0.0.0', noteName: path.basename(name), noteBytes: file.bytes };
  await check(`${stem}: has no error, so that it may be published`, async () => {
    const errors = file.note.problems.filter((each) => each.severity === 'error');
    if (errors.length > 0) throw new Error(errors.map((each) => each.code).join(', '));
  });
  await check(`${stem}: the page is as its golden file`, async () => {
    const { html } = await publishPost(file.note, options);
    posts.set(stem, html);
    await hold(`${stem}.html.txt`, readable(html));
  });
  await check(`${stem}: the Markdown is as its golden file`, async () => { await hold(`${stem}.post.md`, String((await publishMarkdown(file.note, options))[0].content)); });
  await check(`${stem}: the page rechecks against the note and data inside`, async () => {
    const report = await recheckPost(posts.get(stem), '0.0.0');
    if (!report.holds) throw new Error(JSON.stringify([report.faults, report.differences.slice(0, 3)]));
  });
}

const browserPath = [process.env.EVENWATER_CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((each) => each && existsSync(each));
if (!browserPath) {
  count.skipped += posts.size * 4 + notes.filter((each) => each.startsWith('samples/')).length * Object.keys(previewThemes).length;
  console.log('  no Chromium was found: accessibility is not looked at (EVENWATER_CHROMIUM names one)');
} else {
  const { launchBrowser } = await import('./workbench/browser.mjs');
  const axe = await fs.readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  const folder = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-posts-'));
  const browser = await launchBrowser(browserPath);
  try {
    for (const [stem, html] of posts) {
      // axe runs as the test's own script; nothing else of the page's policy is lifted.
      await fs.writeFile(path.join(folder, `${stem}.html`), html);
      for (const [scheme, width, contrast] of [['light', 1280, 'no-preference'], ['dark', 390, 'no-preference'], ['light', 1280, 'more'], ['dark', 1280, 'more']]) {
        await check(`${stem}: axe finds nothing serious, ${scheme}${contrast === 'more' ? ' in high contrast' : ''}, ${width} pixels wide, and nothing is cut off sideways`, async () => {
          const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme: scheme, contrast, reducedMotion: 'reduce', bypassCSP: true });
          const page = await context.newPage();
          page.setDefaultTimeout(120_000);
          const requests = [];
          page.on('request', (request) => { if (!request.url().startsWith('file:') && !request.url().startsWith('data:')) requests.push(request.url()); });
          await page.goto(`file://${path.join(folder, `${stem}.html`)}`);
          const grave = await graveFaults(page, axe, contrast === 'more' ? 7 : 4.5);
          const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
          if (to) {
            await fs.mkdir(to, { recursive: true });
            await page.screenshot({ path: path.join(to, `${stem}-${scheme}-${width}${contrast === 'more' ? '-contrast' : ''}.png`), fullPage: true });
            if (scheme === 'light' && contrast !== 'more') for (const format of ['A4', 'Letter']) await page.pdf({ path: path.join(to, `${stem}-${format}.pdf`), format });
          }
          await context.close();
          if (grave !== '') throw new Error(grave);
          if (wide > 0) throw new Error(`the page is ${wide} pixels wider than the screen`);
          if (requests.length > 0) throw new Error(`the page asked for ${requests.join(', ')}`);
        });
      }
    }
    for (const name of notes.filter((each) => each.startsWith('samples/'))) for (const [theme, look] of Object.entries(previewThemes)) {
      await check(`${stemOf(name)}: axe finds nothing serious in the preview, ${theme}, contrast ${look.contrast} or more`, async () => {
        const page = await browser.newPage({ viewport: { width: 900, height: 900 }, reducedMotion: 'reduce' });
        page.setDefaultTimeout(120_000);
        await page.setContent(await previewPage(name, look));
        const grave = await graveFaults(page, axe, look.contrast);
        if (to) await page.screenshot({ path: path.join(to, `${stemOf(name)}-preview-${theme.replaceAll(' ', '-')}.png`), fullPage: true });
        await page.close();
        if (grave !== '') throw new Error(grave);
      });
    }
  } finally {
    await browser.close();
    await fs.rm(folder, { recursive: true, force: true });
  }
}

console.log(`\n${count.passed} passed, ${count.failed} failed${count.skipped > 0 ? `, ${count.skipped} skipped` : ''}`);
process.exit(count.failed > 0 ? 1 : 0);
