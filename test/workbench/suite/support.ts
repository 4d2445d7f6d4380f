// What the tests of the editor share: opening a fixture, waiting for the editor, asking its providers.
import * as vscode from 'vscode';

export const folder = (): vscode.Uri => vscode.workspace.workspaceFolders![0]!.uri;
export const fixture = (name: string): vscode.Uri => vscode.Uri.joinPath(folder(), name);

/** Opens a fixture in an editor. */
export async function open(name: string): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(fixture(name));
  await vscode.window.showTextDocument(document);
  return document;
}

export const textOnDisk = async (address: vscode.Uri): Promise<string> => new TextDecoder().decode(await vscode.workspace.fs.readFile(address));

/** Writes a note and opens it in an editor, whatever an earlier test left there. */
export async function openFresh(address: vscode.Uri, text: string): Promise<vscode.TextDocument> {
  await vscode.workspace.fs.writeFile(address, new TextEncoder().encode(text));
  const note = await vscode.workspace.openTextDocument(address);
  await vscode.window.showTextDocument(note);
  const shown = text.replace('\ufeff', ''); // The editor keeps a byte order mark to itself.
  if (note.getText() !== shown) await vscode.commands.executeCommand('workbench.action.files.revert');
  await until('the fresh note', () => note.getText() === shown);
  return note;
}

/** Asks again until `ask` gives something; fails with what it gave last. */
export async function until<T>(what: string, ask: () => T | null | undefined | false | Promise<T | null | undefined | false>, timeout = 20_000): Promise<T> {
  const end = Date.now() + timeout;
  for (;;) {
    const answer = await ask();
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`Waited ${timeout / 1000} s for ${what}.`);
    await new Promise((resolve) => { setTimeout(resolve, 50); });
  }
}

export const ours = (document: vscode.TextDocument): vscode.Diagnostic[] => (
  vscode.languages.getDiagnostics(document.uri).filter((each) => each.source === 'evenwater'));

/** A problem's code; the editor keeps it together with the link to its explanation. */
export const codeOf = (problem: vscode.Diagnostic): string => String(typeof problem.code === 'object' ? problem.code.value : problem.code);

export const withCode = (document: vscode.TextDocument, code: string): vscode.Diagnostic | undefined => ours(document).find((each) => codeOf(each) === code);

/** The range of `text` in the document; of `part` inside it where one is given. */
export function find(document: vscode.TextDocument, text: string, part = text): vscode.Range {
  const start = document.getText().indexOf(text);
  const inner = text.indexOf(part);
  if (start < 0 || inner < 0) throw new Error(`${JSON.stringify(text)} does not stand in the document.`);
  return new vscode.Range(document.positionAt(start + inner), document.positionAt(start + inner + part.length));
}

/** Replaces the first `before` by `after`, as an author's edit. */
export async function replace(document: vscode.TextDocument, before: string, after: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, find(document, before), after);
  if (!await vscode.workspace.applyEdit(edit)) throw new Error('The edit was refused.');
}

/** Takes back every change of the test. */
export async function revert(document: vscode.TextDocument): Promise<void> {
  await vscode.window.showTextDocument(document);
  await vscode.commands.executeCommand('workbench.action.files.revert');
}

export async function hoverText(document: vscode.TextDocument, range: vscode.Range): Promise<string> {
  const middle = document.positionAt(Math.floor((document.offsetAt(range.start) + document.offsetAt(range.end)) / 2));
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', document.uri, middle);
  return hovers.flatMap((hover) => hover.contents).map((each) => (typeof each === 'string' ? each : each.value)).join('\n');
}

export const lenses = async (document: vscode.TextDocument): Promise<{ line: number; title: string }[]> => {
  const found = await vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 20);
  return found.filter((lens) => lens.command?.command.startsWith('evenwater.')).map((lens) => ({ line: lens.range.start.line, title: lens.command!.title }));
};

export const fixes = async (document: vscode.TextDocument, range: vscode.Range): Promise<vscode.CodeAction[]> => (
  vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', document.uri, range, vscode.CodeActionKind.QuickFix.value));

export const hints = async (document: vscode.TextDocument): Promise<vscode.InlayHint[]> => (
  vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, new vscode.Range(0, 0, document.lineCount, 0)));
