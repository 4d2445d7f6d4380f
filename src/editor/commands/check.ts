// The command *check*: reads the note with all its data files, says how it stands, and opens the problems where there are any.
import * as vscode from 'vscode';
import { claimCounts, problemCounts } from '../counts.ts';
import type { NoteStore } from '../noteStore.ts';
import { claimsSentence, problemsSentence } from '../sentences.ts';
import type { Severities } from '../severities.ts';
import { documentFor, sayNoNote } from './activeNote.ts';

export interface CheckResult { readonly errors: number; readonly warnings: number; readonly claims: number }

export function registerCheck(notes: NoteStore, severities: Severities): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.check', async (address?: unknown): Promise<CheckResult | null> => {
    const document = await documentFor(address);
    const note = document && await notes.noteWithFiles(document);
    if (!note) {
      sayNoNote();
      return null;
    }
    const problems = problemCounts(severities.problemsOf(document, note));
    const claims = claimCounts(note);
    vscode.window.setStatusBarMessage(`Evenwater: ${claimsSentence(claims)}; ${problemsSentence(problems)}`, 8000);
    if (problems.errors + problems.warnings > 0) void vscode.commands.executeCommand('workbench.actions.view.problems', { preserveFocus: true });
    return { ...problems, claims: claims.all };
  });
}
