// German sentences of the methods on instruments read side by side.
import type { sideBySideWords as english } from '../en/sideBySide.ts';
import { quoted } from './authors.ts';
import { times } from './grammar.ts';
import { atText } from './moments.ts';
import { accusative } from './names.ts';

export const sideBySideWords: typeof english = {
  compared: ({ what, instrument, other, count, start, startTime, end, corrected }) => {
    const drift = end === null ? ', was über eine Drift nichts sagt' : ` und ${atText(end.time)} um ${end.offset}, eine Drift von ${end.drift}`;
    const taken = corrected ? 'Abweichung und Drift sind in jeder Formel aus seinen Messwerten herausgerechnet; Tabellen und Abbildungen zeigen die Messwerte, wie sie abgelesen wurden.' : 'Aus seinen Messwerten wurde nichts herausgerechnet.';
    return [`Für ${accusative(what)} wurde das Messgerät ${quoted(instrument)} ${times(count)} neben dem Messgerät ${quoted(other)} abgelesen: Es wich von diesem ${atText(startTime)} um ${start} ab${drift}. ${taken}`];
  },
};
