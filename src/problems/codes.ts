// The table of problem codes: the one place that knows each code's severity, arguments, reason and example.
import type { CodeEntry } from './codeEntry.ts';
import { noteCodes } from './codes/note.ts';
import { protocolCodes } from './codes/protocol.ts';
import { readingsCodes } from './codes/readings.ts';
import { formulaCodes } from './codes/formula.ts';
import { claimsCodes } from './codes/claims.ts';
import { designCodes } from './codes/design.ts';
import { experimentCodes } from './codes/experiment.ts';
import { writingCodes } from './codes/writing.ts';
import { chartsCodes } from './codes/charts.ts';

const table = {
  ...noteCodes, ...protocolCodes, ...readingsCodes, ...formulaCodes, ...claimsCodes, ...designCodes, ...experimentCodes,
  ...writingCodes, ...chartsCodes,
} as const;

export type ProblemCode = keyof typeof table;
export const problemCodes: Readonly<Record<ProblemCode, CodeEntry>> = table;
