// Builds everything that ships: the command line, the extension for both hosts, and the preview's scripts.
import { build } from 'esbuild';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
const production = !process.argv.includes('--development');

const shared = {
  absWorkingDir: root,
  bundle: true,
  minify: production,
  sourcemap: production ? false : 'linked',
  legalComments: 'none',
  target: 'es2022',
  logLevel: 'warning',
  define: { EVENWATER_VERSION: JSON.stringify(version) },
  // One copy of vega-util in a bundle: two copies disagree about what is an expression interpreter.
  mainFields: ['module', 'main'],
  // Everywhere the builds without a canvas, files or a network: charts come out the same, and nothing waits at the top level.
  alias: Object.fromEntries(['vega-canvas', 'vega-loader'].map((name) => [name, path.join(root, `node_modules/${name}/build/${name}.browser.js`)])),
};

/** papaparse names Node's streams in a function that nothing here calls; a web worker has none. */
const noStreams = {
  name: 'no-streams',
  setup(builder) {
    builder.onResolve({ filter: /^stream$/ }, () => ({ path: 'stream', namespace: 'nothing' }));
    builder.onLoad({ filter: /.*/, namespace: 'nothing' }, () => ({ contents: '', loader: 'js' }));
  },
};

const outputs = [
  { entryPoints: ['src/cli/run.ts'], outfile: 'dist/cli.js', platform: 'node', format: 'esm', target: 'node20',
    banner: { js: '#!/usr/bin/env node\nimport { createRequire as __createRequire } from \'node:module\'; const require = __createRequire(import.meta.url);' } },
  { entryPoints: ['src/editor/extension.ts'], outfile: 'dist/extension.cjs', platform: 'node', format: 'cjs', target: 'node20', external: ['vscode'] },
  { entryPoints: ['src/editor/extension.ts'], outfile: 'dist/web/extension.cjs', platform: 'browser', format: 'cjs', external: ['vscode'], plugins: [noStreams] },
  { entryPoints: ['src/preview/loader.ts'], outfile: 'dist/preview/loader.js', platform: 'browser', format: 'iife' },
  { entryPoints: ['src/preview/chart.ts'], outfile: 'dist/preview/chart.js', platform: 'browser', format: 'iife' },
];

await Promise.all(outputs
  .filter((output) => existsSync(path.join(root, output.entryPoints[0])))
  .map((output) => build({ ...shared, ...output })));
