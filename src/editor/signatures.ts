// Signature help for the functions of formulas, from the catalogue.
import * as vscode from 'vscode';
import { signatureHelp } from '../assist/signatureHelp.ts';
import { interfaceLanguage } from './language.ts';
import type { NoteStore } from './noteStore.ts';
import { noteSelector } from './selector.ts';

export function registerSignatures(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerSignatureHelpProvider(noteSelector, {
    provideSignatureHelp: (document, position) => {
      const note = notes.lastNoteOf(document) ?? notes.noteOf(document);
      const found = note && signatureHelp({ ...note, text: document.getText() }, document.offsetAt(position), interfaceLanguage);
      if (!found) return null;
      const help = new vscode.SignatureHelp();
      help.activeSignature = found.activeSignature;
      help.activeParameter = found.activeParameter;
      help.signatures = found.signatures.map((line) => {
        const signature = new vscode.SignatureInformation(line.label, new vscode.MarkdownString().appendText(line.about));
        signature.parameters = line.parameters.map((each) => new vscode.ParameterInformation([...each.label], new vscode.MarkdownString().appendText(each.about)));
        return signature;
      });
      return help;
    },
  }, { triggerCharacters: ['(', ','], retriggerCharacters: [' ', ')'] });
}
