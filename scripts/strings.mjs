// Writes l10n/bundle.l10n.json: every string of src/editor that a translator may put into another language. Then says which
// strings of the translations, of the editor and of the manifest, are missing or no longer used; exits 1 where one is.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './install.mjs';

const at = (file) => path.join(root, file);
const read = (file) => JSON.parse(readFileSync(at(file), 'utf8'));

const files = readdirSync(at('src/editor'), { withFileTypes: true, recursive: true }).filter((entry) => entry.isFile() && entry.name.endsWith('.ts'));
const found = files.flatMap((entry) => [...readFileSync(path.join(entry.parentPath, entry.name), 'utf8').matchAll(/l10n\.t\(\s*'((?:[^'\\]|\\.)*)'/g)]);
const strings = [...new Set(found.map((match) => match[1].replaceAll('\\\'', '\'')))].sort();
writeFileSync(at('l10n/bundle.l10n.json'), `${JSON.stringify(Object.fromEntries(strings.map((each) => [each, each])), null, 2)}\n`);

for (const language of ['de']) {
  for (const [file, keys] of [[`l10n/bundle.l10n.${language}.json`, strings], [`package.nls.${language}.json`, Object.keys(read('package.nls.json'))]]) {
    const translated = Object.keys(read(file));
    const lines = [...keys.filter((key) => !translated.includes(key)).map((key) => `missing: ${key}`), ...translated.filter((key) => !keys.includes(key)).map((key) => `no longer used: ${key}`)];
    for (const line of lines) console.log(`${file}: ${line}`);
    if (lines.length > 0) process.exitCode = 1;
  }
}
