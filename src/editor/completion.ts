// Completion: what src/assist suggests at the cursor, as the editor's items. Markdown files get no suggestions while a word is
// typed, and a letter at a word's end triggers none by itself; so the first letter of a word inside a block or claim asks for
// them, the way typing does elsewhere. Outside blocks and claims of a note the answer is empty at once.
import * as vscode from 'vscode';
import { complete } from '../assist/complete.ts';
import type { Suggestion, SuggestionKind } from '../assist/types.ts';
import { interfaceLanguage } from './language.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

const triggers = ['{', '`', '~', '.', ',', '(', '[', ':', '@', '-', ' '];

const kinds: Readonly<Record<SuggestionKind, vscode.CompletionItemKind>> = {
  key: vscode.CompletionItemKind.Property, value: vscode.CompletionItemKind.Value, unit: vscode.CompletionItemKind.Unit,
  tank: vscode.CompletionItemKind.Class, quantity: vscode.CompletionItemKind.Field, series: vscode.CompletionItemKind.Field,
  function: vscode.CompletionItemKind.Function, phase: vscode.CompletionItemKind.EnumMember, instant: vscode.CompletionItemKind.Constant,
  event: vscode.CompletionItemKind.Event, result: vscode.CompletionItemKind.Variable, word: vscode.CompletionItemKind.EnumMember,
  keyword: vscode.CompletionItemKind.Keyword, block: vscode.CompletionItemKind.Struct, claim: vscode.CompletionItemKind.Snippet,
};

export function registerCompletion(notes: NoteStore): vscode.Disposable {
  const suggestionsAt = (document: vscode.TextDocument, offset: number): Suggestion[] => {
    // The names of the note as last read are enough: nothing is read again between two keys.
    const note = notes.lastNoteOf(document) ?? notes.noteOf(document);
    return note ? complete({ ...note, text: document.getText() }, offset, interfaceLanguage) : [];
  };
  return vscode.Disposable.from(
    vscode.languages.registerCompletionItemProvider(noteSelector, {
      provideCompletionItems: (document, position) => suggestionsAt(document, document.offsetAt(position)).map((each) => toItem(document, each)),
    }, ...triggers),
    vscode.workspace.onDidChangeTextDocument((event) => {
      if (startsWord(event) && notes.lastNoteOf(event.document) && suggestionsAt(event.document, event.contentChanges[0]!.rangeOffset + 1).length > 0) {
        void vscode.commands.executeCommand('editor.action.triggerSuggest', { auto: true });
      }
    }),
  );
}

/** True when somebody has typed the first letter of a word, in the editor that has the keyboard, and wants suggestions while typing. */
function startsWord({ document, contentChanges: [change, ...others], reason }: vscode.TextDocumentChangeEvent): boolean {
  if (!change || others.length > 0 || reason !== undefined || change.rangeLength > 0 || !/^\p{L}$/u.test(change.text)) return false;
  if (vscode.window.activeTextEditor?.document !== document) return false;
  const { start } = change.range;
  const before = start.character === 0 ? '' : document.getText(new vscode.Range(start.translate(0, -1), start));
  return !/[\p{L}\p{N}_-]/u.test(before) && vscode.workspace.getConfiguration('editor', document).get<boolean>('suggestOnTriggerCharacters', true);
}

function toItem(document: vscode.TextDocument, suggestion: Suggestion): vscode.CompletionItem {
  const item = new vscode.CompletionItem({ label: suggestion.label, description: suggestion.detail }, kinds[suggestion.kind]);
  item.range = toRange(document, suggestion.range);
  item.insertText = suggestion.snippet ? new vscode.SnippetString(suggestion.insert) : suggestion.insert;
  item.sortText = suggestion.sort;
  if (suggestion.filter !== undefined) item.filterText = suggestion.filter;
  if (suggestion.documentation !== '') item.documentation = new vscode.MarkdownString(suggestion.documentation);
  // A tank's name goes on with a point and a quantity.
  if (suggestion.kind === 'tank' && !suggestion.snippet) item.commitCharacters = ['.'];
  if (suggestion.goesOn) item.command = { title: '', command: 'editor.action.triggerSuggest' };
  return item;
}
