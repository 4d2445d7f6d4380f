// The few words that stand in a value as readers see it: truths, stretches of time, series.
import type { Language } from './languages.ts';

interface ValueWords {
  readonly truths: readonly [no: string, yes: string];
  readonly span: (from: string, to: string) => string;
  readonly noReadings: string;
  readonly andMore: (count: number) => string;
}

const tables: Readonly<Record<Language, ValueWords>> = {
  en: { truths: ['false', 'true'], span: (from, to) => `${from} to ${to}`, noReadings: 'no readings', andMore: (count) => `and ${count} more` },
  de: { truths: ['nicht wahr', 'wahr'], span: (from, to) => `${from} bis ${to}`, noReadings: 'keine Messwerte', andMore: (count) => `und ${count} weitere` },
};

export const valueWords = (language: Language): ValueWords => tables[language];
