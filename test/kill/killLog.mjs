// Kills `evenwater log` with SIGKILL at random moments, many times, on one note that fills up meanwhile.
// Holds after each kill: the file is whole, and every row that was printed is in it. At the end: every row of the journal too.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/** Invented; the plan is long enough for every row to have a slot of its own. */
const plan = `# A long night

The end stands below, and must stay.

\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 08:00, every: 1 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
\`\`\`

\`\`\`readings
time   mat.DO
20:00    8.00
\`\`\`

The end.
`;

const clock = (row) => { const all = 20 * 60 + row; return `${String(Math.floor(all / 60) % 24).padStart(2, '0')}:${String(all % 60).padStart(2, '0')}`; };
const valueOf = (row) => (8 - row / 1000).toFixed(3);
/** Numbers that are the same in every run, so that a failure can be seen again. */
function drawing(seed) {
  let state = seed;
  return () => { state = (Math.imul(state, 1664525) + 1013904223) >>> 0; return state / 2 ** 32; };
}

/**
 * Runs it `kills` times. `cli` is the file to run. Returns what was found: failures as sentences, and counts that show
 * that the kills fell before, into and after the writing.
 */
export async function killLog(cli, kills, { seed = 20260314, say = () => undefined } = {}) {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-kill-'));
  const note = path.join(folder, 'night.tank.md');
  const environment = { ...process.env, EVENWATER_STATE: path.join(folder, 'state') };
  writeFileSync(note, plan);
  const draw = drawing(seed);
  const failures = [];
  const count = { killed: 0, finished: 0, acknowledged: 0, aimed: 0, writtenUnsaid: 0, journaled: 0, replayed: 0 };
  const acknowledged = new Set();
  const seen = new Set();

  /** Starts one run and kills it after `after` milliseconds, or so long after its lock appears. */
  const run = (args, after, aimed) => new Promise((resolve) => {
    const child = spawn(process.execPath, [cli, 'log', note, ...args], { env: environment, stdio: ['ignore', 'pipe', 'pipe'] });
    const born = performance.now();
    let begun = null;
    let out = '';
    let errors = '';
    let over = false;
    child.stdout.on('data', (data) => { out += data; });
    child.stderr.on('data', (data) => { errors += data; });
    child.on('close', (code, signal) => { over = true; resolve({ out, errors, code, signal, tail: begun === null ? null : performance.now() - begun, took: performance.now() - born }); });
    const kill = () => { if (!over) child.kill('SIGKILL'); };
    if (!aimed && after !== null) { setTimeout(kill, after); return; }
    // The journal is the first thing a run writes: from there to the end are a few milliseconds.
    const watch = () => {
      if (over) return;
      if (entries().length > journalBefore) {
        begun = performance.now();
        if (after !== null && after < 1) kill(); else if (after !== null) setTimeout(kill, after);
      } else setImmediate(watch);
    };
    const journalBefore = entries().length;
    watch();
  });
  const journalFolder = path.join(folder, 'state', 'journal');
  const entries = () => (existsSync(journalFolder) ? readdirSync(journalFolder).flatMap((each) => readdirSync(path.join(journalFolder, each))) : []);
  const rowsIn = (text) => [...text.matchAll(/^(\d\d:\d\d) +(\d\.\d+)$/gm)].map((match) => `${match[1]} ${match[2]}`);
  const check = (when) => {
    const text = readFileSync(note, 'utf8');
    const head = plan.slice(0, plan.indexOf('20:00    8.00'));
    if (!text.startsWith(head) || !text.endsWith('```\n\nThe end.\n')) failures.push(`${when}: the file is torn.`);
    const rows = rowsIn(text);
    if (new Set(rows).size !== rows.length) failures.push(`${when}: a row stands twice.`);
    for (const each of acknowledged) if (!rows.includes(each)) { failures.push(`${when}: ${each} was acknowledged and is missing.`); acknowledged.delete(each); }
    for (const each of seen) if (!rows.includes(each)) { failures.push(`${when}: ${each} stood in the file and is gone.`); seen.delete(each); }
    for (const each of rows) seen.add(each);
    return rows;
  };

  try {
    // How long a run takes here and now.
    const first = await run([valueOf(1), '--at', `2026-03-14T${clock(1)}`, '--anyway'], null, false);
    if (first.code !== 0) return { failures: [`The first run failed: ${first.errors}`], count };
    let usual = first.took;
    let tail = first.tail ?? 30;
    let inARow = 0;
    acknowledged.add(`${clock(1)} ${valueOf(1)}`);
    for (let row = 2; count.killed < kills && row < 700; row += 1) {
      const aimed = row % 2 === 0;
      const result = await run([valueOf(row), '--at', `2026-03-${row < 240 ? 14 : 15}T${clock(row)}`, '--anyway'], draw() * 1.3 * (aimed ? tail : usual), aimed);
      const written = `${clock(row)} ${valueOf(row)}`;
      if (result.signal === 'SIGKILL') {
        count.killed += 1;
        inARow += 1;
        // What waits in the journal makes the next run longer; so that some get through, the moments move on.
        if (inARow > 4) { tail *= 1.3; usual *= 1.1; inARow = 0; }
        if (aimed) count.aimed += 1;
      } else {
        count.finished += 1;
        inARow = 0;
        usual = usual * 0.7 + result.took * 0.3;
        if (result.tail !== null) tail = tail * 0.7 + result.tail * 0.3;
        if (result.code !== 0) failures.push(`Row ${row}: exit ${result.code}: ${result.errors}`);
      }
      if (rowsIn(result.out).length > 0) { acknowledged.add(written); count.acknowledged += 1; }
      const rows = check(`After row ${row}`);
      if (rows.includes(written) && !acknowledged.has(written)) count.writtenUnsaid += 1;
      if (!rows.includes(written) && result.signal === 'SIGKILL' && entries().length > 0) count.journaled += 1;
      if (result.errors.includes('written from the journal')) count.replayed += 1;
      if (count.killed % 50 === 0 && result.signal === 'SIGKILL') say(`${count.killed} kills`);
      if (failures.length > 5) break;
    }
    // A whole run at the end brings everything in the journal into the note. A torn entry was never acknowledged.
    const waiting = readRows(journalFolder);
    await pause(1100); // An empty lock counts as left over after a second.
    const last = await run([], null, false);
    if (last.code !== 0) failures.push(`The last run failed: ${last.errors}`);
    const rows = check('At the end');
    for (const value of waiting) if (!rows.some((each) => each.endsWith(` ${value}`))) failures.push(`At the end: ${value} was in the journal and is not in the note.`);
    const left = readdirSync(folder).filter((each) => !['night.tank.md', 'state'].includes(each));
    if (left.length > 0) failures.push(`At the end: left beside the note: ${left.join(', ')}.`);
    if (readRows(journalFolder).length > 0) failures.push('At the end: the journal is not empty.');
    return { failures, count };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The values of the journal's rows; torn entries are passed over. */
function readRows(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder).flatMap((each) => readdirSync(path.join(folder, each)).flatMap((name) => {
    try { return JSON.parse(readFileSync(path.join(folder, each, name), 'utf8')).values.map((value) => value.text); } catch { return []; }
  }));
}
