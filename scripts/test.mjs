// `npm test`: installs what is missing, builds, and runs every suite. Ends with one line that sums them all.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { installMissing, root, run } from './install.mjs';

installMissing();
if (run(process.execPath, ['scripts/build.mjs']) !== 0) { console.log('0 passed, 1 failed'); process.exit(1); }

const total = { passed: 0, failed: 0, skipped: 0 };
const failures = [];

/** A line that names a failed check: our own suites' marks, or mocha's number in its list at the end. */
const failed = /^\s*(?:✘|not ok\b|\d+\) )/u;
/** Each such line with the seven after it, which say why. */
function failuresIn(text) {
  const lines = text.split('\n');
  const told = (at) => lines.slice(Math.max(0, at - 7), at + 1).some((line) => failed.test(line));
  return lines.filter((line, at) => line.trim() !== '' && told(at));
}

/** Runs one suite, shows what it prints, and adds up its closing numbers. A suite that counts nothing has failed. */
function suite(name, command, args, count) {
  console.log(`\n== ${name}`);
  const result = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'], encoding: 'utf8', maxBuffer: 1 << 28 });
  process.stdout.write(result.stdout ?? '');
  const counted = count(result.stdout ?? '');
  if (counted.passed + counted.failed + counted.skipped === 0 || (result.status !== 0 && counted.failed === 0)) counted.failed += 1;
  for (const key of Object.keys(total)) total[key] += counted[key];
  if (counted.failed > 0) failures.push(`== ${name}`, ...failuresIn(result.stdout ?? ''));
}

const last = (text, pattern) => Number([...text.matchAll(pattern)].at(-1)?.[1] ?? 0);
/** Mocha's own closing lines. */
const mochaCount = (text) => ({
  passed: last(text, /^\s*(\d+) passing/gm), failed: last(text, /^\s*(\d+) failing/gm), skipped: last(text, /^\s*(\d+) pending/gm),
});
/** The closing line that our own suites print. */
const plainCount = (text) => {
  const line = [...text.matchAll(/^(\d+) passed, (\d+) failed(?:, (\d+) skipped)?$/gm)].at(-1);
  return { passed: Number(line?.[1] ?? 0), failed: Number(line?.[2] ?? 0), skipped: Number(line?.[3] ?? 0) };
};

suite('unit, property and conformance tests', process.execPath, ['node_modules/mocha/bin/mocha.js', '--reporter', 'dot', 'test/unit/**/*.test.ts'], mochaCount);
for (const script of ['scripts/test-workbench.mjs', 'scripts/test-posts.mjs', 'scripts/test-kill.mjs', 'scripts/package.mjs']) {
  if (existsSync(path.join(root, script))) suite(script, process.execPath, [script], plainCount);
}

// Said again where a long log ends: what failed. A suite with a real editor runs a second time when it failed, so its first run is listed too.
if (failures.length > 0) console.log(['\nWhat failed:', ...failures].join('\n'));
console.log(`\n${total.passed} passed, ${total.failed} failed${total.skipped ? `, ${total.skipped} skipped` : ''}`);
process.exit(total.failed > 0 || (process.env.CI === 'true' && total.skipped > 0) ? 1 : 0);
