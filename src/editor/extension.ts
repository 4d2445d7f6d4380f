// The extension, from top to bottom: what is made once, what is registered, what the Markdown preview gets.
import * as vscode from 'vscode';
import { CalmNotes } from './calm.ts';
import { registerCodeLenses } from './codeLenses.ts';
import { registerCheck } from './commands/check.ts';
import { registerExplainProblem } from './commands/explainProblem.ts';
import { fillInOnSave, registerFillIn } from './commands/fillIn.ts';
import { registerGoToProblem } from './commands/goToProblem.ts';
import { registerInsertReadings } from './commands/insertReadings.ts';
import { registerNewExperiment } from './commands/newExperiment.ts';
import { registerOpenExample } from './commands/openExample.ts';
import { registerPublish } from './commands/publish.ts';
import { registerRecheck } from './commands/recheck.ts';
import { registerRepeatExperiment } from './commands/repeatExperiment.ts';
import { registerCompletion } from './completion.ts';
import { DataFiles } from './dataFiles.ts';
import { registerDefinitions } from './definitions.ts';
import { registerDiagnostics } from './diagnostics.ts';
import { registerExplanations } from './explanations.ts';
import { registerFileLinks } from './fileLinks.ts';
import { registerFolding } from './folding.ts';
import { registerHovers } from './hovers.ts';
import { registerInlayValues } from './inlayValues.ts';
import { registerLinkedNames } from './linkedNames.ts';
import { registerLogging } from './logging/register.ts';
import { registerNoteContexts } from './noteContexts.ts';
import { NoteStore } from './noteStore.ts';
import { registerOutline } from './outline.ts';
import { extendPreview, refreshPreviewsWithFiles } from './preview.ts';
import { registerQuickFixes } from './quickFixes.ts';
import { registerReferences } from './references.ts';
import { registerRename } from './rename.ts';
import { registerSelections } from './selections.ts';
import { Severities } from './severities.ts';
import { registerSemanticTokens } from './semanticTokens.ts';
import { registerSlotHints } from './slotHints.ts';
import { registerSignatures } from './signatures.ts';
import { registerStatus } from './status.ts';
import { registerWorkspaceNotes } from './workspaceNotes.ts';

/** Called by the editor when the first Markdown file opens. The same for the desktop and for the browser. */
export function activate(context: vscode.ExtensionContext): ReturnType<typeof extendPreview> {
  const log = vscode.window.createOutputChannel('Evenwater', { log: true });
  const files = new DataFiles(log);
  const notes = new NoteStore(files, log);
  const severities = new Severities(log);
  const calm = new CalmNotes(notes, severities);

  context.subscriptions.push(
    log, files, notes, severities, calm,
    registerDiagnostics(notes, calm),
    registerQuickFixes(notes),
    registerCodeLenses(notes, calm, severities),
    registerHovers(notes),
    registerInlayValues(notes, calm),
    registerSlotHints(calm),
    registerOutline(notes),
    registerCompletion(notes),
    registerSignatures(notes),
    registerDefinitions(notes),
    registerReferences(notes),
    registerRename(notes, log),
    registerLinkedNames(notes),
    registerFolding(notes),
    registerSelections(notes),
    registerFileLinks(notes),
    registerSemanticTokens(notes),
    registerWorkspaceNotes(log),
    vscode.commands.registerCommand('evenwater.showLog', () => log.show()),
    registerNoteContexts(notes),
    registerStatus(notes, calm),
    registerCheck(notes, severities),
    registerExplainProblem(context.extensionUri, log),
    registerGoToProblem(),
    registerExplanations(context.extensionUri, log),
    registerPublish(notes, log),
    registerRecheck(log),
    registerNewExperiment(),
    registerOpenExample(context),
    registerRepeatExperiment(notes),
    registerInsertReadings(notes),
    registerFillIn(notes),
    fillInOnSave(notes),
    registerLogging(context, notes, log),
    refreshPreviewsWithFiles(files),
  );
  return extendPreview(notes);
}
