// Regular loggers, remembered in the settings as named column maps: what was chosen once for a file of theirs is proposed again.
import * as z from 'zod/mini';
import type { ImportChoices, ImportProposal } from '../../edits/importProposal.ts';

const text = z.string();
/** One remembered logger, as the settings hold it: what is not text is passed over, not refused. */
const loggerSetting = z.object({
  columns: z.pipe(z.record(z.string(), z.unknown()), z.transform((columns) => Object.fromEntries(Object.entries(columns).filter((each): each is [string, string] => typeof each[1] === 'string')))),
  timeZone: z.catch(z.optional(text), undefined), dateOrder: z.catch(z.optional(text), undefined), decimal: z.catch(z.optional(text), undefined), delimiter: z.catch(z.optional(text), undefined),
});

export type Logger = Readonly<z.infer<typeof loggerSetting>>;
/** By name. */
export type Loggers = ReadonlyMap<string, Logger>;

/** The setting, as far as it can be read: a name a logger. */
export function readLoggers(setting: unknown): Loggers {
  const named = z.record(z.string(), z.unknown()).safeParse(setting);
  return new Map(Object.entries(named.data ?? {}).flatMap(([name, value]): [string, Logger][] => {
    const logger = loggerSetting.safeParse(value).data;
    return logger && Object.keys(logger.columns).length > 0 ? [[name, logger]] : [];
  }));
}

/** The loggers whose columns are all in the file, the one with the most of them first. */
export function fittingLoggers(names: readonly string[], loggers: Loggers): { name: string; logger: Logger }[] {
  const parts = (from: string): string[] => (names.includes(from) ? [from] : from.split(' + '));
  const fitting = [...loggers].filter(([, logger]) => Object.keys(logger.columns).every((from) => parts(from).every((part) => names.includes(part))));
  return fitting.sort(([, a], [, b]) => Object.keys(b.columns).length - Object.keys(a.columns).length).map(([name, logger]) => ({ name, logger }));
}

export function choicesOf(logger: Logger): ImportChoices {
  const { dateOrder, decimal, delimiter, timeZone } = logger;
  return {
    columns: Object.entries(logger.columns).map(([from, to]) => ({ from, to })),
    ...(timeZone ? { timeZone } : {}),
    ...(dateOrder === 'day-month-year' || dateOrder === 'month-day-year' || dateOrder === 'year-month-day' ? { dateOrder } : {}),
    ...(decimal === '.' || decimal === ',' ? { decimal } : {}),
    ...(delimiter === 'comma' || delimiter === 'semicolon' || delimiter === 'tab' || delimiter === 'bar' || delimiter === 'space' ? { delimiter } : {}),
  };
}

/** What the settings remember of an import. */
export function loggerOf(proposal: ImportProposal): Logger {
  return {
    columns: Object.fromEntries(proposal.columns.flatMap((column) => (column.to === null ? [] : [[column.from, column.to]]))),
    ...(proposal.offsets ? {} : { timeZone: proposal.timeZone }),
    ...(proposal.dateOrder ? { dateOrder: proposal.dateOrder } : {}), ...(proposal.decimal ? { decimal: proposal.decimal } : {}), delimiter: proposal.delimiter,
  };
}
