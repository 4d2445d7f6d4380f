// Builds the editor suite and runs it in one host. The same test files for the Node host and the web host.
import { build } from 'esbuild';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { followTests, newPage } from './browser.mjs';
import { root } from './install.mjs';
import { pageAddress, quietSettings, startServer } from './server.mjs';
import { handInSettings, startWebServer } from './webServer.mjs';

const bundles = { node: 'dist/test/node/index.cjs', web: 'dist/test/web/index.cjs' };

/** Mocha's browser build would take the bundle's `module` for its own: hide it. */
const mochaAsGlobal = {
  name: 'mocha-as-global',
  setup: (builder) => builder.onLoad({ filter: /[\\/]mocha[\\/]mocha\.js$/ }, async ({ path: file }) => ({
    contents: `(function (exports, module) {${await fs.readFile(file, 'utf8')}\n})();`, loader: 'js',
  })),
};

/** Bundles test/workbench for both hosts. */
export async function buildSuites() {
  const shared = { absWorkingDir: root, bundle: true, format: 'cjs', target: 'es2022', logLevel: 'warning', sourcemap: 'inline' };
  await build({ ...shared, entryPoints: ['test/workbench/index.node.ts'], outfile: bundles.node, platform: 'node', external: ['vscode', 'mocha'] });
  await build({
    ...shared, entryPoints: ['test/workbench/index.web.ts'], outfile: bundles.web, platform: 'browser', external: ['vscode'], plugins: [mochaAsGlobal],
    banner: { js: 'globalThis.location ??= { search: "" };' }, // mocha's browser build reads it when loaded
  });
}

/** A fresh copy of the fixtures, so that a test may write. */
export async function copyFixtures(from = 'test/workbench/workspace') {
  const parent = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-notes-'));
  const folder = path.join(parent, 'notes');
  await fs.cp(path.join(root, from), folder, { recursive: true });
  return { folder, remove: () => fs.rm(parent, { recursive: true, force: true }) };
}

/** The mocha suite in the Node extension host of the server, the current or the oldest; without trust, the tests for that. */
export async function runInNodeHost(browser, { trust = true, oldest = false } = {}) {
  const notes = await copyFixtures();
  const server = await startServer({ trust, oldest });
  const page = await newPage(browser);
  try {
    const ended = await followTests(page, oldest ? 'oldest' : trust ? 'node-host' : 'untrusted');
    await page.goto(pageAddress(server, { folder: notes.folder, extension: root, tests: path.join(root, bundles.node) }));
    return await ended();
  } finally {
    await page.context().close();
    await server.stop();
    await notes.remove();
  }
}

/** The tests for a workspace of two folders, the second with settings of its own. */
export async function runInSeveralFolders(browser) {
  const [first, second] = [await copyFixtures(), await copyFixtures()];
  await fs.mkdir(path.join(second.folder, '.vscode'));
  await fs.writeFile(path.join(second.folder, '.vscode/settings.json'), JSON.stringify({ 'evenwater.codeLens': false, 'evenwater.severity': { 'claim-unfilled': 'error' } }));
  const workspace = path.join(path.dirname(first.folder), 'two.code-workspace');
  await fs.writeFile(workspace, JSON.stringify({ folders: [{ path: first.folder, name: 'first' }, { path: second.folder, name: 'second' }] }));
  const server = await startServer();
  const page = await newPage(browser);
  try {
    const ended = await followTests(page, 'several-folders');
    await page.goto(pageAddress(server, { workspace, extension: root, tests: path.join(root, bundles.node) }));
    return await ended();
  } finally {
    await page.context().close();
    await server.stop();
    await first.remove();
    await second.remove();
  }
}

/** The same suite in a web worker, in a workbench without any server-side host. */
export async function runInWebHost(browser) {
  const notes = await copyFixtures();
  const server = await startWebServer({ folder: notes.folder, extension: root, tests: path.join(root, bundles.web) });
  const page = await newPage(browser);
  try {
    const ended = await followTests(page, 'web-host');
    await handInSettings(page, quietSettings);
    await page.goto(server.origin);
    return await ended();
  } finally {
    await page.context().close();
    await server.stop();
    await notes.remove();
  }
}
