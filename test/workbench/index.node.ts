// Entry of the suite in the Node extension host. A folder without trust, and a workspace of several folders, get the tests for that.
import Mocha from 'mocha';
import * as vscode from 'vscode';
import { marked } from './report.ts';

export async function run(): Promise<void> {
  const mocha = new Mocha({ ui: 'tdd', color: false, timeout: 60_000, reporter: 'spec' });
  mocha.suite.emit('pre-require', globalThis, 'suite', mocha);
  const several = (vscode.workspace.workspaceFolders?.length ?? 0) > 1;
  await (several ? import('./suite/folders.test.ts') : vscode.workspace.isTrusted ? import('./suite/all.ts') : import('./suite/untrusted.test.ts'));
  await marked(Mocha.reporters.Base as never, () => new Promise<void>((resolve, reject) => {
    mocha.run((failures) => (failures > 0 ? reject(new Error(`${failures} tests failed.`)) : resolve()));
  }));
}
