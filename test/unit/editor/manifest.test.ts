// The manifest cannot drift: every command, setting and string exists and is used; every path is there or built.
import { deepEqual, ok } from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { sectionOf } from '../../../src/assist/reference.ts';
import { severityLevels } from '../../../src/assist/severity.ts';
import { problemCodes } from '../../../src/problems/codes.ts';

interface Manifest {
  readonly main: string; readonly browser: string; readonly l10n: string; readonly keywords: readonly string[];
  readonly categories: readonly string[]; readonly activationEvents: readonly string[];
  readonly engines: { readonly vscode: string }; readonly devDependencies: Readonly<Record<string, string>>;
  readonly capabilities: { readonly virtualWorkspaces: boolean; readonly untrustedWorkspaces: { readonly supported: unknown; readonly restrictedConfigurations: readonly string[] } };
  readonly contributes: {
    readonly commands: readonly { readonly command: string; readonly title: string; readonly category?: string }[];
    readonly menus: Readonly<Record<string, readonly { readonly command: string; readonly when?: string }[]>>;
    readonly configuration: { readonly properties: Readonly<Record<string, { readonly default: unknown; readonly markdownDescription: string; readonly scope: string }>> };
    readonly grammars: readonly { readonly path: string }[];
    readonly walkthroughs: readonly { readonly icon: string; readonly steps: readonly WalkthroughStep[] }[];
    readonly 'markdown.previewScripts': readonly string[]; readonly 'markdown.previewStyles': readonly string[];
  };
}

interface WalkthroughStep { readonly title: string; readonly description: string; readonly media: { readonly svg: string; readonly altText: string }; readonly completionEvents: readonly string[] }

