// A night of logging with the clock handed in; corrections, events, imports, seals and the formatter; each row is on disk.
import * as vscode from 'vscode';
import { equal, match, ok } from '../assert.ts';
import { codeOf, fixture, openFresh, textOnDisk, until } from './support.ts';

interface Written { readonly state: string; readonly text?: string; readonly message?: string; readonly kept?: boolean; readonly already?: boolean }

/** Invented; a short night in a time zone without surprises. */
const plan = `# A night to log

\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment, plants: water lettuce}
  open: {role: control, plants: none}
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 2026-03-15 08:00, end: 2026-03-15 08:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
  T: {what: water temperature, unit: degC}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  open.DO  open.T
\`\`\`

The end.
`;

suite('logging', () => {
  let note: vscode.TextDocument;
  const address = () => fixture('logged.tank.md');
  const onDisk = () => textOnDisk(address());
  const log = (now: number, typed: string) => vscode.commands.executeCommand<Written>('evenwater.logReading', { uri: address(), now, typed });
  const start = Date.parse('2026-03-14T20:00:20Z');
  const half = 30 * 60_000;
  const fresh = async (text: string) => { note = await openFresh(address(), text); };
  setup(() => fresh(plan));
  suiteTeardown(async () => {
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await vscode.workspace.fs.delete(address());
  });

  test('a whole night: each row lands in its slot, aligned, and is on disk when the command returns', async () => {
    for (let slot = 0; slot <= 24; slot += 1) {
      const typed = `${(8.3 - slot * 0.08).toFixed(2)} ${(24.9 - slot * 0.02).toFixed(1)} ${(8.3 - slot * 0.01).toFixed(2)} 24.6`;
      const written = await log(start + slot * half, slot === 7 ? `${typed} ; open probe rinsed` : typed);
      equal(written.state, 'saved', written.message);
      ok((await onDisk()).includes(`\n${written.text}\n`), `row ${slot} is not on disk`);
      ok(!note.isDirty);
    }
    const rows = (await onDisk()).split('\n').filter((line) => /^\d\d:\d\d /.test(line));
    equal(rows.length, 25);
    match(rows[0]!, /^20:00 /);
    match(rows[7]!, /^23:30 .*; open probe rinsed$/);
    match(rows[24]!, /^08:00 /);
    equal(new Set(rows.map((row) => row.indexOf('.'))).size, 1, 'the points stand in one column');
  });

  test('a late reading keeps its true time; the same row again is not written twice; another is refused', async () => {
    await log(start, '8.30 24.9 8.30 24.6');
    match((await log(start + half + 9 * 60_000, '8.20 24.9 8.29 24.6')).text ?? '', /^20:39 /);
    equal((await log(start, '20:00 8.30 24.9 8.30 24.6')).already, true);
    const refused = await log(start, '20:00 8.10 24.9 8.30 24.6');
    equal(refused.state, 'refused');
    match(refused.message ?? '', /correct/);
  });

  test('correct, leave out, mark, remark: the first value stays and the reason stands', async () => {
    await log(start, '8.30 24.9 8.30 24.6');
    const run = (command: string, more: object) => vscode.commands.executeCommand<boolean>(`evenwater.${command}`, { uri: address(), ...more });
    ok(await run('correctReading', { place: { table: 0, row: 0, column: 0 }, value: '8.31', reason: 'misread' }));
    ok(await run('leaveOut', { place: { table: 0, row: 0, column: 2 }, reason: 'probe out of the water' }));
    ok(await run('markDoubtful', { place: { table: 0, row: 0, column: 3 }, reason: '' }));
    ok(await run('addRemark', { place: { table: 0, row: 0, column: 0 }, reason: 'lid open' }));
    match(await onDisk(), /\n20:00 +8\.30->8\.31 +24\.9 +\(8\.30\) +24\.6\? +; mat\.DO: misread; open\.DO: probe out of the water; lid open\n/);
    ok(await run('logEvent', { what: 'pump on', at: '20:00', now: start, tanks: ['mat'] }));
    match(await onDisk(), /events:\n {2}- at: 2026-03-14 20:00\n {4}what: pump on\n {4}tanks: \[mat\]\n/);
    match(await onDisk(), /; lid open; pump on\n|lid open; pump on/);
  });

  test('a seal stands, a formatting leaves it, and a changed value is named', async () => {
    await log(start, '8.30 24.9 8.30 24.6');
    ok(await vscode.commands.executeCommand<boolean>('evenwater.sealBlock', { uri: address() }));
    match(await onDisk(), /\n# sealed \S+ sha256:/);
    const edit = new vscode.WorkspaceEdit();
    const at = note.positionAt(note.getText().indexOf('8.30 '));
    edit.replace(address(), new vscode.Range(at, at.translate(0, 4)), '8.35');
    ok(await vscode.workspace.applyEdit(edit));
    const problem = await until('the broken seal', () => vscode.languages.getDiagnostics(address()).find((each) => codeOf(each) === 'seal-broken'));
    match(problem.message, /mat\.DO/);
    await vscode.commands.executeCommand('workbench.action.files.revert');
  });

  test('an import is one block and one step to undo', async () => {
    const text = 'Stamp;mat.DO;mat.T\n14/03/2026 20:10;8,28;24,9\n14/03/2026 20:20;oops;24,9\n';
    const asked = { uri: address(), text, as: 'table', choices: { dateOrder: 'day-month-year', columns: [{ from: 'Stamp', to: 'time' }, { from: 'mat.DO', to: 'mat.DO' }, { from: 'mat.T', to: 'mat.T' }] } };
    ok(await vscode.commands.executeCommand<boolean>('evenwater.importReadings', asked));
    match(await onDisk(), /\n2026-03-14T20:10 +8\.28 +24\.9\n2026-03-14T20:20 +- +24\.9 +; mat\.DO: oops\n/);
    await vscode.commands.executeCommand('undo');
    equal(note.getText(), plan);
  });

  test('the formatter aligns, touches no value, and does nothing the second time', async () => {
    await fresh(plan.replace('open.T\n', 'open.T\n20:00 8.3 24.9 8.30 24.6 ; lid\n20:30 8.25   24.85 8.2 24.6\n'));
    const edits = () => vscode.commands.executeCommand<vscode.TextEdit[] | undefined>('vscode.executeFormatDocumentProvider', address(), { tabSize: 2, insertSpaces: true });
    const change = new vscode.WorkspaceEdit();
    change.set(address(), await edits() ?? []);
    const before = note.getText().replace(/[ ]+/g, ' ');
    ok(await vscode.workspace.applyEdit(change));
    equal(note.getText().replace(/[ ]+/g, ' '), before);
    equal((await edits() ?? []).length, 0);
    await note.save();
  });

  test('CRLF and a byte order mark stay', async () => {
    await fresh(`\ufeff${plan.replaceAll('\n', '\r\n')}`);
    equal((await log(start, '8.30 24.9 8.30 24.6')).state, 'saved');
    const bytes = await vscode.workspace.fs.readFile(address());
    equal([...bytes.subarray(0, 3)].join(), '239,187,191');
    const text = new TextDecoder().decode(bytes);
    ok(!/[^\r]\n/.test(text) && /\r\n20:00 +8\.30 /.test(text));
  });

  test('a table that was broken by hand: a clear message, the note as it was', async () => {
    await fresh(plan.replace('mat.DO  mat.T', 'mat.D0  mat.T'));
    const written = await log(start, '8.30 24.9 8.30 24.6');
    equal(written.state, 'refused');
    match(written.message ?? '', /heads/);
    equal(await onDisk(), note.getText());
  });

  test('a file that another program changed: its change and the row both stand', async () => {
    await vscode.workspace.fs.writeFile(address(), new TextEncoder().encode(plan.replace('The end.', 'The end, by another hand.')));
    await until('the change on disk to arrive', () => note.getText().includes('another hand'));
    equal((await log(start, '8.30 24.9 8.30 24.6')).state, 'saved');
    match(await onDisk(), /20:00 +8\.30[^]*another hand/);
  });

  test('an untitled note takes the row, and says that it is not on disk', async () => {
    const untitled = await vscode.workspace.openTextDocument({ language: 'markdown', content: plan });
    await vscode.window.showTextDocument(untitled);
    const written = await vscode.commands.executeCommand<Written>('evenwater.logReading', { uri: untitled.uri, now: start, typed: '8.30 24.9 8.30 24.6' });
    equal(written.state, 'unsaved');
    match(untitled.getText(), /\n20:00 +8\.30 /);
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  });

  test('a run starts and ends, and starts only where the plan has times', async () => {
    await vscode.window.showTextDocument(note);
    equal(await vscode.commands.executeCommand<boolean>('evenwater.startRun', address()), true);
    await vscode.commands.executeCommand('evenwater.endRun');
    await fresh(plan.replace(/schedule:.*\n/, ''));
    equal(await vscode.commands.executeCommand<boolean>('evenwater.startRun', address()), false);
  });
});
