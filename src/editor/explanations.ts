// What the reference says about a problem's code, as a page of its own behind the code in hovers and in the list of problems.
// The editor opens no commands from there, so the page is a read-only document; it comes with the extension and needs no network.
import * as vscode from 'vscode';
import { sectionOf } from '../assist/reference.ts';
import type { ProblemCode } from '../problems/codes.ts';

const scheme = 'evenwater-reference';

/** The address of a code's explanation. */
export function explanationOf(code: ProblemCode): vscode.Uri {
  return vscode.Uri.from({ scheme, path: `/${code}.md` });
}

/** The reference of problems, functions and keys, as the extension brings it along. */
export function referencePage(extension: vscode.Uri): vscode.Uri {
  return vscode.Uri.joinPath(extension, 'docs', 'reference.md');
}

export function registerExplanations(extension: vscode.Uri, log: vscode.LogOutputChannel): vscode.Disposable {
  let reference: Promise<string> | null = null;
  return vscode.workspace.registerTextDocumentContentProvider(scheme, {
    provideTextDocumentContent: async (uri) => {
      const code = uri.path.replace(/^\/|\.md$/g, '');
      reference ??= Promise.resolve(vscode.workspace.fs.readFile(referencePage(extension))).then((bytes) => new TextDecoder().decode(bytes));
      try {
        return sectionOf(await reference, code) ?? vscode.l10n.t('The reference has nothing on {0}.', code);
      } catch (error) {
        reference = null;
        log.error(error instanceof Error ? error : String(error));
        return vscode.l10n.t('The reference could not be read.');
      }
    },
  });
}
