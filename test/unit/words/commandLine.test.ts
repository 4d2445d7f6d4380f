// The command line in German: every sentence and every line of help, and nothing else when it runs.
import { deepEqual, equal, match, ok } from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { commands, main } from '../../../src/cli/main.ts';
import { commandHelp, commandSentence, type CommandSentence } from '../../../src/words/commandLine.ts';
import { commandSentences } from '../../../src/words/en/commandLine.ts';
import { languages } from '../../../src/words/languages.ts';
import { asked, isGerman, shownIn } from './isGerman.ts';

const sample = path.resolve('samples/naechtlicher-ausstroemer.tank.md');

/** Sentences that are names, marks and arguments alone, and the one whose reason is the runtime's own English. */
const alike = new Set<CommandSentence>(['option-wrong', 'fault-in-post', 'warning-of']);
const runtime: CommandSentence = 'options-unreadable';

async function run(...args: string[]): Promise<{ code: number; out: string; progress: string }> {
  const out: string[] = [];
  const progress: string[] = [];
  const code = await main(args, { result: (text) => { out.push(text); }, progress: (text) => { progress.push(text); }, colours: false });
  return { code, out: out.join('\n'), progress: progress.join('\n') };
}

/** Names of commands, options and files in a line of help. */
const names = /--[\w-]+|\bevenwater \w+|[\w*]+\.tank\.md|<Stamm>[\w.-]*|node_modules|\b(?:none|now|order|markdown|narration|data|plan|html|card|Data Package)\b|\(see [^)]*\)/gu;

suite('German: the command line', () => {
  for (const code of Object.keys(commandSentences) as CommandSentence[]) {
    test(code, () => {
      const args = asked(commandSentences[code]);
      const [german, english] = (['de', 'en'] as const).map((language) => commandSentence(code, args, language)) as [string, string];
      if (code !== runtime) deepEqual(shownIn(german), shownIn(english));
      if (alike.has(code)) equal(german, english);
      else isGerman(german.replaceAll(names, '…').replace(/: error /u, ': '), english);
    });
  }

  test('help: the same commands with the same options, a line for a line', () => {
    const [german, english] = [commandHelp('de').commands, commandHelp('en').commands];
    const options = (lines: readonly string[]): string[] => [...new Set(lines.join('\n').match(/--[\w-]+/g) ?? [])].sort();
    for (const { name } of commands) {
      deepEqual(options(german[name].lines), options(english[name].lines), name);
      deepEqual(german[name].lines.length, english[name].lines.length, name);
      for (const line of [german[name].summary, ...german[name].lines]) if (line !== '') isGerman(line.trim().replaceAll(names, '…').replaceAll(/ {2,}/gu, ' '), null);
    }
  });

  test('every command that declares an option names it in its help', () => {
    for (const language of languages) {
      for (const { name, options } of commands) for (const option of Object.keys(options)) {
        const { usage, lines } = commandHelp(language).commands[name];
        ok([usage, ...lines].join('\n').includes(`--${option}`), `${language}: ${name} --${option}`);
      }
    }
  });
});

suite('German: the command line at work', () => {
  let folder = '';
  let note = '';
  setup(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-cli-de-'));
    note = path.join(folder, 'nacht.tank.md');
    writeFileSync(note, `${readFileSync(sample, 'utf8')}\nAm Ende waren es {9,99 mg/L = last(ruhig1.DO)}, dazu 4,44 mg/L.\n`);
  });
  teardown(() => { rmSync(folder, { recursive: true, force: true }); });

  /** What a run says without the note's own numbers and paths, the codes in front of sentences and what stands in quotes. */
  const spoken = ({ out, progress }: { out: string; progress: string }): string[] => `${out}\n${progress}`.replaceAll(folder, '').split('\n')
    .map((line) => line.replace(/^\S*?:\d+:\d+: (?:(?:error|warning|information|hint) [a-z-]+: )?/u, '').replace(/^ *-?\d+\.\d\d {2}.*? {2}(?=ergibt )/u, '').trim()).filter((line) => line !== '');
  const isSpoken = (...[said]: Parameters<typeof spoken>): void => { for (const line of spoken(said)) isGerman(line.replaceAll(names, '…').replaceAll(/ {2,}/gu, ' '), null); };

  test('check, publish, find, ask, log, seal, recheck and extract say nothing in English', async () => {
    for (const args of [['check', note], ['find', note], ['ask', note, 'contrast(DO, dark)'], ['ask', note, 'min(ruhig9.DO)'], ['publish', note, '--to', folder], ['log', note], ['log', note, '7.1'],
      ['log', note, '--forget'], ['log', note, '--at', '25:00', '7.1'], ['seal', note, '--plan'], ['check', path.join(folder, 'keine.md')], ['nonsense'], [], ['check', '--nonsense'], ['publish', note],
      ['recheck', note], ['extract', note, '--to', folder]]) {
      const said = await run(...args, '--language', 'de');
      ok(spoken(said).length > 0, args.join(' '));
      isSpoken(said);
    }
    match((await run('check', note, '--language', 'de')).progress, /^1 Notiz geprüft: \d Fehler, \d+ Warnung(?:en)?\.$/u);
  });

  test('a row is refused, logged and told in German', async () => {
    const row = ['7.2', '25.6', '7.2', '25.7', '6.1', '25.7', '6.1', '25.7', '973'];
    const refused = await run('log', note, '--at', '2026-07-19T09:30', '72', ...row.slice(1), '--language=de');
    equal(refused.code, 1);
    match(refused.progress, /Nicht eingetragen: das Messgerät noch einmal ansehen/u);
    isSpoken(refused);
    const logged = await run('--language', 'de', 'log', note, '--at', '2026-07-19T09:30', ...row, '--anyway');
    equal(logged.code, 0, logged.progress);
    isSpoken({ out: '', progress: logged.progress });
  });

  test('a post is rechecked in German, and its JSON does not depend on the language', async () => {
    const made = await run('publish', sample, '--to', folder, '--language', 'de');
    equal(made.code, 0);
    const post = path.join(folder, 'naechtlicher-ausstroemer.html');
    const held = await run('recheck', post, '--language', 'de');
    match(held.progress, /\d+ Belege und \d+ berechnete Werte stimmen mit der enthaltenen Notiz und den Daten überein\.$/u);
    writeFileSync(post, readFileSync(post, 'utf8').replace('5,68', '5,86'));
    const broken = await run('recheck', post, '--language', 'de');
    equal(broken.code, 1);
    match(`${broken.out}\n${broken.progress}`, /error Abweichung \(Zahl\): im Beitrag steht „5,86.*“, die Notiz ergibt „5,68/u);
    equal((await run('recheck', post, '--json', '--language', 'de')).out, (await run('recheck', post, '--json')).out);
  });

  test('a language that is not there is wrong use, wherever it stands', async () => {
    for (const args of [['--language', 'xx', '--help'], ['check', note, '--language=xx'], ['ask', note, '1', '--language']]) {
      const said = await run(...args);
      equal(said.code, 2);
      match(said.progress, /There are no sentences in "(?:xx)?"; there are en and de\./u);
    }
  });
});
