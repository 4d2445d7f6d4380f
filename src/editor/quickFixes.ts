// The fixes that problems carry, as quick fixes; and "fix all" for those that cannot change what a number or a sentence says.
import * as vscode from 'vscode';
import { breaksSeal, safeEdits, type SafeEdits } from '../assist/fixAll.ts';
import { findFixes, statementFixes } from '../experiment/findNumbers.ts';
import type { Note } from '../experiment/types.ts';
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
        ? here.flatMap((problem) => fixesOf(document, note, problem, context)) : [];
      // A sentence becomes a statement only when somebody asks for what can be done with it.
      if (context.triggerKind === vscode.CodeActionTriggerKind.Invoke && wants(rewriteKind)) {
        const place = { start: document.offsetAt(range.start), end: document.offsetAt(range.end) };
        const statements = statementFixes(place, note);
        actions.push(...statements.map((fix) => rewrite(document, fix)));
        if (statements.length === 0 && context.only) actions.push(noStatement());
      }
      const safe = safeOf(note);
      if (safe.count > 1 && here.some((problem) => problem.fixes.length > 0) && wants(vscode.CodeActionKind.QuickFix)) actions.push(fixAll(document, safe.edits, vscode.CodeActionKind.QuickFix));
      if (context.only && wants(fixAllKind)) {
        if (safe.count > 0) actions.push(fixAll(document, safe.edits, fixAllKind));
        else if (context.triggerKind === vscode.CodeActionTriggerKind.Invoke) actions.push(nothingToMend());
      }
      return actions;
    },
  }, { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix, fixAllKind, rewriteKind] });
}

/** The mends of a note that "fix all" may take; worked out once a note. */
function safeOf(note: Note): SafeEdits {
  const found = known.get(note) ?? safeEdits(note);
  known.set(note, found);
  return found;
}

const known = new WeakMap<Note, SafeEdits>();

/** The mends of a problem. Those that a seal forbids are shown only on request, so the way that keeps the seal stands beside them. */
function fixesOf(document: vscode.TextDocument, note: Note, problem: Problem, context: vscode.CodeActionContext): vscode.CodeAction[] {
  const actions = [...problem.fixes, ...findFixes(problem, note)].map((fix) => quickFix(document, note, problem, fix, context));
  const forbidden = actions.find((action) => action.disabled);
  return forbidden ? [...actions, correctInstead(document, forbidden.diagnostics)] : actions;
}

/** Cannot be done, and says why: the editor's menu shows titles only, its message at the cursor the reason only. */
function refused(action: vscode.CodeAction, reason: string): vscode.CodeAction {
  action.title = `${action.title} · ${reason}`;
  action.disabled = { reason };
  return action;
}

function correctInstead(document: vscode.TextDocument, diagnostics: vscode.Diagnostic[] | undefined): vscode.CodeAction {
  const title = vscode.l10n.t('The table is sealed: correct the reading instead…');
  const action = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
  action.command = { command: 'evenwater.correctReading', title, arguments: [document.uri] };
  action.diagnostics = diagnostics;
  return action;
}

function quickFix(document: vscode.TextDocument, note: Note, problem: Problem, fix: Fix, context: vscode.CodeActionContext): vscode.CodeAction {
  const action = new vscode.CodeAction(fixTitle(fix), vscode.CodeActionKind.QuickFix);
  action.edit = new vscode.WorkspaceEdit();
  addEdits(action.edit, document, fix.edits);
  action.diagnostics = context.diagnostics.filter((diagnostic) => shows(document, diagnostic, problem));
  action.isPreferred = fix.preferred;
  return breaksSeal(note, fix.edits) ? refused(action, vscode.l10n.t('The table is sealed. Correct the reading instead; that keeps the seal.')) : action;
}

function rewrite(document: vscode.TextDocument, fix: Fix): vscode.CodeAction {
  const action = new vscode.CodeAction(fixTitle(fix), rewriteKind);
  action.edit = new vscode.WorkspaceEdit();
  addEdits(action.edit, document, fix.edits);
  return action;
}

/** Says why nothing is offered to whoever asked for it. */
function noStatement(): vscode.CodeAction {
  const action = new vscode.CodeAction(vscode.l10n.t('Turn the sentence into a checked statement'), rewriteKind);
  return refused(action, vscode.l10n.t('Nothing that this note computes fits the sentence.'));
}

/** Says why there is nothing for "fix all" to whoever asked for it. */
function nothingToMend(): vscode.CodeAction {
  return refused(new vscode.CodeAction(mendTitle(), fixAllKind), vscode.l10n.t('There is nothing that could be mended without changing a value.'));
}

const mendTitle = (): string => vscode.l10n.t('Mend everything that changes no value');

function fixAll(document: vscode.TextDocument, edits: readonly TextEdit[], kind: vscode.CodeActionKind): vscode.CodeAction {
  const action = new vscode.CodeAction(mendTitle(), kind);
  action.edit = new vscode.WorkspaceEdit();
  addEdits(action.edit, document, edits);
  return action;
}
