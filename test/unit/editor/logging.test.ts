// The pure parts of logging in the editor: what the prompt shows, when a run speaks, which logger a file is of.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { proposeImport } from '../../../src/edits/importTable.ts';
import { planRow } from '../../../src/edits/planRow.ts';
import { readRowInput } from '../../../src/edits/readRowInput.ts';
import { choicesOf, loggerFor, loggerOf, readLoggers } from '../../../src/editor/logging/loggers.ts';
import { completed, rowView } from '../../../src/editor/logging/rowView.ts';
import { countdown, isQuiet, later, leaseTime, mayTake, momentOf, readLease, readRunState, shouldTell, type RunState } from '../../../src/editor/logging/runState.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { loadZone } from '../../../src/time/zone.ts';

/** Invented readings; they exist to try the prompt. */
const text = `# A night

\`\`\`protocol
place: {time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 08:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
  T: {what: water temperature, unit: degC}
  mood: {what: behaviour, scale: [calm, restless, surface, gasping]}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  mat.mood
20:00    8.21   24.9  calm
20:30    8.24   24.9  calm
21:00    8.25   24.9  calm
21:30    8.25   24.8  calm
\`\`\`
`;
const note = readNote(text, undefined, undefined, { fileIsNote: true });
const zone = loadZone('Europe/Amsterdam')!;
const at = (clock: string): number => Date.parse(`2026-03-14T${clock}+01:00`);
const view = (typed: string, now = at('22:00:10')) => { const plan = planRow(note, now)!; return rowView(readRowInput(typed, note, plan), plan, zone); };

suite('logging prompt', () => {
  test('which value goes where, its unit, the change and since when', () => {
    const { lines, complete } = view('8.01 24.7');
    deepEqual(lines.map((line) => [line.head, line.text, line.unit, line.change, line.state]), [
      ['mat.DO', '8.01', 'mg/L', '−0.24', 'good'], ['mat.T', '24.7', 'degC', '−0.1', 'good'], ['mat.mood', '', '', '', 'next'],
    ]);
    deepEqual(lines[0]!.last, { text: '8.25', clock: '21:30' });
    ok(!complete);
  });

  test('a word of the scale completes as typed; a begun one that is the only one is taken whole', () => {
    deepEqual(view('8.01 24.8 ').completions, ['calm', 'restless', 'surface', 'gasping']);
    deepEqual(view('8.01 24.8 re').completions, ['restless']);
    equal(completed('8.01 24.8 re', 'restless'), '8.01 24.8 restless ');
    equal(completed('8.01 24.8 ', 'calm'), '8.01 24.8 calm ');
    const whole = view('8.01 24.8 re');
    ok(whole.complete);
    equal(whole.lines[2]!.text, 'restless');
  });

  test('what looks wrong is marked where it stands', () => {
    deepEqual(view('8.01 76.6 calm').lines.map((line) => line.state), ['good', 'odd', 'good']);
    equal(view('8.01 76.6 calm').warnings[0]?.code, 'unit-slip');
    deepEqual(view('8.01 warm calm').lines.map((line) => line.state), ['good', 'wrong', 'good']);
    ok(!view('8.01 warm calm').complete);
  });
});

