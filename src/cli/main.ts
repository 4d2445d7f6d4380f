// The command line's way in: finds the command, reads its options, turns what happens into an exit code.
import { parseArgs } from 'node:util';
import { commandHelp, commandSentence } from '../words/commandLine.ts';
import { languages, type Language } from '../words/languages.ts';
import { exit, printJson, Told, wrongUse, type Command, type Invocation, type OptionValues, type Output } from './command.ts';
import { ask } from './commands/ask.ts';
import { check } from './commands/check.ts';
import { find } from './commands/find.ts';
import { format } from './commands/format.ts';
import { log } from './commands/log.ts';
import { newCommand } from './commands/new.ts';
import { extract } from './commands/extract.ts';
import { publish } from './commands/publish.ts';
import { seal } from './commands/seal.ts';
import { recheck } from './commands/recheck.ts';

declare const EVENWATER_VERSION: string | undefined;
export const version = typeof EVENWATER_VERSION === 'string' ? EVENWATER_VERSION : 'development';

export const commands: readonly Command[] = [newCommand, log, check, find, ask, publish, recheck, extract, format, seal];

function usage(language: Language): string {
  const { usageHead, about, call, more, commands: helps } = commandHelp(language);
  const calls = commands.map(({ name }) => `${name} ${helps[name].usage}`);
  const width = Math.max(...calls.map((each) => each.length));
  const lines = commands.map(({ name }, index) => `  ${calls[index]!.padEnd(width)}  ${helps[name].summary}`);
  return [about, '', `${usageHead}: ${call}`, '', ...lines, '', ...more(languages)].join('\n');
}

function helpOn({ name, listed }: Command, language: Language): string {
  const { usageHead, commands: helps } = commandHelp(language);
  const { usage: call, summary, lines } = helps[name];
  return [`${usageHead}: evenwater ${name} ${call} [--json] [--language ${languages.join('|')}]`, '', summary, '', ...lines, ...(listed ? ['', ...listed(language)] : [])].join('\n');
}

/** Runs one command line. Never throws: wrong use is exit 2, with its words on stderr or as JSON on stdout. */
export async function main(args: readonly string[], output: Output): Promise<number> {
  const json = args.includes('--json');
  // Known before anything else is read, so that wrong use is told in it, too.
  const asked = languageOption(args);
  const language = json ? 'en' : languages.find((each) => each === asked) ?? 'en';
  try {
    if (asked !== undefined && !languages.some((each) => each === asked)) throw wrongUse('no-language', { language: asked, known: languages });
    return await runCommand(args.filter((each) => each !== '--json'), { json, output, language });
  } catch (error) {
    const message = error instanceof Told ? error.say(language) : commandSentence('went-wrong', { error: error instanceof Error ? error.stack ?? error.message : String(error) }, language);
    if (json) printJson(output, { error: { message } }); else output.progress(message);
    return exit.wrongUse;
  }
}

interface Speaking { readonly json: boolean; readonly output: Output; readonly language: Language }

async function runCommand(args: readonly string[], { json, output, language }: Speaking): Promise<number> {
  const [name, ...rest] = withoutLanguageInFront(args);
  const names = commands.map((each) => each.name).join(', ');
  if (name === undefined) throw wrongUse('which-command', { commands: names });
  if (name === '--help' || name === '-h' || name === 'help') { output.result(usage(language)); return exit.well; }
  if (name === '--version') { output.result(version); return exit.well; }
  const command = commands.find((each) => each.name === name);
  if (!command) throw name.startsWith('-') ? wrongUse('no-option', { option: name }) : wrongUse('no-command', { command: name, commands: names });
  const { values, positionals } = readOptions(command, rest);
  if (values.help === true) { output.result(helpOn(command, language)); return exit.well; }
  const say: Invocation['say'] = (code, told = {}) => commandSentence(code, told, language);
  return command.run({ positionals, options: values, json, output, version, language, say });
}

/** What stands behind `--language`, wherever it is. */
function languageOption(args: readonly string[]): string | undefined {
  const at = args.findIndex((each) => each === '--language' || each.startsWith('--language='));
  if (at < 0) return undefined;
  return args[at]!.startsWith('--language=') ? args[at]!.slice('--language='.length) : args[at + 1] ?? '';
}

/** `evenwater --language de check …` reads as `evenwater check … --language de`. */
function withoutLanguageInFront(args: readonly string[]): readonly string[] {
  if (args[0]?.startsWith('--language=')) return args.slice(1);
  return args[0] === '--language' ? args.slice(2) : args;
}

function readOptions(command: Command, args: string[]): { values: OptionValues; positionals: string[] } {
  try {
    // A negative number is a value, not an option.
    const marked = args.map((each) => (/^-[.\d]/u.test(each) ? `\0${each}` : each));
    const options = { ...command.options, language: { type: 'string' as const }, help: { type: 'boolean' as const, short: 'h' } };
    const { values, positionals } = parseArgs({ args: marked, options, allowPositionals: true, strict: true });
    const unmarked = (value: OptionValues[string]): OptionValues[string] => (typeof value === 'string' ? value.replace(/^\0/u, '') : value);
    return { values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, unmarked(value)])), positionals: positionals.map((each) => each.replace(/^\0/u, '')) };
  } catch (error) {
    const reason = error instanceof Error ? error.message.split('. ')[0]! : String(error);
    throw wrongUse('options-unreadable', { reason, option: /'([^' ]+)/u.exec(reason)?.[1] ?? '', command: command.name });
  }
}
