// Installs the packages of the lockfile where they are missing or older than the lockfile. Needs no package itself.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

/** True when node_modules holds exactly what the lockfile names. */
function upToDate() {
  const installed = path.join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(installed)) return false;
  const have = JSON.parse(readFileSync(installed, 'utf8')).packages;
  const want = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8')).packages;
  return Object.entries(want).every(([name, entry]) => name === '' || entry.optional === true || entry.peer === true
    || have[name]?.version === entry.version);
}

/** Installs what is missing; ends the process with a sentence when that fails. */
export function installMissing() {
  if (upToDate()) return;
  console.error('Installing packages (npm ci) …');
  const result = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'], shell: process.platform === 'win32' });
  if (result.status !== 0) {
    console.error('The packages could not be installed. Is the npm registry within reach?');
    process.exit(1);
  }
}

/** Runs a command in the repository; returns its exit code. */
export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32', ...options });
  return result.status ?? 1;
}
