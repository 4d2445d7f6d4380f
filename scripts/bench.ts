// Times the rooms that people wait for: reading a note, a key typed in prose, the search for formulas. Figures are printed for
// comparing, also as ratios of the first; nothing passes or fails on them. Run with: npm run bench
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Bench } from 'tinybench';
import { fileBlockText } from '../src/edits/importTable.ts';
import { proposeImport } from '../src/edits/proposeImport.ts';
import { findableNumbers, findFormulas, groundOfSearch } from '../src/experiment/findNumbers.ts';
import { readNote } from '../src/experiment/readNote.ts';

const sample = readFileSync(fileURLToPath(new URL('../samples/overnight-oxygen.tank.md', import.meta.url)), 'utf8');
const loose = 'Half an hour after lights-off the duckweed tank had lost 2.6 % of its oxygen, and at midnight it read 7.44 mg/L.';
const short = sample.replace('## Is that safe?', `${loose}\n\n## Is that safe?`);

/** The sample's night read every few seconds instead of every half hour: the same plan, claims and prose over many rows. */
function withRows(text: string, count: number): string {
  const block = /```readings\n([^\n]*\n)([\s\S]*?)```/.exec(text)!;
  const rows = block[2]!.trim().split('\n').map((line) => line.replace(/;.*/, '').trim().split(/\s+/));
  const plain = (cell: string): number => Number((cell.includes('->') ? cell.split('->').at(-1)! : cell).replace(/[()?]/g, ''));
  const minutes = (clock: string): number => { const [hour, minute] = clock.split(':').map(Number) as [number, number]; return (hour < 12 ? hour + 24 : hour) * 60 + minute; };
  const columns = rows[0]!.slice(1).map((_, column) => rows.map((row) => ({ at: minutes(row[0]!), value: plain(row[column + 1]!) })).filter((each) => Number.isFinite(each.value)));
  const [first, last] = [minutes(rows[0]![0]!), minutes(rows.at(-1)![0]!)];
  const dense = new Map(rows.map((row) => [minutes(row[0]!) * 60, row.join('  ')]));
  for (let index = 0; dense.size < count; index += 1) {
    const second = Math.round(first * 60 + (last - first) * 60 * ((index * 0.618033988749) % 1));
    if (dense.has(second)) continue;
    const values = columns.map((points) => {
      const next = Math.max(1, points.findIndex((each) => each.at * 60 >= second));
      const [a, b] = [points[next - 1]!, points[next]!];
      return (a.value + (b.value - a.value) * (second / 60 - a.at) / (b.at - a.at)).toFixed(2);
    });
    const clock = [Math.floor(second / 3600) % 24, Math.floor(second / 60) % 60, second % 60].map((part) => String(part).padStart(2, '0')).join(':');
    dense.set(second, [clock, ...values].join('  '));
  }
  const body = [...dense].sort((a, b) => a[0] - b[0]).map(([, row]) => row.replace(/\(([\d.]+)\)/g, '$1').replace(/[\d.]+->/g, '').replace(/\?/g, '')).join('\n');
  return text.slice(0, block.index) + '```readings\n' + block[1]! + body + '\n```' + text.slice(block.index + block[0].length);
}

const long = withRows(short, 1000);
const notes = { short: readNote(short), long: readNote(long) };
const typed = (text: string, step: number): string => text.replace('Is that safe?', `Is that safe${'x'.repeat(1 + step % 7)}?`);
const number = (note: typeof notes.long, shown: string) => findableNumbers(note).find((each) => each.text === shown)!;

/** A logger's file of a day and more, read every second; invented. */
const logged = new TextEncoder().encode(`Time,DO duckweed\n${Array.from({ length: 100_000 }, (_, second) => `${new Date(Date.parse('2026-03-14T19:00:00Z') + second * 1000).toISOString()},${(8 + Math.sin(second / 9000)).toFixed(2)}`).join('\n')}\n`);
if (proposeImport(logged, notes.short)?.rows.length !== 100_000) throw new Error('the logger\'s file was not read');

/** The sample with that file pinned behind everything: a key typed above moves its block. */
const columns = [{ from: 'Time', to: 'time' }, { from: 'DO duckweed', to: 'mat.DO' }];
const pinned = `${short}\n${fileBlockText(proposeImport(logged, notes.short, { columns })!, 'logger.csv', logged)}`;
const files = new Map([['logger.csv', logged]]);
const beside = readNote(pinned, files);
if (beside.tables.at(-1)?.rows.length !== 100_000) throw new Error('the pinned file was not read');

const bench = new Bench({ time: 1500, warmupTime: 300 });
let step = 0;
bench
  .add('read the sample, 27 rows', () => { readNote(short); })
  .add('read it with 1,000 rows', () => { readNote(long); })
  .add('a key typed in prose, 27 rows', () => { step += 1; readNote(typed(short, step), undefined, notes.short); })
  .add('a key typed in prose, 1,000 rows', () => { step += 1; readNote(typed(long, step), undefined, notes.long); })
  .add('find a percentage, 27 rows', () => { findFormulas(number(notes.short, '2.6 %').range, notes.short); })
  .add('find a percentage, 1,000 rows', () => { findFormulas(number(notes.long, '2.6 %').range, notes.long); })
  .add('find a reading, 1,000 rows', () => { findFormulas(number(notes.long, '7.44 mg/L').range, notes.long); })
  .add('the same with its ground at hand', () => { findFormulas(number(notes.long, '7.44 mg/L').range, notes.long, { ground }); })
  .add('look at a file of 100,000 rows', () => { proposeImport(logged, notes.short); })
  .add('a key typed above such a file', () => { step += 1; readNote(typed(pinned, step), files, beside); });
const ground = groundOfSearch(notes.long);
await bench.run();

const middle = (name: string): number => {
  const result = bench.tasks.find((task) => task.name === name)?.result as { latency?: { p50: number } } | undefined;
  return result?.latency?.p50 ?? Number.NaN;
};
const base = middle(bench.tasks[0]!.name);
console.log(`${notes.long.dataset.times.length} reading times in the long note, ${notes.short.dataset.times.length} in the short one; medians, and ratios to the first line`);
for (const task of bench.tasks) {
  const time = middle(task.name);
  console.log(`${task.name.padEnd(36)} ${time.toFixed(2).padStart(9)} ms  × ${(time / base).toFixed(2)}`);
}
console.log('aim of the search at 1,000 readings: 100 ms');
