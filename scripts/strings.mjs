// Writes l10n/bundle.l10n.json: every string of src/editor that a translator may put into another language.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './install.mjs';

const files = readdirSync(path.join(root, 'src/editor'), { withFileTypes: true, recursive: true }).filter((entry) => entry.isFile() && entry.name.endsWith('.ts'));
const found = files.flatMap((entry) => [...readFileSync(path.join(entry.parentPath, entry.name), 'utf8').matchAll(/l10n\.t\(\s*'((?:[^'\\]|\\.)*)'/g)]);
const strings = [...new Set(found.map((match) => match[1].replaceAll('\\\'', '\'')))].sort();
writeFileSync(path.join(root, 'l10n/bundle.l10n.json'), `${JSON.stringify(Object.fromEntries(strings.map((each) => [each, each])), null, 2)}\n`);
