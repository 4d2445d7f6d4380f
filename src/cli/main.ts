// The command line's way in: finds the command, reads its options, turns what happens into an exit code.
import { parseArgs } from 'node:util';
import { exit, printJson, WrongUse, type Command, type OptionValues, type Output } from './command.ts';
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

const usage = (): string => [
  'evenwater: aquarium experiment notes whose numbers cannot drift from the readings.',
  '',
  'Usage: evenwater COMMAND … [--json]',
  '',
  ...commands.map((each) => `  ${`${each.name} ${each.usage}`.padEnd(26)} ${each.summary}`),
  '',
  'evenwater COMMAND --help tells more. --version prints the version.',
].join('\n');

const commandHelp = (command: Command): string => [
  `Usage: evenwater ${command.name} ${command.usage} [--json]`, '', command.summary, '', ...command.help,
].join('\n');

/** Runs one command line. Never throws: wrong use is exit 2, with its words on stderr or as JSON on stdout. */
export async function main(args: readonly string[], output: Output): Promise<number> {
  const json = args.includes('--json');
  try {
    const [name, ...rest] = args.filter((each) => each !== '--json');
    if (name === undefined) throw new WrongUse(`Which command? There ${commands.length === 1 ? 'is' : 'are'} ${commands.map((each) => each.name).join(', ')}; evenwater --help tells more.`);
    if (name === '--help' || name === '-h' || name === 'help') { output.result(usage()); return exit.well; }
    if (name === '--version') { output.result(version); return exit.well; }
    const command = commands.find((each) => each.name === name);
    if (!command) throw new WrongUse(name.startsWith('-') ? `There is no option "${name}".` : `There is no command "${name}"; there are ${commands.map((each) => each.name).join(', ')}.`);
    const { values, positionals } = readOptions(command, rest);
    if (values.help === true) { output.result(commandHelp(command)); return exit.well; }
    return await command.run({ positionals, options: values, json, output, version });
  } catch (error) {
    const message = error instanceof WrongUse ? error.message : `Something went wrong inside evenwater: ${error instanceof Error ? error.stack ?? error.message : String(error)}`;
    if (json) printJson(output, { error: { message } }); else output.progress(message);
    return exit.wrongUse;
  }
}

function readOptions(command: Command, args: string[]): { values: OptionValues; positionals: string[] } {
  try {
    // A negative number is a value, not an option.
    const marked = args.map((each) => (/^-[.\d]/u.test(each) ? `\0${each}` : each));
    const { values, positionals } = parseArgs({ args: marked, options: { ...command.options, help: { type: 'boolean', short: 'h' } }, allowPositionals: true, strict: true });
    const unmarked = (value: OptionValues[string]): OptionValues[string] => (typeof value === 'string' ? value.replace(/^\0/u, '') : value);
    return { values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, unmarked(value)])), positionals: positionals.map((each) => each.replace(/^\0/u, '')) };
  } catch (error) {
    throw new WrongUse(`${error instanceof Error ? error.message.split('. ')[0] : String(error)}. See evenwater ${command.name} --help.`);
  }
}
