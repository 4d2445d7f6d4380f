// Completion: what src/assist suggests at the cursor, as the editor's items. Markdown files get no suggestions while typing,
// so letters trigger them too; outside blocks and claims of a note the answer is empty at once.
import * as vscode from 'vscode';
import { complete } from '../assist/complete.ts';
import type { Suggestion, SuggestionKind } from '../assist/types.ts';
import { interfaceLanguage } from './language.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

const triggers = [...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ', '{', '`', '~', '.', ',', '(', '[', ':', '@', '-', ' '];

const kinds: Readonly<Record<SuggestionKind, vscode.CompletionItemKind>> = {
  key: vscode.CompletionItemKind.Property, value: vscode.CompletionItemKind.Value, unit: vscode.CompletionItemKind.Unit,
  tank: vscode.CompletionItemKind.Class, quantity: vscode.CompletionItemKind.Field, series: vscode.CompletionItemKind.Field,
  function: vscode.CompletionItemKind.Function, phase: vscode.CompletionItemKind.EnumMember, instant: vscode.CompletionItemKind.Constant,
  event: vscode.CompletionItemKind.Event, result: vscode.CompletionItemKind.Variable, word: vscode.CompletionItemKind.EnumMember,
  keyword: vscode.CompletionItemKind.Keyword, block: vscode.CompletionItemKind.Struct, claim: vscode.CompletionItemKind.Snippet,
};

export function registerCompletion(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerCompletionItemProvider(noteSelector, {
    provideCompletionItems: (document, position) => {
      // The names of the note as last read are enough: nothing is read again between two keys.
      const note = notes.lastNoteOf(document) ?? notes.noteOf(document);
      if (!note) return [];
      return complete({ ...note, text: document.getText() }, document.offsetAt(position), interfaceLanguage).map((each) => toItem(document, each));
    },
  }, ...triggers);
}

function toItem(document: vscode.TextDocument, suggestion: Suggestion): vscode.CompletionItem {
  const item = new vscode.CompletionItem({ label: suggestion.label, description: suggestion.detail }, kinds[suggestion.kind]);
  item.range = toRange(document, suggestion.range);
  item.insertText = suggestion.snippet ? new vscode.SnippetString(suggestion.insert) : suggestion.insert;
  item.sortText = suggestion.sort;
  if (suggestion.filter !== undefined) item.filterText = suggestion.filter;
  if (suggestion.documentation !== '') item.documentation = new vscode.MarkdownString(suggestion.documentation);
  if (suggestion.goesOn) item.command = { title: '', command: 'editor.action.triggerSuggest' };
  return item;
}
