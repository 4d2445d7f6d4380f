// Makes the extension's package, evenwater-<version>.vsix, from a fresh build, and looks into it: what must ship is there, nothing else is.
// The packaging tool is large, so it lives in packaging/ and is installed by this script alone. Run with: npm run package
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { root, run } from './install.mjs';

const { version, main, browser, contributes } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
const folder = path.join(root, 'packaging');
const tool = path.join(folder, 'node_modules/@vscode/vsce/vsce');
const target = path.join(root, `evenwater-${version}.vsix`);
const readme = path.join(root, 'dist/README.md');
const mostBytes = 2_000_000;

/** Why the tool cannot be had, or null. */
function installTool() {
  if (existsSync(tool)) return null;
  const { status, stderr } = spawnSync('npm', ['ci', '--ignore-scripts', '--omit=optional', '--no-engine-strict', '--no-audit', '--no-fund', '--no-progress'], { cwd: folder, encoding: 'utf8' });
  return status === 0 ? null : `the packaging tool could not be installed (${stderr.trim().split('\n').at(-1)})`;
}

/** The README without its pictures: an extension's page shows pictures from the web only, and we ship none there. */
function writeReadme() {
  const text = readFileSync(path.join(root, 'README.md'), 'utf8');
  writeFileSync(readme, text.replace(/^!\[[^\]]*\]\([^)]*\)\n\n?/gm, ''));
}

/** Paths inside the package. */
function entriesOf(file) {
  const yauzl = createRequire(path.join(folder, 'package.json'))('yauzl');
  return new Promise((resolve, reject) => {
    yauzl.open(file, (error, zip) => {
      if (error) { reject(error); return; }
      const names = [];
      zip.on('entry', (entry) => { names.push(entry.fileName); });
      zip.on('end', () => { resolve(names); });
      zip.on('error', reject);
    });
  });
}

const plain = (name) => name.replace(/^\.\//, '').toLowerCase();

/** Everything that the manifest names, and what people and licences need. */
const wanted = [
  main, browser, ...contributes['markdown.previewScripts'], ...contributes['markdown.previewStyles'], ...contributes.grammars.map((each) => each.path),
  ...contributes.walkthroughs.flatMap(({ icon, steps }) => [icon, ...steps.map((step) => step.media.svg)]),
  'dist/preview/chart.js', 'dist/preview/package.json', 'dist/ThirdPartyNotices.txt', 'package.json', 'package.nls.json', 'package.nls.de.json', 'l10n/bundle.l10n.json', 'l10n/bundle.l10n.de.json',
  'README.md', 'CHANGELOG.md', 'LICENSE.txt', 'samples/overnight-oxygen.tank.md', 'docs/accessibility.md', 'docs/reference.md',
].map(plain);

/** One check: a name and what is wrong, nothing where it holds. */
const checks = (shipped, size) => [
  ['everything that the manifest names is in it', wanted.filter((name) => !shipped.includes(name))],
  ['no source, test, map or package folder is in it', shipped.filter((name) => /node_modules|^(?:src|test|scripts|workbench|packaging)\/|\.map$|\.ts$/.test(name))],
  [`it has less than ${mostBytes / 1e6} MB`, size < mostBytes ? [] : [`${size} bytes`]],
];

async function makePackage() {
  if (run(process.execPath, ['scripts/build.mjs']) !== 0) return { passed: 0, failed: 1, skipped: 0 };
  const reason = installTool();
  if (reason !== null) {
    console.log(`  - skipped: ${reason}`);
    return { passed: 0, failed: 0, skipped: 1 };
  }
  writeReadme();
  const packed = spawnSync(process.execPath, [tool, 'package', '--no-dependencies', '--no-rewrite-relative-links', '--allow-missing-repository', '--readme-path', path.relative(root, readme), '--out', target], { cwd: root, encoding: 'utf8' });
  if (packed.status !== 0) {
    console.log(`  ✘ the package is made\n    ${`${packed.stdout}${packed.stderr}`.trim().replaceAll('\n', '\n    ')}`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const shipped = (await entriesOf(target)).filter((name) => name.startsWith('extension/')).map((name) => plain(name.slice('extension/'.length)));
  const size = statSync(target).size;
  const results = checks(shipped, size);
  for (const [name, wrong] of results) console.log(wrong.length === 0 ? `  ✔ ${name}` : `  ✘ ${name}: ${wrong.join(', ')}`);
  console.log(`evenwater-${version}.vsix: ${shipped.length} files, ${(size / 1e6).toFixed(2)} MB`);
  const failed = results.filter(([, wrong]) => wrong.length > 0).length;
  return { passed: results.length - failed, failed, skipped: 0 };
}

const { passed, failed, skipped } = await makePackage();
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exit(failed > 0 ? 1 : 0);
