// `npm start`: from a fresh clone to a published sample. Installs, builds, checks the samples, publishes one, says where to look.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { installMissing, root, run } from './install.mjs';

/** The worked notes; the templates beside them still carry instructions, which `check` would warn of. */
const notes = readdirSync(path.join(root, 'samples')).filter((name) => name.endsWith('.tank.md')).map((name) => path.join('samples', name));
const sample = path.join('samples', 'overnight-oxygen.tank.md');
const open = !process.argv.includes('--no-open');

installMissing();
console.error('Building …');
if (run(process.execPath, ['scripts/build.mjs']) !== 0) process.exit(1);

console.log('Checking the samples:');
if (run(process.execPath, ['dist/cli.js', 'check', ...notes]) !== 0) process.exit(1);
console.log(`Publishing ${sample}:`);
if (run(process.execPath, ['dist/cli.js', 'publish', sample, '--to', 'out']) !== 0) process.exit(1);

const post = path.join(root, 'out', 'overnight-oxygen.html');
console.log(`\nThe post:  ${post}\n           open it in a browser: every underlined number shows the formula it came from.`);
console.log(`The note:  ${path.join(root, sample)}\n           change a reading in it, run \`npm start\` again, and publishing is refused until the prose agrees.`);

const code = process.platform === 'win32' ? 'code.cmd' : 'code';
const hasCode = spawnSync(code, ['--version'], { stdio: 'ignore', shell: process.platform === 'win32' }).status === 0;
if (open && hasCode) {
  console.log('Opening the sample in VS Code with the extension loaded from this folder …');
  run(code, [`--extensionDevelopmentPath=${root}`, path.join(root, 'samples'), path.join(root, sample)]);
} else if (open) {
  console.log('VS Code\'s `code` command is not on the path; with it, this command would also open the sample in the editor.');
}
