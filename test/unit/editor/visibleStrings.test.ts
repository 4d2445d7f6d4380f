// Nothing that somebody reads in the editor is written past vscode.l10n: no literal of src/editor with words in it stands
// anywhere but in l10n.t('…') or in the log, which is for reports and stays English.
import { deepEqual, ok } from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/** What no reader sees, though it has words: keys of the note language, conditions, file names, commands. */
const hidden = /^(?:evenwater\.|markdown|vscode|workbench\.|editor\.action\.|typescript|application\/|text\/)/;
const twoWords = /\p{L}{2,}\s+\p{L}{2,}/u;
const seenIn = new Set(['placeHolder', 'title', 'tooltip', 'detail', 'label', 'prompt', 'description', 'validationMessage', 'openLabel', 'saveLabel', 'message', 'text', 'name']);

interface Literal { readonly file: string; readonly text: string }

const textOf = (node: ts.Node): string | null => {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  return ts.isTemplateExpression(node) ? [node.head.text, ...node.templateSpans.map((span) => span.literal.text)].join(' … ') : null;
};

const callee = (node: ts.CallExpression): string => node.expression.getText();
const isSafe = (node: ts.Node): boolean => ts.isImportDeclaration(node) || ts.isTypeNode(node)
  || (ts.isCallExpression(node) && /l10n\.t$|\blog\.(?:trace|debug|info|warn|error|append|appendLine)$|#log\.(?:info|warn|error)$|\.executeCommand$|\.getConfiguration$|^new RegExp$/.test(callee(node)));

/** Literals that a reader may see: with two words, or a word in a place that the editor shows. */
function* visible(file: string, node: ts.Node): Generator<Literal> {
  if (isSafe(node)) return;
  const text = textOf(node)?.replace(/\$\([\w~-]+\)/g, '') ?? null;
  if (text !== null && !hidden.test(text)) {
    const shown = ts.isPropertyAssignment(node.parent) && seenIn.has(node.parent.name.getText()) && /\p{L}{2,}/u.test(text.replaceAll('Evenwater', '').replaceAll(' … ', ''));
    if (twoWords.test(text) || shown) yield { file, text };
  }
  for (const child of node.getChildren()) yield* visible(file, child);
}

const files = readdirSync('src/editor', { withFileTypes: true, recursive: true }).filter((entry) => entry.isFile() && entry.name.endsWith('.ts')).map((entry) => path.join(entry.parentPath, entry.name));

suite('strings that the editor shows', () => {
  test('all go through l10n', () => {
    const found = files.flatMap((file) => [...visible(file, ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true))]);
    deepEqual(found.map(({ file, text }) => `${file}: ${text}`), []);
  });

  test('the display language is asked for in one place, and tables of one language nowhere', () => {
    for (const file of files.filter((each) => path.basename(each) !== 'language.ts')) {
      const text = readFileSync(file, 'utf8');
      ok(!/env\.language\b|words\/(?:words|edits|slips|assist|en\/\w+|de\/\w+)\.ts'/.test(text), file);
    }
  });

  test('the search finds what it should', () => {
    const search = (text: string): number => [...visible('x.ts', ts.createSourceFile('x.ts', text, ts.ScriptTarget.Latest, true))].length;
    ok(search('vscode.window.showErrorMessage(\'It went wrong.\')') === 1);
    ok(search('const item = { label: `$(pin) Pinned`, detail: vscode.l10n.t(\'A detail\') }') === 1);
    ok(search('log.info(\'It went well\'); vscode.l10n.t(\'It went well\')') === 0);
  });
});
