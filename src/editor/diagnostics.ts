// The problems of open notes in the editor: exact places, stable codes that lead to their explanation, related places;
// calm while somebody types, gone when the note is closed, renamed, deleted or no note any more.
import * as vscode from 'vscode';
import type { Problem, Severity } from '../problems/problem.ts';
import type { ProblemCode } from '../problems/codes.ts';
import { problemSentence } from './language.ts';
import type { CalmNotes } from './calm.ts';
import { explanationOf } from './explanations.ts';
import { relatedSentence } from './relatedPlaces.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';

export const diagnosticSource = 'evenwater';

const severities: Readonly<Record<Severity, vscode.DiagnosticSeverity>> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  information: vscode.DiagnosticSeverity.Information,
  hint: vscode.DiagnosticSeverity.Hint,
};

/** What stands there has no effect, or says once more what is said already: shown faded. */
const withoutEffect: ReadonlySet<ProblemCode> = new Set<ProblemCode>([
  'unknown-key', 'duplicate-key', 'option-unknown', 'data-file-key-unknown', 'accepted-code-unknown', 'volume-typed-twice',
]);

export function registerDiagnostics(notes: NoteStore, calm: CalmNotes): vscode.Disposable {
  const collection = vscode.languages.createDiagnosticCollection(diagnosticSource);
  return vscode.Disposable.from(
    collection,
    calm.onDidShow(({ document, problems }) => {
      if (problems) collection.set(document.uri, problems.map((problem) => toDiagnostic(document, problem)));
      else collection.delete(document.uri);
    }),
    notes.onDidClose((document) => collection.delete(document.uri)),
  );
}

export function toDiagnostic(document: vscode.TextDocument, problem: Problem): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(toRange(document, problem.range), problemSentence(problem), severities[problem.severity]);
  diagnostic.source = diagnosticSource;
  diagnostic.code = { value: problem.code, target: explanationOf(problem.code) };
  diagnostic.relatedInformation = problem.related.map((place) => new vscode.DiagnosticRelatedInformation(
    new vscode.Location(document.uri, toRange(document, place.range)), relatedSentence(place)));
  if (withoutEffect.has(problem.code)) diagnostic.tags = [vscode.DiagnosticTag.Unnecessary];
  return diagnostic;
}

/** True when the editor's diagnostic shows this problem. */
export function shows(document: vscode.TextDocument, diagnostic: vscode.Diagnostic, problem: Problem): boolean {
  return diagnostic.source === diagnosticSource && codeOf(diagnostic) === problem.code && diagnostic.range.isEqual(toRange(document, problem.range));
}

/** The code of one of our diagnostics. */
export function codeOf(diagnostic: vscode.Diagnostic): string {
  return String(typeof diagnostic.code === 'object' ? diagnostic.code.value : diagnostic.code);
}
