// The reference page is the tables' own words: it may not lag behind them.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../../..');

suite('reference', () => {
  test('docs/reference.md is what the tables say today', function () {
    this.timeout(180_000);
    const result = spawnSync(process.execPath, ['--import=tsx', 'scripts/reference.ts', '--check'], { cwd: root, encoding: 'utf8' });
    assert.equal(result.status, 0, result.stdout + result.stderr);
  });
});
