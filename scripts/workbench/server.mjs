// Starts the editor's server with the Node extension host, on a free loopback port, with a profile of its own.
import { spawn } from 'node:child_process';
import fs from 'node:fs/promises';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { root, workbench } from './install.mjs';

/** Settings that keep the editor quiet: nothing fetched, nothing suggested, nothing animated. */
export const quietSettings = {
  'breadcrumbs.enabled': false,
  'chat.disableAIFeatures': true,
  'editor.cursorBlinking': 'solid',
  'editor.minimap.enabled': false,
  'editor.stickyScroll.enabled': false,
  'editor.wordWrap': 'on',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'files.autoSave': 'off',
  'git.enabled': false,
  'json.schemaDownload.enable': false,
  'npm.fetchOnlinePackageInfo': false,
  'remote.autoForwardPorts': false,
  'telemetry.telemetryLevel': 'off',
  'typescript.disableAutomaticTypeAcquisition': true,
  'update.mode': 'none',
  'window.autoDetectColorScheme': false,
  'workbench.colorTheme': 'Dark Modern',
  'workbench.enableExperiments': false,
  'workbench.layoutControl.enabled': false,
  'workbench.navigationControl.enabled': false,
  'workbench.reduceMotion': 'on',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.settings.enableNaturalLanguageSearch': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
};

export const freePort = () => new Promise((resolve, reject) => {
  const probe = net.createServer().once('error', reject).listen(0, '127.0.0.1', () => {
    const { port } = probe.address();
    probe.close(() => resolve(port));
  });
});

/** An address of the server's file system as the page names it. */
export const remoteUri = (host, file) => `vscode-remote://${host}${file.split('/').map(encodeURIComponent).join('/')}`;

/**
 * Starts the server. `trust: false` opens every folder in restricted mode. `locale` is the display language, by a pack without
 * words of its own (test/workbench/languagePack): the editor's own words stay English, extensions are asked for that language.
 * @returns {Promise<{ origin: string, host: string, pid: number, directory: string, stop: () => Promise<void> }>}
 */
export async function startServer({ settings = {}, trust = true, port: wantedPort, oldest = false, locale = null } = {}) {
  const directory = await fs.mkdtemp(path.join(os.tmpdir(), 'evenwater-workbench-'));
  const user = path.join(directory, 'user');
  await fs.mkdir(path.join(user, 'User'), { recursive: true });
  const trustSettings = trust ? { 'security.workspace.trust.enabled': false }
    : { 'security.workspace.trust.enabled': true, 'security.workspace.trust.startupPrompt': 'never', 'security.workspace.trust.banner': 'never' };
  await fs.writeFile(path.join(user, 'User/settings.json'), JSON.stringify({ ...quietSettings, ...trustSettings, ...settings }, null, 2));

  if (locale) await fs.writeFile(path.join(user, 'languagepacks.json'), JSON.stringify({ [locale]: {
    hash: 'test', label: locale, extensions: [{ extensionIdentifier: { id: 'evenwater-test.language-pack' }, version: '1.0.0' }],
    translations: { vscode: path.join(root, 'test/workbench/languagePack/main.i18n.json') },
  } }));

  const port = wantedPort ?? await freePort();
  const host = `127.0.0.1:${port}`;
  const child = spawn(workbench.node, [
    oldest ? workbench.oldestServer : workbench.server, '--host', '127.0.0.1', '--port', String(port), '--without-connection-token', '--accept-server-license-terms',
    '--server-data-dir', path.join(directory, 'server'), '--user-data-dir', user, '--extensions-dir', path.join(directory, 'extensions'),
    '--disable-telemetry', '--telemetry-level', 'off', ...(trust ? ['--disable-workspace-trust'] : []), ...(locale ? ['--locale', locale] : []),
    '--enable-smoke-test-driver', // without it a built workbench ignores the payload that names our extension
  ], { stdio: ['ignore', 'pipe', 'pipe'], detached: true, env: { ...process.env, VSCODE_AGENT_FOLDER: path.join(directory, 'agent'), EXTENSIONS_GALLERY: '{"serviceUrl":""}' } });
  let log = '';
  child.stdout.on('data', (data) => { log += data; });
  child.stderr.on('data', (data) => { log += data; });

  const kill = (signal) => { try { process.kill(-child.pid, signal); } catch { /* It has ended already. */ } };
  const onExit = () => kill('SIGKILL');
  process.once('exit', onExit);
  const stop = async () => {
    kill('SIGTERM');
    await new Promise((resolve) => { setTimeout(resolve, 300); });
    kill('SIGKILL');
    process.off('exit', onExit);
    await fs.rm(directory, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }).catch(() => {});
  };

  const origin = `http://${host}`;
  for (const end = Date.now() + 90_000; ;) {
    if (child.exitCode !== null) { await stop(); throw new Error(`The workbench's server ended with ${child.exitCode}:\n${log}`); }
    if (await fetch(origin).then((response) => response.ok, () => false)) return { origin, host, pid: child.pid, directory, stop };
    if (Date.now() > end) { await stop(); throw new Error(`The workbench's server did not start:\n${log}`); }
    await new Promise((resolve) => { setTimeout(resolve, 50); });
  }
}

/** The page that opens a folder (and a file in it) or a workspace of several with our extension, and runs a test bundle where one is named. */
export function pageAddress(server, { folder, workspace, file, extension, tests }) {
  const payload = [['skipWelcome', 'true'], ['extensionDevelopmentPath', remoteUri(server.host, extension)]];
  if (tests) payload.push(['extensionTestsPath', remoteUri(server.host, tests)]);
  if (file) payload.push(['openFile', remoteUri(server.host, path.join(folder, file))]);
  return `${server.origin}/?${new URLSearchParams({ ...(workspace ? { workspace } : { folder }), payload: JSON.stringify(payload) })}`;
}