const read = <T>(file: string) => JSON.parse(readFileSync(file, 'utf8')) as T;
const manifest = read<Manifest>('package.json');
const strings = read<Record<string, string>>('package.nls.json');
const sources = (folder: string): string[] => readdirSync(folder, { withFileTypes: true, recursive: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.ts')).map((entry) => readFileSync(path.join(entry.parentPath, entry.name), 'utf8'));
const editor = sources('src/editor').join('\n');
const { commands, menus, configuration, grammars } = manifest.contributes;

suite('manifest', () => {
  test('every command is registered, has a title of its own and is kept out of other files', () => {
    for (const { command, title, category } of commands) {
      ok(editor.includes(`registerCommand('${command}'`), `${command} is not registered`);
      ok(/^%.+%$/.test(title) && category === 'Evenwater', command);
      if (command === 'evenwater.newExperiment' || command === 'evenwater.openExample') continue; // they start from nothing
      const palette = menus.commandPalette?.find((entry) => entry.command === command);
      if (command === 'evenwater.goToProblem') { // it takes a place, which the menu of a problem in the preview hands in
        deepEqual([palette?.when, menus['webview/context']?.map((entry) => [entry.command, entry.when])], ['false', [[command, "webviewSection == 'evenwater-problem'"]]]);
        continue;
      }
      // A run goes on while its keeper looks at other files.
      ok(palette?.when?.includes(command === 'evenwater.endRun' ? 'evenwater.runIsOn' : 'evenwater.noteIsActive'), `${command} shows out of place`);
    }
    const registered = [...editor.matchAll(/registerCommand\('(evenwater\.[A-Za-z.]+)'/g)].map((match) => match[1]);
    deepEqual(registered.sort(), commands.map(({ command }) => command).sort());
    for (const entry of Object.values(menus).flat()) ok(commands.some(({ command }) => command === entry.command), entry.command);
    const asked = [...new Set([...JSON.stringify(menus).matchAll(/evenwater\.(?:note|run)[A-Z]\w*/g)].map((match) => match[0]))];
    ok(asked.length > 1);
    for (const key of asked) ok(editor.includes(`'${key}'`), `nobody sets ${key}`);
  });

  test('every setting is read, described, and has its default in one place', () => {
    const used = [...editor.matchAll(/getConfiguration\('evenwater'[^)]*\)\.get<[a-z]+>\('([A-Za-z.]+)', ([^)]+)\)/g)];
    deepEqual([...new Set(used.map((match) => `evenwater.${match[1]}`))].sort(), Object.keys(configuration.properties).sort());
    for (const [, key, fallback] of used) {
      const declared = configuration.properties[`evenwater.${key}`]!;
      deepEqual(fallback, typeof declared.default === 'string' ? `'${declared.default}'` : String(declared.default), key);
      ok(/^%.+%$/.test(declared.markdownDescription) && declared.scope === 'resource', key);
    }
    for (const key of manifest.capabilities.untrustedWorkspaces.restrictedConfigurations) ok(key in configuration.properties, key);
  });

  test('the setting for severities names every code and every level', () => {
    const severity = configuration.properties['evenwater.severity'] as unknown as { propertyNames: { enum: string[] }; additionalProperties: { enum: string[] } };
    deepEqual(severity.propertyNames.enum, Object.keys(problemCodes).sort(), 'run npm run reference');
    deepEqual(severity.additionalProperties.enum, [...severityLevels]);
  });

  test('every code of a problem has its place in the reference that the extension brings along', () => {
    const reference = readFileSync('docs/reference.md', 'utf8');
    for (const code of Object.keys(problemCodes)) ok(sectionOf(reference, code)?.startsWith(`# ${code}\n`), code);
    deepEqual(sectionOf(reference, 'no-such-code'), null);
  });

  test('every string of the manifest exists and is used', () => {
    const used = [...readFileSync('package.json', 'utf8').matchAll(/"%([^%"]+)%"/g)].map((match) => match[1]!);
    deepEqual([...new Set(used)].sort(), Object.keys(strings).sort());
  });

  test('every string of the editor stands in the bundle for translators, and no other', () => {
    const used = [...editor.matchAll(/l10n\.t\(\s*'((?:[^'\\]|\\.)*)'/g)].map((match) => match[1]!.replaceAll('\\\'', '\''));
    ok(used.length > 20);
    deepEqual([...editor.matchAll(/l10n\.t\(/g)].length, used.length, 'a string that is not a plain literal');
    const bundle = read<Record<string, string>>(path.join(manifest.l10n, 'bundle.l10n.json'));
    deepEqual(Object.keys(bundle).sort(), [...new Set(used)].sort());
    for (const [key, value] of Object.entries(bundle)) deepEqual(value, key);
  });

  test('the walkthrough has at most six steps, each with a picture in the theme\'s colours and a command that ends it', () => {
    for (const { icon, steps } of manifest.contributes.walkthroughs) {
      ok(existsSync(icon) && steps.length <= 6 && steps.length > 0);
      for (const { title, description, media, completionEvents } of steps) {
        const picture = readFileSync(media.svg, 'utf8');
        ok(picture.includes('var(--vscode-') && !/(?<!&)#[0-9a-f]{3,8}\b|https?:(?!\/\/www\.w3\.org\/2000\/svg)|<script/i.test(picture), media.svg);
        // Names of the note's language alone, for a picture has no language of its own.
        const words = [...picture.matchAll(/<text[^>]*>([^<]*)/g)].map((match) => match[1]!.replace(/&[#\w]+;|mg\/L|\b(?:time|DO|percent-fall|light-off)\b|\b(?:mat|open|room)\.(?:DO|T|P)\b/g, ' ')).join(' ');
        ok(!/\p{L}/u.test(words) && !picture.includes('aria-label'), `${media.svg}: ${words}`);
        ok([title, description, media.altText].every((each) => /^%.+%$/.test(each)));
        const command = /command:(evenwater\.\w+)\)$/.exec(strings[description.slice(1, -1)]!)?.[1];
        deepEqual(completionEvents, [`onCommand:${command}`]);
        ok(!strings[description.slice(1, -1)]!.includes('`'), `${description}: the walkthrough shows marks of code as they are`);
        ok(commands.some((each) => each.command === command), command);
      }
    }
  });

  test('it starts with Markdown files only, runs everywhere, and is limited without trust', () => {
    deepEqual(manifest.activationEvents, ['onLanguage:markdown']);
    deepEqual(manifest.capabilities.virtualWorkspaces, true);
    deepEqual(manifest.capabilities.untrustedWorkspaces.supported, 'limited');
    deepEqual(manifest.engines.vscode, `^${manifest.devDependencies['@types/vscode']}`, 'types newer than the oldest editor promised');
    ok(manifest.keywords.length <= 5);
  });

  test('the oldest editor that is promised is the one that the suites run in', () => {
    const { devDependencies } = read<Pick<Manifest, 'devDependencies'>>('workbench/package.json');
    deepEqual(/@4\.(\d+)\.\d+$/.exec(devDependencies['code-server-oldest']!)?.[1], /^\^1\.(\d+)\.0$/.exec(manifest.engines.vscode)?.[1]);
  });

  test('every path is there, or what the build makes', () => {
    for (const { path: file } of grammars) ok(existsSync(file), file);
    for (const file of manifest.contributes['markdown.previewStyles']) ok(existsSync(file), file);
    const builder = readFileSync('scripts/build.mjs', 'utf8');
    for (const file of [manifest.main, manifest.browser, ...manifest.contributes['markdown.previewScripts']]) ok(builder.includes(file.replace('./', '')), file);
  });

  test('nothing of the editor reports home', () => {
    ok(!/telemetry|fetch\(|XMLHttpRequest|https?:\/\//i.test(editor));
  });
});
