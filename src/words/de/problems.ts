// All German problem sentences, gathered from the files of the rooms.
import type { ProblemCode } from '../../problems/codes.ts';
import type { Sentences } from '../sentences.ts';
import { noteSentences } from './problems/note.ts';
import { protocolSentences } from './problems/protocol.ts';
import { readingsSentences } from './problems/readings.ts';
import { formulaSentences } from './problems/formula.ts';
import { claimsSentences } from './problems/claims.ts';
import { designSentences } from './problems/design.ts';
import { experimentSentences } from './problems/experiment.ts';
import { writingSentences } from './problems/writing.ts';
import { chartsSentences } from './problems/charts.ts';

export const problemSentences: Sentences<ProblemCode> = {
  ...noteSentences, ...protocolSentences, ...readingsSentences, ...formulaSentences, ...claimsSentences, ...designSentences,
  ...experimentSentences, ...writingSentences, ...chartsSentences,
};
