// Which documents the extension looks at, and the cheap test that keeps every other Markdown file free of cost.
import type * as vscode from 'vscode';

/** Notes are Markdown; the language id is the built-in one, on every file system. */
export const noteSelector: vscode.DocumentSelector = { language: 'markdown' };

const protocolFence = /^[ \t>*+\-\d.)]*(?:`{3,}|~{3,})[ \t]*protocol(?:\s|$)/m;

/** True when the text may hold a `protocol` block: one linear scan, no parsing. */
export function mayBeNote(text: string): boolean {
  return text.includes('protocol') && protocolFence.test(text);
}

/** True for `*.tank.md`: there a missing protocol is a problem, not a sign of plain Markdown. */
export function isNoteFile(path: string): boolean {
  return path.toLowerCase().endsWith('.tank.md');
}

/** Old versions and copies that the editor shows for comparison: nobody can mend anything there. */
const shownOnly = new Set([
  'git', 'gitfs', 'gitlens', 'pr', 'review', 'svn', 'hg', 'scm-history-item', 'vscode-scm', 'vscode-local-history', 'conflictResolution', 'merge-conflict.conflict-diff',
  'output', 'comment', 'vscode-chat-code-block', 'chat-editing-text-model',
]);

/** True for a Markdown document that somebody may be working on. */
export function isMarkdown(document: vscode.TextDocument): boolean {
  return document.languageId === 'markdown' && !shownOnly.has(document.uri.scheme);
}
