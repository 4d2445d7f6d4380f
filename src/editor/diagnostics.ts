// The problems of open notes in the editor: exact places, stable codes, related places; gone when the note is closed.
import * as vscode from 'vscode';
import type { Problem, Severity } from '../problems/problem.ts';
import { problemSentence } from '../words/words.ts';
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

export function registerDiagnostics(notes: NoteStore): vscode.Disposable {
  const collection = vscode.languages.createDiagnosticCollection(diagnosticSource);
  const show = (document: vscode.TextDocument) => {
    const note = notes.noteOf(document);
    if (note) collection.set(document.uri, note.problems.map((problem) => toDiagnostic(document, problem)));
    else collection.delete(document.uri);
  };
  return vscode.Disposable.from(
    collection,
    notes.onDidRead(show),
    notes.onDidClose((document) => collection.delete(document.uri)),
  );
}

export function toDiagnostic(document: vscode.TextDocument, problem: Problem): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(toRange(document, problem.range), problemSentence(problem), severities[problem.severity]);
  diagnostic.source = diagnosticSource;
  diagnostic.code = problem.code;
  diagnostic.relatedInformation = problem.related.map((place) => new vscode.DiagnosticRelatedInformation(
    new vscode.Location(document.uri, toRange(document, place.range)), relatedSentence(place)));
  return diagnostic;
}

/** True when the editor's diagnostic shows this problem. */
export function shows(document: vscode.TextDocument, diagnostic: vscode.Diagnostic, problem: Problem): boolean {
  return diagnostic.source === diagnosticSource && diagnostic.code === problem.code && diagnostic.range.isEqual(toRange(document, problem.range));
}
