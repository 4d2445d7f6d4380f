// Serves a browser-only workbench: no server-side extension host anywhere, so our web bundle runs in a web worker.
import fs from 'node:fs/promises';
import { createRequire } from 'node:module';
import os from 'node:os';
import path from 'node:path';
import { workbench } from './install.mjs';
import { freePort } from './server.mjs';

/** The test server downloads a build unless `<data>/vscode-web-stable-<commit>/version` exists: hand it the installed one, by links. */
async function linkBuild() {
  const main = await fs.readFile(path.join(workbench.webBuild, 'out/vs/workbench/workbench.web.main.internal.js'), 'utf8');
  const commit = /"version": ?"[\d.]+", ?"commit": ?"([0-9a-f]{40})"/.exec(main)?.[1];
  if (!commit) throw new Error('The browser-only build does not name its commit.');
  const data = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-web-'));
  const build = path.join(data, `vscode-web-stable-${commit}`);
  await fs.mkdir(build);
  for (const entry of await fs.readdir(workbench.webBuild)) await fs.symlink(path.join(workbench.webBuild, entry), path.join(build, entry));
  await fs.writeFile(path.join(build, 'version'), path.basename(build));
  return { commit, data };
}

/** @returns {Promise<{ origin: string, stop: () => Promise<void> }>} */
export async function startWebServer({ folder, extension, tests }) {
  const { commit, data } = await linkBuild();
  const { open } = createRequire(path.join(workbench.folder, 'package.json'))('@vscode/test-web');
  const port = await freePort();
  const running = await open({
    browserType: 'none', quality: 'stable', commit, testRunnerDataDir: data, extensionDevelopmentPath: extension,
    extensionTestsPath: tests, folderPath: folder, port, host: 'localhost',
  });
  // Not plain localhost: the webview's own origin would be cross-site to it and be refused its service worker.
  return {
    origin: `http://vscode.localhost:${port}`,
    stop: async () => { running.dispose(); await fs.rm(data, { recursive: true, force: true }); },
  };
}

/** A browser-only workbench has no settings file: hand settings in as defaults. Call before `goto`. */
export const handInSettings = (page, settings) => page.addInitScript((defaults) => {
  const original = Element.prototype.getAttribute;
  Element.prototype.getAttribute = function getAttribute(name) {
    const value = original.call(this, name);
    if (this.id !== 'vscode-workbench-web-configuration' || name !== 'data-settings' || !value) return value;
    return JSON.stringify({ ...JSON.parse(value), configurationDefaults: defaults });
  };
}, settings);
