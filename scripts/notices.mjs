// The licences of what is bundled: every package that esbuild put into a file of the extension, with its licence text.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';

/** Folder of the package that a bundled file belongs to, or null for our own files. */
function packageFolder(file) {
  const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file);
  return found ? found[1] : null;
}

/** Folders of the packages in a build, from what esbuild reports of it: only those with bytes in the output count. */
export function bundledPackages(metafile) {
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.entries(output.inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0).map(([file]) => file));
  return [...new Set(inputs.map(packageFolder).filter((folder) => folder !== null))].sort();
}

function licenceText(folder) {
  const file = readdirSync(folder).find((name) => /^(?:licen[cs]e|copying)(?:\.(?:md|txt))?$/i.test(name));
  return file === undefined ? null : readFileSync(path.join(folder, file), 'utf8').trim();
}

/** One text with a section for each package. Throws where a package has neither a licence text nor the name of one. */
export function thirdPartyNotices(folders, root) {
  const sections = folders.map((each) => {
    const folder = path.join(root, each);
    const { name, version, license, author, repository } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
    const text = existsSync(folder) ? licenceText(folder) : null;
    if (text === null && !license) throw new Error(`${name} ${version} states no licence`);
    const writer = typeof author === 'string' ? author : author?.name;
    const source = typeof repository === 'string' ? repository : repository?.url;
    const facts = [license && `Licence: ${license}`, writer && `By: ${writer}`, source && `Source: ${source}`].filter(Boolean);
    return `${name} ${version}\n${facts.join('\n')}\n\n${text ?? `(The package carries no licence text; it states "${license}".)`}\n`;
  });
  return `Evenwater contains the following packages.\n\n${sections.map((section) => `${'-'.repeat(78)}\n${section}`).join('\n')}`;
}
