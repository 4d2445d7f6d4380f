// Formatting on save and of a range, seals and corrections, a file pinned from beside the note and from elsewhere; in both hosts.
import * as vscode from 'vscode';
import { equal, match, ok } from '../assert.ts';
import { fixture, openFresh, ours, textOnDisk, until } from './support.ts';

/** Invented. */
const plan = `# A night to change

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
time mat.DO
20:00 8.21 ; lid
20:30 8.2
\`\`\`

\`\`\`readings
time open.DO
20:00 8.31
20:30 8.3 ; lid
\`\`\`
`;
const aligned = (head: string) => new RegExp(`\\ntime {3}${head.replace('.', '\\.')}\\n20:00 +8\\.\\d1`);

suite('changing readings', () => {
  const address = () => fixture('changes/changed.tank.md');
  const onDisk = () => textOnDisk(address());
  const write = (uri: vscode.Uri, text: string) => vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  let note: vscode.TextDocument;
  const fresh = async (text: string) => { note = await openFresh(address(), text); };
  setup(() => fresh(plan));
  suiteTeardown(async () => {
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await vscode.workspace.fs.delete(fixture('changes'), { recursive: true });
  });

  test('a range aligns the tables that it touches, and no other', async () => {
    const at = note.positionAt(note.getText().indexOf('20:30 8.3 '));
    const edits = await vscode.commands.executeCommand<vscode.TextEdit[] | undefined>('vscode.executeFormatRangeProvider', address(), new vscode.Range(at, at.translate(0, 3)), { tabSize: 2, insertSpaces: true });
    const change = new vscode.WorkspaceEdit();
    change.set(address(), edits ?? []);
    ok(await vscode.workspace.applyEdit(change));
    match(note.getText(), aligned('open.DO'));
    ok(note.getText().includes('\ntime mat.DO\n20:00 8.21 ; lid\n'));
    await note.save();
  });

  test('on save, where the editor is set so; line breaks of two characters stay', async () => {
    const settings = () => vscode.workspace.getConfiguration('editor', { languageId: 'markdown', uri: address() });
    await fresh(plan.replaceAll('\n', '\r\n'));
    await settings().update('formatOnSave', true, vscode.ConfigurationTarget.Global, true);
    try {
      const editor = await vscode.window.showTextDocument(note);
      await editor.edit((edit) => edit.insert(new vscode.Position(0, 2), 'Once more: '));
      ok(await note.save());
      const text = await onDisk();
      ok(!/[^\r]\n/.test(text), 'a line break has changed');
      match(text.replaceAll('\r\n', '\n'), aligned('mat.DO'));
      match(text.replaceAll('\r\n', '\n'), aligned('open.DO'));
      equal(text.replace(/ +/g, ' '), plan.replace('# A', '# Once more: A').replaceAll('\n', '\r\n').replace(/ +/g, ' '));
    } finally {
      await settings().update('formatOnSave', undefined, vscode.ConfigurationTarget.Global, true);
    }
  });

  test('a correction, a mark and a formatting leave a seal valid; an event and a remark too', async () => {
    const run = (command: string, more: object) => vscode.commands.executeCommand<boolean>(`evenwater.${command}`, { uri: address(), ...more });
    const cursor = new vscode.Selection(note.positionAt(note.getText().indexOf('8.21')), note.positionAt(note.getText().indexOf('8.21')));
    (await vscode.window.showTextDocument(note)).selection = cursor;
    ok(await run('sealBlock', {}));
    ok(await run('correctReading', { place: { table: 0, row: 0, column: 0 }, value: '8.22', reason: 'misread' }));
    ok(await run('markDoubtful', { place: { table: 0, row: 1, column: 0 }, reason: '' }));
    ok(await run('addRemark', { place: { table: 0, row: 1, column: 0 }, reason: 'calm' }));
    ok(await run('logEvent', { what: 'pump on', at: '2026-03-14T20:30', now: Date.parse('2026-03-14T20:30:00Z'), tanks: [] }));
    match(await onDisk(), /\n# sealed \S+ sha256:[^\n]+\n20:00 8\.21->8\.22 ; lid; mat\.DO: misread\n20:30 8\.2\?   ; calm; pump on\n/);
    await until('the problems of the changed note', () => ours(note).length > 0);
    equal(ours(note).filter((each) => String(each.code).startsWith('seal')).length, 0);
    equal(await vscode.commands.executeCommand<boolean>('evenwater.sealBlock', { uri: address() }), false, 'sealed twice');
  });

  test('a file beside the note is pinned; one from elsewhere is copied first, never over another file', async () => {
    const csv = 'Time;Probe\n14.03.2026 20:00;24,9\n14.03.2026 20:30;24,8\n';
    const choices = { columns: [{ from: 'Time', to: 'time' }, { from: 'Probe', to: 'mat.T' }] };
    await write(fixture('changes/probe.csv'), csv);
    const take = (file: vscode.Uri, as: string) => vscode.commands.executeCommand<boolean>('evenwater.importReadings', { uri: address(), file, as, choices });
    ok(await take(fixture('changes/probe.csv'), 'file'));
    match(await onDisk(), /```readings\nfrom: probe\.csv\ncolumns:\n {2}Time: time\n {2}Probe: mat\.T\ntime zone: UTC\ndelimiter: semicolon\ndecimal: comma\ndate order: day-month-year\nsha256: [0-9a-f]{64}\n```/);
    await vscode.commands.executeCommand('undo');
    equal(note.getText(), plan);
    await write(fixture('probe-elsewhere.csv'), csv.replace('24,8', '24,7'));
    await write(fixture('changes/probe-elsewhere.csv'), 'another file\n');
    ok(await take(fixture('probe-elsewhere.csv'), 'copy'));
    match(await onDisk(), /from: probe-elsewhere-2\.csv\n/);
    equal(new TextDecoder().decode(await vscode.workspace.fs.readFile(fixture('changes/probe-elsewhere-2.csv'))), csv.replace('24,8', '24,7'));
    equal(new TextDecoder().decode(await vscode.workspace.fs.readFile(fixture('changes/probe-elsewhere.csv'))), 'another file\n');
    await vscode.workspace.fs.delete(fixture('probe-elsewhere.csv'));
  });
});
