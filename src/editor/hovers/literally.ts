// Words in a hover as they are: nothing in them is Markdown, and a line may be broken between them.
import * as vscode from 'vscode';

/** The editor's own `appendText` joins all words by spaces that never break, so that long lines break inside a word. */
export function literally(words: string): string {
  const joined = new vscode.MarkdownString().appendText(words).value;
  // A first word such as "1." keeps its space: it would begin a list.
  return joined.replaceAll('&nbsp;', ' ').replace(/^(\d+[.)]) /, '$1&nbsp;');
}
