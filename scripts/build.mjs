// Builds everything that ships: the command line, the extension for both hosts, and the preview's scripts.
import { build } from 'esbuild';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundledPackages, thirdPartyNotices } from './notices.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
const production = !process.argv.includes('--development');

const shared = {
  absWorkingDir: root,
  bundle: true,
  metafile: true,
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

/** One copy of the editor's interface for all files: each `import * as vscode` would otherwise copy its four hundred names again. */
const oneEditor = {
  name: 'one-editor',
  setup(builder) {
    builder.onResolve({ filter: /^vscode$/ }, ({ namespace }) => (namespace === 'editor' ? { path: 'vscode', external: true } : { path: 'vscode', namespace: 'editor' }));
    builder.onLoad({ filter: /.*/, namespace: 'editor' }, () => ({ contents: 'export * from \'vscode\';', loader: 'js' }));
  },
};

/** Families of vega's transforms that neither our charts nor the specifications that we allow can name. */
const fewerTransforms = {
  name: 'fewer-transforms',
  setup(builder) {
    builder.onResolve({ filter: /^vega-(?:crossfilter|force|geo|hierarchy|label|regression|voronoi|wordcloud)$/ }, ({ path: name }) => ({ path: name, namespace: 'left-out' }));
    builder.onLoad({ filter: /.*/, namespace: 'left-out' }, () => ({ contents: 'export {};', loader: 'js' }));
  },
};

/** The drawing libraries, by the names under which the preview's chart code hands them on. */
const drawing = { 'vega': 'vega', 'vega-lite': 'vegaLite', 'vega-interpreter': 'vegaInterpreter' };

/**
 * The preview's chart code holds the drawing libraries for the Node host, too, which reads them when somebody publishes: they ship
 * once. Where no page is, the file only hands them on. The browser's host takes one file only, so it has its own.
 */
const chartCode = {
  stdin: {
    contents: [...Object.entries(drawing).map(([name, as]) => `export * as ${as} from '${name}';`), 'if (typeof document === \'object\') require(\'./src/preview/chart.ts\');'].join('\n'),
    resolveDir: root,
  },
  outfile: 'dist/preview/chart.js', platform: 'browser', format: 'cjs',
  banner: { js: '((module) => {' }, footer: { js: '})(typeof module === \'object\' ? module : {});' },
};

/** In the Node host the drawing libraries come from the preview's chart code. */
const drawingApart = {
  name: 'drawing-apart',
  setup(builder) {
    builder.onResolve({ filter: new RegExp(`^(?:${Object.keys(drawing).join('|')})$`) }, ({ path: name }) => ({ path: name, namespace: 'drawing' }));
    builder.onLoad({ filter: /.*/, namespace: 'drawing' }, ({ path: name }) => ({ contents: `module.exports = require('./preview/chart.js').${drawing[name]};`, loader: 'js' }));
    builder.onResolve({ filter: /^\.\/preview\/chart\.js$/, namespace: 'drawing' }, ({ path: file }) => ({ path: file, external: true }));
  },
};

const outputs = [
  { entryPoints: ['src/cli/run.ts'], outfile: 'dist/cli.js', platform: 'node', format: 'esm', target: 'node20',
    banner: { js: '#!/usr/bin/env node\nimport { createRequire as __createRequire } from \'node:module\'; const require = __createRequire(import.meta.url);' } },
  { entryPoints: ['src/editor/extension.ts'], outfile: 'dist/extension.cjs', platform: 'node', format: 'cjs', target: 'node20', plugins: [oneEditor, drawingApart] },
  { entryPoints: ['src/editor/extension.ts'], outfile: 'dist/web/extension.cjs', platform: 'browser', format: 'cjs', plugins: [oneEditor, noStreams] },
  { entryPoints: ['src/preview/loader.ts'], outfile: 'dist/preview/loader.js', platform: 'browser', format: 'iife' },
  chartCode,
];

const results = await Promise.all(outputs
  .filter(({ entryPoints }) => entryPoints === undefined || existsSync(path.join(root, entryPoints[0])))
  .map((output) => build({ ...shared, ...output, plugins: [fewerTransforms, ...output.plugins ?? []] })));

const packages = [...new Set(results.flatMap(({ metafile }) => bundledPackages(metafile)))].sort();
writeFileSync(path.join(root, 'dist/ThirdPartyNotices.txt'), thirdPartyNotices(packages, root));
// The manifest's `"type": "module"` does not hold for the chart code that the Node host requires.
writeFileSync(path.join(root, 'dist/preview/package.json'), '{"type":"commonjs"}\n');
