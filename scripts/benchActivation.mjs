// Times the built extension outside an editor: reading and compiling the file, and activate() itself, against a stand-in for the
// editor's interface that answers everything and does nothing. Prints the middle of several fresh processes; passes or fails nothing.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './install.mjs';

const bundle = path.join(root, 'dist/extension.cjs');

/** An object that can be called, constructed and asked for any property. */
function anything() {
  return new Proxy(function nothing() { /* stands in */ }, {
    get: (target, key) => (key === 'then' ? undefined : key === Symbol.toPrimitive ? () => '' : key === 'prototype' ? target.prototype : anything()),
    apply: () => anything(),
    construct: () => anything(),
  });
}

function timeOnce() {
  const types = readFileSync(path.join(root, 'node_modules/@types/vscode/index.d.ts'), 'utf8');
  const names = new Set([...types.matchAll(/export (?:class|enum|namespace|const|function|interface) (\w+)/g)].map((match) => match[1]));
  const editor = Object.fromEntries([...names].map((name) => [name, anything()]));
  const require = createRequire(import.meta.url);
  const Module = require('node:module');
  const load = Module._load;
  Module._load = (request, ...rest) => (request === 'vscode' ? editor : load(request, ...rest));
  const start = performance.now();
  const extension = require(bundle);
  const loaded = performance.now();
  extension.activate({ subscriptions: [], globalState: anything(), workspaceState: anything(), extensionUri: anything(), storageUri: anything(), globalStorageUri: anything() });
  console.log(JSON.stringify([loaded - start, performance.now() - loaded]));
  process.exit(0);
}

if (process.argv.includes('--once')) timeOnce();
else if (!existsSync(bundle)) console.log('activation: not built, run `npm run build` first');
else {
  const runs = Array.from({ length: 9 }, () => JSON.parse(execFileSync(process.execPath, [fileURLToPath(import.meta.url), '--once'], { encoding: 'utf8' })));
  const middle = (index) => runs.map((run) => run[index]).sort((a, b) => a - b)[Math.floor(runs.length / 2)].toFixed(1);
  console.log(`extension: ${middle(0)} ms to read and compile, ${middle(1)} ms in activate() (medians of ${runs.length} fresh processes)`);
}
