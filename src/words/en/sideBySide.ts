// English sentences of the methods on instruments read side by side.
import { say, type Pieces } from '../pieces.ts';
import { counted } from './grammar.ts';

export const sideBySideWords = {
  compared: <V>(args: {
    what: string; instrument: string; other: string; count: number; start: string; startTime: string;
    end: { readonly offset: string; readonly time: string; readonly drift: string } | null; corrected: boolean;
  }): Pieces<V> => {
    const drift = args.end === null ? ', which says nothing of a drift' : ` and ${args.end.offset} at ${args.end.time}, a drift of ${args.end.drift}`;
    const taken = args.corrected ? 'Offset and drift were taken out of its readings in every formula; tables and figures show the readings as taken.' : 'Nothing was taken out of its readings.';
    return say`For ${args.what} the ${args.instrument} was read side by side with the ${args.other} ${counted(args.count, 'time')}: it read ${args.start} against it at ${args.startTime}${drift}. ${taken}`;
  },
};