suite('run', () => {
  const started: RunState = { note: 'file:///night.tank.md', started: at('20:00'), told: [], laterUntil: null };

  test('a slot is due from its own minute on, once; later puts it off; quiet hours keep it quiet', () => {
    const moment = (now: number) => momentOf(planRow(note, now)!, now);
    equal(moment(at('21:58')).kind, 'waiting');
    deepEqual(moment(at('21:58')), { kind: 'waiting', next: at('22:00'), left: 120_000 });
    const due = moment(at('22:00'));
    equal(due.kind, 'due');
    ok(shouldTell(started, due, at('22:00'), false));
    ok(!shouldTell(started, due, at('22:00'), true));
    ok(!shouldTell({ ...started, told: [at('22:00')] }, due, at('22:03'), false));
    const putOff: RunState = { ...started, told: [at('22:00')], laterUntil: at('22:03') + later };
    ok(!shouldTell(putOff, moment(at('22:07')), at('22:07'), false));
    ok(shouldTell(putOff, moment(at('22:08')), at('22:08'), false));
    ok(!shouldTell(started, moment(at('21:58')), at('21:58'), false));
  });

  test('a night of ticks tells each slot once, and none after the row is logged', () => {
    let state = started;
    const told: number[] = [];
    for (let now = at('21:40'); now <= at('23:10'); now += 1000) {
      const moment = momentOf(planRow(note, now)!, now);
      if (!shouldTell(state, moment, now, false) || moment.kind !== 'due') continue;
      told.push(moment.slot);
      state = { ...state, told: [...state.told, moment.slot] };
    }
    deepEqual(told, [at('22:00'), at('22:30'), at('23:00')]);
  });

  test('quiet hours, also over midnight, in the zone of the note', () => {
    ok(isQuiet('23:00-07:00', at('23:30'), zone) && isQuiet('23:00 - 07:00', at('02:00'), zone) && !isQuiet('23:00-07:00', at('22:59'), zone) && !isQuiet('23:00-07:00', at('07:00'), zone));
    ok(isQuiet('12:00-13:00', at('12:30'), zone) && !isQuiet('12:00-13:00', at('13:00'), zone));
    ok(!isQuiet('', at('03:00'), zone) && !isQuiet('always', at('03:00'), zone));
  });

  test('the countdown', () => { deepEqual([0, 1, 61_000, 725_000, 3_729_000, -5].map(countdown), ['0:00', '0:01', '1:01', '12:05', '1:02:09', '0:00']); });

  test('a reload takes the run up again; what cannot be read is no run', () => {
    deepEqual(readRunState(JSON.parse(JSON.stringify(started))), started);
    for (const wrong of [undefined, null, 'x', {}, { note: 3, started: 1 }]) equal(readRunState(wrong), null);
  });

  test('of two windows one speaks, and the other takes over when it is gone', () => {
    const now = at('22:00');
    ok(mayTake(null, 'a', now));
    const lease = readLease(JSON.stringify({ window: 'a', until: now + leaseTime }));
    ok(mayTake(lease, 'a', now + 1) && !mayTake(lease, 'b', now + 1) && mayTake(lease, 'b', now + leaseTime + 1));
    equal(readLease('{"window":'), null);
  });
});

suite('loggers', () => {
  const file = 'Stamp;Oxygen (mg/l);Temp\n14/03/2026 22:00;8,26;24,8\n15/03/2026 22:30;8,02;24,8\n';

  test('a file of a known logger is read with its columns, zone and date order', () => {
    const loggers = readLoggers({ 'probe A': { columns: { 'Stamp': 'time', 'Oxygen (mg/l)': 'mat.DO' }, timeZone: 'UTC', dateOrder: 'day-month-year' }, 'broken': { columns: 3 }, 'other': { columns: { Clock: 'time' } } });
    deepEqual([...loggers.keys()], ['probe A', 'other']);
    const found = loggerFor(proposeImport(file, note)!.names, loggers);
    equal(found?.name, 'probe A');
    const proposal = proposeImport(file, note, choicesOf(found!.logger))!;
    deepEqual(proposal.heads, ['mat.DO']);
    deepEqual(proposal.asks, []);
    // The file's clock is UTC, the note's is an hour ahead.
    deepEqual(proposal.rows.map((row) => [row.time, ...row.cells]), [['2026-03-14T23:00', '8.26'], ['2026-03-15T23:30', '8.02']]);
    equal(loggerFor(['Clock ', 'x'], loggers), null);
  });

  test('what is remembered gives the same import again', () => {
    const first = proposeImport(file, note, { dateOrder: 'day-month-year', columns: [{ from: 'Stamp', to: 'time' }, { from: 'Temp', to: 'mat.T' }] })!;
    const again = proposeImport(file, note, choicesOf(readLoggers(JSON.parse(JSON.stringify({ x: loggerOf(first) }))).get('x')!))!;
    deepEqual(again.rows, first.rows);
    deepEqual(again.heads, ['mat.T']);
  });
});
