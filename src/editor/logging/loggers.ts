// Regular loggers, remembered in the settings as named column maps: what was chosen once for a file of theirs is proposed again.
import type { ImportChoices, ImportProposal } from '../../edits/importTable.ts';

export interface Logger { readonly columns: Readonly<Record<string, string>>; readonly timeZone?: string; readonly dateOrder?: string; readonly decimal?: string; readonly delimiter?: string }

/** The setting, as far as it can be read: a name a logger. */
export function readLoggers(setting: unknown): ReadonlyMap<string, Logger> {
  const loggers = new Map<string, Logger>();
  if (typeof setting !== 'object' || setting === null) return loggers;
  for (const [name, value] of Object.entries(setting as Record<string, unknown>)) {
    const { columns, ...rest } = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>;
    if (typeof columns !== 'object' || columns === null) continue;
    const texts = Object.fromEntries(Object.entries(columns).filter((each): each is [string, string] => typeof each[1] === 'string'));
    const more = Object.fromEntries(['timeZone', 'dateOrder', 'decimal', 'delimiter'].flatMap((key) => (typeof rest[key] === 'string' ? [[key, rest[key]]] : [])));
    if (Object.keys(texts).length > 0) loggers.set(name, { columns: texts, ...more });
  }
  return loggers;
}

/** The logger whose columns are all in the file; the one with the most of them. */
export function loggerFor(names: readonly string[], loggers: ReadonlyMap<string, Logger>): { name: string; logger: Logger } | null {
  const parts = (from: string): string[] => (names.includes(from) ? [from] : from.split(' + '));
  const fitting = [...loggers].filter(([, logger]) => Object.keys(logger.columns).every((from) => parts(from).every((part) => names.includes(part))));
  const best = fitting.sort(([, a], [, b]) => Object.keys(b.columns).length - Object.keys(a.columns).length)[0];
  return best ? { name: best[0], logger: best[1] } : null;
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
