// Prints the plan sheet of every template and sample: one page of A4 each, with a row for every planned reading.
import fs from 'node:fs/promises';
import path from 'node:path';
import { build } from 'esbuild';
import { newPage } from '../../scripts/workbench/browser.mjs';
import { root } from '../../scripts/workbench/install.mjs';

const made = path.join(root, 'dist/test/planSheet.mjs');

/** Every note of a folder, with the page that its plan makes. */
async function sheets() {
  await build({
    absWorkingDir: root, bundle: true, format: 'esm', platform: 'node', target: 'es2022', logLevel: 'warning', outfile: made,
    stdin: { contents: 'export { planSheet } from "./src/publish/planSheet.ts"; export { readNote } from "./src/experiment/readNote.ts"; export { newNote } from "./src/edits/newNote.ts";', resolveDir: root, loader: 'ts' },
    alias: Object.fromEntries(['vega-canvas', 'vega-loader'].map((name) => [name, path.join(root, `node_modules/${name}/build/${name}.browser.js`)])), mainFields: ['module', 'main'],
    banner: { js: 'import { createRequire as __createRequire } from \'node:module\'; const require = __createRequire(import.meta.url);' },
  });
  const { planSheet, readNote, newNote } = await import(made);
  const found = [];
  for (const folder of ['samples', 'samples/templates']) {
    for (const name of (await fs.readdir(path.join(root, folder))).filter((each) => each.endsWith('.tank.md'))) found.push([name, await fs.readFile(path.join(root, folder, name), 'utf8')]);
  }
  const here = { today: '2026-05-02', timeZone: 'Europe/Amsterdam' };
  found.push(['eight tanks', newNote({ template: 'overnight-oxygen', tanks: 'a, b, c, d, e, f, g, h', measure: 'DO, T, pH, P', every: '10 min' }, here)]);
  found.push(['every minute', newNote({ template: 'blank', every: '1 min', length: '5 h' }, here)]);
  return found.map(([name, text]) => { const note = readNote(text); return { name, note, html: planSheet(note, { stem: name, toolVersion: 'test' }) }; });
}

export async function runPlanSheet(browser) {
  const count = { passed: 0, failed: 0, skipped: 0 };
  const page = await newPage(browser);
  for (const { name, note, html } of await sheets()) {
    try {
      if (!html) throw new Error('there is no page');
      await page.setContent(html);
      await page.emulateMedia({ media: 'print' });
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
      if (pages !== 1) throw new Error(`${pages} pages`);
      const size = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf);
      if (!size || Math.abs(Number(size[1]) - 595) > 2 || Math.abs(Number(size[2]) - 842) > 2) throw new Error(`the page is ${size?.slice(1).join(' x ')} points`);
      const cut = await page.evaluate(() => {
        const main = document.querySelector('main');
        const edge = main.getBoundingClientRect();
        const out = (box) => box.bottom > edge.bottom + 1 || box.right > edge.right + 1;
        return { rows: document.querySelectorAll('.pencil tbody th.time').length, cut: [...document.querySelectorAll('.pencil tbody tr, .foot, .stop')].filter((each) => out(each.getBoundingClientRect())).length };
      });
      if (cut.cut > 0) throw new Error(`${cut.cut} parts lie outside the page`);
      const planned = note.protocol.schedule.slots.length;
      const said = Number(/(\d+) later readings do not fit/.exec(html)?.[1] ?? 0);
      if (cut.rows + said !== planned || cut.rows < Math.min(planned, 30)) throw new Error(`${cut.rows} rows and ${said} said to be missing, for ${planned} planned readings`);
      count.passed += 1;
      console.log(`    ✔ ${name}: one page of A4, ${cut.rows} rows`);
    } catch (error) {
      count.failed += 1;
      console.log(`    ✘ ${name}: ${error.message}`);
      await page.screenshot({ path: path.join(root, 'workbench/log', `plan-${name.replace(/\W+/g, '-')}.png`), fullPage: true }).catch(() => {});
    }
  }
  await page.context().close();
  return count;
}
