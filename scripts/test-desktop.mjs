// `npm run test:desktop`: the editor suite in a desktop VS Code, fetched by @vscode/test-electron (or VSCODE_EXECUTABLE).
// Says in one sentence where its download cannot be had.
import { runTests } from '@vscode/test-electron';
import { mkdtempSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { installMissing, root, run } from './install.mjs';
import { buildSuites, copyFixtures } from './workbench/suites.mjs';

installMissing();
if (run(process.execPath, ['scripts/build.mjs']) !== 0) process.exit(1);
await buildSuites();
const notes = await copyFixtures();
const profile = mkdtempSync(path.join(os.tmpdir(), 'evenwater-desktop-'));
const unreachable = /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|CERT_|fetch failed|Failed to (?:get|download)|getaddrinfo/i;
try {
  process.exitCode = await runTests({
    vscodeExecutablePath: process.env.VSCODE_EXECUTABLE,
    extensionDevelopmentPath: root,
    extensionTestsPath: path.join(root, 'dist/test/node/index.cjs'),
    launchArgs: [
      notes.folder, '--user-data-dir', path.join(profile, 'user'), '--extensions-dir', path.join(profile, 'extensions'),
      '--disable-extensions', '--disable-workspace-trust', '--disable-telemetry', '--skip-welcome', '--skip-release-notes', '--disable-gpu',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ],
  });
} catch (error) {
  const message = error?.message || String(error);
  const code = error?.cause?.code ?? error?.code ?? '';
  const reason = message.includes(code) ? message : `${message} ${code}`;
  if (unreachable.test(reason)) console.log(`The desktop suite did not run: VS Code could not be downloaded here (${reason.split('\n')[0]}); set VSCODE_EXECUTABLE to an installed one.`);
  else console.error(reason);
  process.exitCode = 1;
} finally {
  await notes.remove();
}
