// The plan as one printed page for the run: question, timeline, stop rules, checklists, and an empty table for pencil.
// Everything is measured so that it fits on one sheet of A4; a test prints it and counts the pages.
import { tankOrder } from '../edits/tankOrder.ts';
import { plannedHeads, plannedLines } from '../edits/insertReadingsTable.ts';
import type { Note } from '../experiment/types.ts';
import { waterVolume } from '../protocol/derived.ts';
import type { Protocol } from '../protocol/types.ts';
import { formatValue } from '../quantities/format.ts';
import { cautionsOf } from '../render/cautions.ts';
import { element, escapeHtml, type Html } from '../render/html.ts';
import { preparationOf } from '../render/preparation.ts';
import { blockStyle, colourVariables } from '../render/style.ts';
import { scheduleWords, timelineHtml } from '../render/timeline.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { languageOf } from '../words/languages.ts';
import { planWords } from '../words/page.ts';
import { contentPolicy } from './post.ts';

export interface PlanSheetOptions { readonly stem: string; readonly toolVersion: string }

/** Millimetres of the printed area: A4 with 11 mm at each side. */
const page = { width: 188, height: 275 };
/** Rows that one sheet can hold; a longer plan is printed up to there, and says so. */
export const mostRows = 150;

const clip = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`);

interface Row { readonly text: string; readonly first: string | null; readonly day: boolean }

function rowsOf(protocol: Protocol): { rows: Row[]; left: number } {
  const slots = protocol.schedule?.slots ?? [];
  const drawn = protocol.orderRule !== undefined && protocol.tanks.length > 1;
  const lines = plannedLines(protocol, slots.slice(0, mostRows));
  const oneADay = lines.filter((line) => line.slot === null).length * 2 >= lines.length;
  const rows: Row[] = [];
  let date = '';
  for (const line of lines) {
    if (line.slot === null) {
      date = line.text.replace(/^#\s*/, '').slice(5);
      if (!oneADay) rows.push({ text: date, first: null, day: true });
    } else rows.push({ text: oneADay && date !== '' ? `${date} ${line.text}` : line.text.replace(/^\d{4}-/, ''), first: drawn ? tankOrder(protocol, line.slot)[0] ?? null : null, day: false });
  }
  return { rows, left: Math.max(0, slots.length - mostRows) };
}

/** The table for pencil: as many tables side by side as the rows need, each with every head. */
function pencilTable(protocol: Protocol, room: number): { html: Html; left: number } {
  const heads = plannedHeads(protocol);
  const words = planWords(languageOf(protocol.language)).sheet;
  const { rows: all, left } = rowsOf(protocol);
  const drawn = all.some((row) => row.first !== null);
  const rows: Row[] = all.length > 0 ? all : Array.from({ length: 24 }, () => ({ text: '', first: null, day: false }));
  const headHeight = 9;
  const least = 4;
  const legible = 3.3;
  const dated = rows.some((row) => row.text.length > 6);
  const widest = heads.length > 12 ? 1 : heads.length > 7 ? 2 : 3;
  let tables = 1;
  while (tables < widest && (room - headHeight) / Math.ceil(rows.length / tables) < least + 1) tables += 1;
  const capacity = tables * Math.floor((room - headHeight) / legible);
  const kept = rows.slice(0, capacity);
  const each = Math.ceil(kept.length / tables);
  const height = Math.min(7.5, (room - headHeight) / each);
  const head = (name: string): Html => { const [place, quantity] = name.split('.'); return element('th', { scope: 'col' }, escapeHtml(clip(place ?? '', 10)), element('br', {}), escapeHtml(quantity ?? '')); };
  const cells = heads.map(() => '<td></td>').join('');
  const part = (some: readonly Row[]): Html => element('table', {},
    element('thead', {}, element('tr', {}, element('th', { class: 'time' }, words.time), drawn ? element('th', { class: 'first' }, words.first) : '', ...heads.map(head), element('th', { class: 'remark' }, words.remark))),
    element('tbody', {}, ...some.map((row) => (row.day ? element('tr', { class: 'day' }, element('th', { colspan: heads.length + (drawn ? 3 : 2) }, escapeHtml(row.text)))
      : element('tr', {}, element('th', { scope: 'row', class: 'time' }, escapeHtml(row.text)), drawn ? element('td', { class: 'first' }, escapeHtml(clip(row.first ?? '', 10))) : '', cells, element('td', { class: 'remark' }))))));
  const parts = Array.from({ length: tables }, (_, index) => part(kept.slice(index * each, (index + 1) * each)));
  return { html: element('div', { class: 'pencil', style: `--row: ${height.toFixed(2)}mm; --size: ${Math.min(8.5, height * 1.9).toFixed(2)}pt; --time: ${dated ? 21 : 12}mm; --remark: ${tables > 1 ? 14 : 22}%` }, ...parts), left: left + rows.slice(capacity).filter((row) => !row.day).length };
}

function tankLine(protocol: Protocol): Html {
  const words = planWords(languageOf(protocol.language));
  return element('ul', { class: 'tanks' }, ...protocol.tanks.map((tank) => {
    const volume = waterVolume(tank);
    const differs = protocol.differs.flatMap((key) => { const text = tank.written.get(key.value)?.value; return text ? `${words.tankKey(key.value)}: ${clip(text, 60)}` : []; });
    return element('li', {}, element('strong', {}, escapeHtml(tank.id)), escapeHtml(` ${[tank.label === tank.id ? null : clip(tank.label, 40), tank.role ? words.role(tank.role.value) : null, ...differs, volume ? formatValue(volume, { uncertainty: false, decimalMark: decimalMarkOf(protocol.language) }) : null].filter(Boolean).join('; ')}`));
  }));
}

/** Lists cut to what a page can hold; the plan itself has the rest. */
function boxes(title: string, texts: readonly string[], most: number, length: number, className: string, more: (count: number) => string): Html {
  if (texts.length === 0) return '';
  const shown = texts.slice(0, most).map((text) => element('li', {}, escapeHtml(clip(text, length))));
  if (texts.length > most) shown.push(element('li', { class: 'more' }, escapeHtml(more(texts.length - most))));
  return element('section', { class: className }, element('h2', {}, escapeHtml(title)), element('ul', {}, ...shown));
}

const style = `
@page { size: A4 portrait; margin: 11mm; }
:root { color-scheme: light; ${colourVariables('print')} --evenwater-sans: system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", "Noto Sans", Arial, sans-serif; }
* { box-sizing: border-box; }
html { background: #fff; }
body { width: ${page.width}mm; margin: 0 auto; font: 8.2pt/1.28 var(--evenwater-sans); color: #000; background: #fff; }
main { height: ${page.height}mm; overflow: hidden; display: flex; flex-direction: column; padding-right: 0.4mm; }
h1 { font-size: 13pt; line-height: 1.15; margin: 0 0 1mm; max-height: 2.4em; overflow: hidden; }
h2 { font-size: 8.2pt; margin: 0 0 0.5mm; }
p { margin: 0 0 1mm; }
ul { margin: 0; padding: 0; list-style: none; }
.when { color: #333; max-height: 4em; overflow: hidden; }
.tanks { display: grid; grid-template-columns: 1fr 1fr; gap: 0 5mm; margin: 0 0 1mm; }
.evenwater-timeline { margin: 0.5mm 0 1mm; max-height: 34mm; overflow: hidden; }
.evenwater-timeline svg { font-size: 8px; }
.lists { display: grid; grid-template-columns: 1fr 1fr; gap: 0 5mm; margin: 0 0 1.5mm; }
.steps li, .hand li { padding-left: 4mm; text-indent: -4mm; }
.steps li::before { content: "\\2610\\00a0"; }
.stop { border: 1.6pt solid #000; padding: 1mm 2mm; margin: 0 0 1.5mm; }
.stop h2 { font-size: 9.5pt; }
.stop li { font-weight: 600; }
.cautions { margin: 0 0 1.5mm; color: #333; font-size: 7.4pt; }
.pencil { display: flex; gap: 4mm; flex: 1 1 auto; min-height: 0; }
.pencil table { flex: 1 1 0; width: 100%; border-collapse: collapse; table-layout: fixed; align-self: flex-start; font-size: var(--size); line-height: 1; font-variant-numeric: tabular-nums; }
.pencil th, .pencil td { border: 0.5pt solid #666; padding: 0 0.8mm; height: var(--row); overflow: hidden; white-space: nowrap; font-weight: 400; text-align: left; }
.pencil thead th { height: 8mm; font-weight: 600; font-size: 7pt; line-height: 1.1; vertical-align: bottom; }
.pencil .time { width: var(--time); }
.pencil .first { width: 11mm; color: #333; font-size: 7pt; }
.pencil .remark { width: var(--remark); }
.pencil .day th { background: #eee; font-weight: 600; }
.foot { margin: 1mm 0 0; font-size: 6.8pt; color: #444; }
@media screen { body { padding: 11mm 0; } main { outline: 0.5pt solid #ccc; outline-offset: 6mm; } }
@media print { * { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
`;

/** The page as HTML, self-contained: nothing runs, nothing is fetched. Null without a plan that has something to read. */
export function planSheet(note: Note, options: PlanSheetOptions): string | null {
  const { protocol } = note;
  if (!protocol || protocol.tanks.length === 0) return null;
  const title = protocol.question?.value ?? protocol.title?.value ?? options.stem;
  const plan = planWords(languageOf(protocol.language));
  const { sheet } = plan;
  const words = protocol.schedule ? scheduleWords(protocol) : '';
  const { materials, steps } = preparationOf(protocol);
  const stops = protocol.stopRules.map((rule) => sheet.ifThen(rule.when?.text.trim() ?? '–', rule.do));
  const cautions = cautionsOf(protocol);
  const typed = protocol.phases.filter((phase) => phase.typed !== null).length;
  // Millimetres taken above the table, counted generously: a line of this size takes 3.8 mm.
  const line = 3.8;
  const listRows = Math.max(Math.min(steps.length, 6) * 1.6, Math.min(materials.length, 8)) + 1.2;
  const taken = (title.length > 62 ? 12 : 7) + (words === '' ? 0 : 3 * line) + Math.ceil(protocol.tanks.length / 2) * line * 1.6 + 2
    + (protocol.schedule ? Math.min(34, 20 + (protocol.events.length + 2) * 2.2 + Math.min(typed, 2) * 5) + 2 : 0) + listRows * line + 3
    + (stops.length > 0 ? (Math.min(stops.length, 4) * 1.3 + 1.2) * line + 5 : 0) + (cautions.length > 0 ? 2 * line + 2 : 0) + line + 2;
  const table = pencilTable(protocol, Math.max(70, page.height - taken));
  const language = /^[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/.test(protocol.language) ? protocol.language : 'en';
  return `<!doctype html>
<html lang="${escapeHtml(language)}">
<head>
<meta charset="utf-8">
${element('meta', { 'http-equiv': 'Content-Security-Policy', content: contentPolicy })}
<meta name="viewport" content="width=device-width, initial-scale=1">
${element('meta', { name: 'generator', content: `Evenwater ${options.toolVersion}` })}
${element('title', {}, escapeHtml(sheet.title(title)))}
<style>${blockStyle.trim()}${style}</style>
</head>
<body>
<main>
${element('h1', {}, escapeHtml(clip(title, 150)))}
${words === '' ? '' : element('p', { class: 'when' }, escapeHtml(clip(words, 420)))}
${tankLine(protocol)}
${protocol.schedule ? timelineHtml(protocol, words) : ''}
${stops.length === 0 ? '' : boxes(sheet.stopAtOnce, stops, 4, 120, 'stop', sheet.more)}
${element('div', { class: 'lists' }, boxes(plan.preparation.beforeFirst, steps, 6, 105, 'steps', sheet.more), boxes(plan.preparation.atHand, materials, 8, 62, 'hand', sheet.more))}
${cautions.length === 0 ? '' : element('p', { class: 'cautions' }, element('strong', {}, sheet.takeCare), escapeHtml(sheet.cautions(cautions.map((each) => each.title))))}
${table.html}
${element('p', { class: 'foot' }, escapeHtml(sheet.foot({ left: table.left, stem: options.stem, version: options.toolVersion })))}
</main>
</body>
</html>
`;
}
