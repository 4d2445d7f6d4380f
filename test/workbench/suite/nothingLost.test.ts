// What is typed outlives the note's troubles: a read-only file, a full disk, a file that changed behind the editor's back,
// two editors on one note. The troubles come from a file system of the test's own, so that both hosts have them.
import * as vscode from 'vscode';
import { equal, match, ok } from '../assert.ts';
import { until } from './support.ts';

interface Written { readonly state: string; readonly text?: string; readonly message?: string; readonly kept?: boolean }

/** Invented. */
const plan = `# A night with troubles

\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 08:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
\`\`\`

\`\`\`readings
time   mat.DO  open.DO
\`\`\`

The end.
`;

/** Files in memory that can be read-only, out of space, or changed without a word. */
class TroubledFiles implements vscode.FileSystemProvider {
  readonly #files = new Map<string, { bytes: Uint8Array; time: number }>();
  readonly #changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.#changed.event;
  readOnly = false;
  full = false;

  put(path: string, text: string): void {
    const before = this.#files.get(path)?.time ?? Date.now() - 60_000;
    this.#files.set(path, { bytes: new TextEncoder().encode(text), time: before + 1000 });
  }
  text(path: string): string {
    return new TextDecoder().decode(this.#files.get(path)?.bytes);
  }
  stat(uri: vscode.Uri): vscode.FileStat {
    const file = this.#files.get(uri.path);
    if (!file && uri.path !== '/') throw vscode.FileSystemError.FileNotFound(uri);
    const common = { ctime: 0, mtime: file?.time ?? 0, size: file?.bytes.length ?? 0, type: file ? vscode.FileType.File : vscode.FileType.Directory };
    return this.readOnly ? { ...common, permissions: vscode.FilePermission.Readonly } : common;
  }
  readFile(uri: vscode.Uri): Uint8Array {
    const file = this.#files.get(uri.path);
    if (!file) throw vscode.FileSystemError.FileNotFound(uri);
    return file.bytes;
  }
  writeFile(uri: vscode.Uri, bytes: Uint8Array): void {
    if (this.readOnly) throw vscode.FileSystemError.NoPermissions(uri);
    if (this.full) throw vscode.FileSystemError.Unavailable('no space left on device');
    this.#files.set(uri.path, { bytes, time: Date.now() });
    this.#changed.fire([{ type: vscode.FileChangeType.Changed, uri }]);
  }
  delete(uri: vscode.Uri): void { this.#files.delete(uri.path); }
  watch(): vscode.Disposable { return new vscode.Disposable(() => undefined); }
  readDirectory(): [string, vscode.FileType][] { return []; }
  createDirectory(): void { throw vscode.FileSystemError.NoPermissions(); }
  rename(): void { throw vscode.FileSystemError.NoPermissions(); }
}

suite('nothing is lost', () => {
  const files = new TroubledFiles();
  const now = Date.parse('2026-03-14T20:00:20Z');
  const half = 30 * 60_000;
  let registered: vscode.Disposable;
  let count = 0;
  let path = '';
  let note: vscode.TextDocument;
  const log = (time: number, typed: string) => vscode.commands.executeCommand<Written>('evenwater.logReading', { uri: note.uri, now: time, typed });

  suiteSetup(() => { registered = vscode.workspace.registerFileSystemProvider('troubled', files); });
  suiteTeardown(() => registered.dispose());
  setup(async () => {
    path = `/night-${count += 1}.tank.md`;
    files.readOnly = false;
    files.full = false;
    files.put(path, plan);
    note = await vscode.workspace.openTextDocument(vscode.Uri.from({ scheme: 'troubled', path }));
    await vscode.window.showTextDocument(note);
  });
  teardown(async () => {
    files.readOnly = false;
    files.full = false;
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await vscode.commands.executeCommand('notifications.clearAll');
  });

  test('a read-only note: it says so, the row is kept, and is written once the note can be', async () => {
    files.readOnly = true;
    const refused = await log(now, '8.30 8.31');
    equal(refused.state, 'refused');
    ok(refused.kept);
    match(refused.message ?? '', /read-only/);
    equal(note.getText(), plan);
    equal(files.text(path), plan);
    files.readOnly = false;
    equal((await log(now, '8.30 8.31')).state, 'saved');
    match(files.text(path), /\n20:00 +8\.30 +8\.31\n/);
  });

  test('a full disk: the row stands in the editor, it is not called saved, and goes to disk with the next save', async () => {
    files.full = true;
    const written = await log(now, '8.30 8.31');
    equal(written.state, 'unsaved');
    match(note.getText(), /\n20:00 +8\.30 +8\.31\n/);
    ok(note.isDirty);
    equal(files.text(path), plan);
    files.full = false;
    equal((await log(now + half, '8.29 8.30')).state, 'saved');
    match(files.text(path), /\n20:00 +8\.30 +8\.31\n20:30 +8\.29 +8\.30\n/);
  });

  test('a file that changed behind the editor\'s back is not written over, and the row stands in the editor', async () => {
    files.put(path, plan.replace('The end.', 'The end, by another hand.'));
    const written = await log(now, '8.30 8.31');
    match(note.getText(), /\n20:00 +8\.30 +8\.31\n/);
    match(files.text(path), /by another hand/);
    // Either the editor saw the other change in time and kept both, or it says that the row is not on disk.
    ok(written.state === 'saved' ? /20:00 +8\.30/.test(files.text(path)) : written.state === 'unsaved' && note.isDirty, written.state);
  });

  test('two editors on one note: one row, in both, on disk', async () => {
    await vscode.window.showTextDocument(note, vscode.ViewColumn.Two);
    await until('two editors', () => vscode.window.visibleTextEditors.filter((each) => each.document === note).length === 2);
    equal((await log(now, '8.30 8.31')).state, 'saved');
    equal(files.text(path).match(/\n20:00 /g)?.length, 1);
    for (const editor of vscode.window.visibleTextEditors) match(editor.document.getText(), /\n20:00 +8\.30 +8\.31\n/);
  });
});
