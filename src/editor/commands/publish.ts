// The command *publish*: the post beside the note or in the folder of the setting; refused, with the list, while errors stand.
import * as vscode from 'vscode';
import type { Note } from '../../experiment/types.ts';
import type { Problem } from '../../problems/problem.ts';
import { problemSentence } from '../language.ts';
import type { NoteStore } from '../noteStore.ts';
import { documentFor, sayNoNote } from './activeNote.ts';

declare const EVENWATER_VERSION: string;

export type PublishResult =
  | { readonly written: vscode.Uri; readonly problems: readonly Problem[] }
  | { readonly refused: 'no-note' | 'untrusted' | 'errors' | 'no-folder' | 'not-ours' | 'cannot-write'; readonly problems: readonly Problem[] };

export function registerPublish(notes: NoteStore, log: vscode.LogOutputChannel): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.publish', async (address?: unknown): Promise<PublishResult> => {
    if (!vscode.workspace.isTrusted) {
      void vscode.window.showWarningMessage(vscode.l10n.t('Publishing writes a file, so it waits until you trust this workspace.'));
      return { refused: 'untrusted', problems: [] };
    }
    const document = await documentFor(address);
    const note = document && await notes.noteWithFiles(document);
    if (!document || !note?.protocol) {
      sayNoNote();
      return { refused: 'no-note', problems: [] };
    }
    return publish(document, note, log);
  });
}

async function publish(document: vscode.TextDocument, note: Note, log: vscode.LogOutputChannel): Promise<PublishResult> {
  const errors = note.problems.filter((problem) => problem.severity === 'error');
  if (errors.length > 0) return refuse(document, errors, log);

  const folder = await folderFor(document.uri);
  if (!folder) return { refused: 'no-folder', problems: [] };
  const stem = stemOf(document.uri);
  const target = vscode.Uri.joinPath(folder, `${stem}.html`);
  const { publishPost } = await import('../../publish/post.ts'); // The drawing library waits until somebody publishes.
  const post = await publishPost(note, { stem, toolVersion: EVENWATER_VERSION, noteName: nameOf(document.uri), noteBytes: await bytesOf(document, note) });
  const drawn = post.problems.filter((problem) => problem.severity === 'error');
  if (drawn.length > 0) return refuse(document, drawn, log);
  if (!await mayReplace(target)) return { refused: 'not-ours', problems: [] };
  if (!await write(target, post.html, log)) return { refused: 'cannot-write', problems: [] };

  const worthKnowing = note.problems.filter((problem) => problem.severity === 'warning' || problem.code === 'loose-number' || problem.code === 'nothing-read-yet');
  for (const problem of worthKnowing) log.info(describe(document, problem));
  void announce(target, worthKnowing.length);
  return { written: target, problems: worthKnowing };
}

function refuse(document: vscode.TextDocument, errors: readonly Problem[], log: vscode.LogOutputChannel): PublishResult {
  for (const problem of errors) log.error(describe(document, problem));
  const sentence = errors.length === 1
    ? vscode.l10n.t('Not published: {0}', problemSentence(errors[0]!))
    : vscode.l10n.t('Not published: {0} errors stand in the way.', errors.length);
  const show = vscode.l10n.t('Show Problems');
  void vscode.window.showErrorMessage(sentence, show).then((chosen) => {
    if (chosen === show) void vscode.commands.executeCommand('workbench.actions.view.problems');
  });
  return { refused: 'errors', problems: errors };
}

/** The setting's folder (relative to the note's), else the note's own; asked for where that cannot be written. */
async function folderFor(note: vscode.Uri): Promise<vscode.Uri | null> {
  const beside = vscode.Uri.joinPath(note, '..');
  const setting = vscode.workspace.getConfiguration('evenwater', note).get<string>('publish.folder', '').trim();
  const writable = note.scheme !== 'untitled' && vscode.workspace.fs.isWritableFileSystem(note.scheme) !== false;
  if (writable) return setting === '' ? beside : setting.startsWith('/') ? note.with({ path: setting }) : vscode.Uri.joinPath(beside, setting);
  const chosen = await vscode.window.showOpenDialog({
    canSelectFolders: true, canSelectFiles: false, openLabel: vscode.l10n.t('Publish Here'), title: vscode.l10n.t('Folder for the post'),
  });
  return chosen?.[0] ?? null;
}

/** The note's file as it is on disk, where that holds the same text; else the text of the editor. */
async function bytesOf(document: vscode.TextDocument, note: Note): Promise<Uint8Array | undefined> {
  try {
    const bytes = await vscode.workspace.fs.readFile(document.uri);
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes) === note.text ? bytes : undefined;
  } catch {
    return undefined; // Never saved, or not UTF-8 on disk.
  }
}

/** `night.tank.md` gives `night`, as on the command line. */
function stemOf(note: vscode.Uri): string {
  const name = note.path.slice(note.path.lastIndexOf('/') + 1);
  return name.replace(/(?:\.tank)?\.md$/i, '').replace(/[\\/:*?"<>|]/g, '-') || 'note';
}

/** An earlier post of ours is replaced; any other file only when its owner says so. */
async function mayReplace(target: vscode.Uri): Promise<boolean> {
  let before: Uint8Array;
  try {
    before = await vscode.workspace.fs.readFile(target);
  } catch {
    return true; // Nothing stands there.
  }
  if (/<meta name="generator" content="Evenwater\b/i.test(new TextDecoder().decode(before.subarray(0, 4096)))) return true;
  const replace = vscode.l10n.t('Replace');
  return await vscode.window.showWarningMessage(
    vscode.l10n.t('{0} was not published from a note. Replace it?', nameOf(target)), { modal: true }, replace) === replace;
}

/** The whole file or none: written beside, then renamed. */
async function write(target: vscode.Uri, html: string, log: vscode.LogOutputChannel): Promise<boolean> {
  const partial = target.with({ path: `${target.path}.partial` });
  try {
    await vscode.workspace.fs.writeFile(partial, new TextEncoder().encode(html));
    await vscode.workspace.fs.rename(partial, target, { overwrite: true });
    return true;
  } catch (error) {
    log.error(error instanceof Error ? error : String(error));
    void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be written; the log says why.', nameOf(target)));
    return false;
  }
}

async function announce(target: vscode.Uri, worthKnowing: number): Promise<void> {
  const open = vscode.l10n.t('Open');
  const openable = target.scheme === 'file' && vscode.env.uiKind === vscode.UIKind.Desktop && !vscode.env.remoteName;
  const sentence = worthKnowing === 0
    ? vscode.l10n.t('Published {0}.', nameOf(target))
    : vscode.l10n.t('Published {0}; {1} things worth knowing are in the log.', nameOf(target), worthKnowing);
  if (await vscode.window.showInformationMessage(sentence, ...(openable ? [open] : [])) === open) await vscode.env.openExternal(target);
}

const nameOf = (target: vscode.Uri) => target.path.slice(target.path.lastIndexOf('/') + 1);

function describe(document: vscode.TextDocument, problem: Problem): string {
  const { line, character } = document.positionAt(problem.range.start);
  return `${nameOf(document.uri)}:${line + 1}:${character + 1}: ${problem.severity} ${problem.code}: ${problemSentence(problem)}`;
}
