// The fixes that problems carry, as quick fixes; and "fix all" for those that cannot change what a number or a sentence says.
import * as vscode from 'vscode';
import { findFixes, statementFixes } from '../experiment/findNumbers.ts';
import type { Fix, Problem, TextEdit } from '../problems/problem.ts';
import { fixTitle } from './language.ts';
import { shows } from './diagnostics.ts';
import type { NoteStore } from './noteStore.ts';
import { addEdits, toRange } from './places.ts';
import { noteSelector } from './selector.ts';

const fixAllKind = vscode.CodeActionKind.SourceFixAll.append('evenwater');
const rewriteKind = vscode.CodeActionKind.RefactorRewrite.append('evenwater');

export function registerQuickFixes(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerCodeActionsProvider(noteSelector, {
    provideCodeActions: (document, range, context) => {
      const note = notes.noteOf(document);
      if (!note) return [];
      const wants = (kind: vscode.CodeActionKind) => !context.only || context.only.contains(kind);
      // Formulas are searched for the numbers at this place only, and only when somebody asks.
      const here = note.problems.filter((problem) => toRange(document, problem.range).intersection(range));
      const actions = wants(vscode.CodeActionKind.QuickFix)
        ? here.flatMap((problem) => [...problem.fixes, ...findFixes(problem, note)].map((fix) => quickFix(document, problem, fix, context))) : [];
      // A sentence becomes a statement only when somebody asks for what can be done with it.
      if (context.triggerKind === vscode.CodeActionTriggerKind.Invoke && wants(rewriteKind)) {
        const place = { start: document.offsetAt(range.start), end: document.offsetAt(range.end) };
        actions.push(...statementFixes(place, note).map((fix) => rewrite(document, fix)));
      }
      const safe = safeEdits(note.problems);
      if (safe.count > 1 && here.some((problem) => problem.fixes.length > 0) && wants(vscode.CodeActionKind.QuickFix)) actions.push(fixAll(document, safe.edits, vscode.CodeActionKind.QuickFix));
      if (safe.count > 0 && context.only && wants(fixAllKind)) actions.push(fixAll(document, safe.edits, fixAllKind));
      return actions;
    },
  }, { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix, fixAllKind, rewriteKind] });
}

function quickFix(document: vscode.TextDocument, problem: Problem, fix: Fix, context: vscode.CodeActionContext): vscode.CodeAction {
  const action = new vscode.CodeAction(fixTitle(fix), vscode.CodeActionKind.QuickFix);
  action.edit = new vscode.WorkspaceEdit();
  addEdits(action.edit, document, fix.edits);
  action.diagnostics = context.diagnostics.filter((diagnostic) => shows(document, diagnostic, problem));
  action.isPreferred = fix.preferred;
  return action;
}

function rewrite(document: vscode.TextDocument, fix: Fix): vscode.CodeAction {
  const action = new vscode.CodeAction(fixTitle(fix), rewriteKind);
  action.edit = new vscode.WorkspaceEdit();
  addEdits(action.edit, document, fix.edits);
  return action;
}

function fixAll(document: vscode.TextDocument, edits: readonly TextEdit[], kind: vscode.CodeActionKind): vscode.CodeAction {
  const action = new vscode.CodeAction(vscode.l10n.t('Mend everything that changes no value'), kind);
  action.edit = new vscode.WorkspaceEdit();
  addEdits(action.edit, document, edits);
  return action;
}

/** One safe fix a problem, the preferred one first; of fixes that touch each other only the first is taken. */
export function safeEdits(problems: readonly Problem[]): { readonly edits: readonly TextEdit[]; readonly count: number } {
  const taken: TextEdit[] = [];
  let count = 0;
  for (const problem of problems) {
    const safe = problem.fixes.filter((fix) => fix.safe);
    const chosen = safe.find((fix) => fix.preferred) ?? (safe.length === 1 ? safe[0] : undefined);
    if (!chosen || chosen.edits.some((edit) => taken.some((other) => touches(edit, other)))) continue;
    taken.push(...chosen.edits);
    count += 1;
  }
  return { edits: taken, count };
}

const touches = (a: TextEdit, b: TextEdit) => a.range.start <= b.range.end && b.range.start <= a.range.end;
