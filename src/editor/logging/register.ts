// Everything about logging, registered in one place.
import * as vscode from 'vscode';
import type { NoteStore } from '../noteStore.ts';
import { registerChangeReading } from './changeReading.ts';
import { registerFormatter } from './formatter.ts';
import { registerImport } from './importReadings.ts';
import { RowJournal } from './journal.ts';
import { KeptTypings } from './keptTypings.ts';
import { registerLogEvent } from './logEvent.ts';
import { registerLogReading } from './logReading.ts';
import { registerReplay } from './replay.ts';
import { registerRun } from './run.ts';

export function registerLogging(context: vscode.ExtensionContext, notes: NoteStore, log: vscode.LogOutputChannel): vscode.Disposable {
  const journal = new RowJournal(context, log);
  return vscode.Disposable.from(
    registerLogReading(notes, journal, new KeptTypings(context)),
    registerReplay(notes, journal),
    registerChangeReading(notes),
    registerLogEvent(notes),
    registerFormatter(notes),
    registerImport(notes),
    registerRun(context, notes, log),
  );
}
