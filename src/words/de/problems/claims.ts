// German sentences for the problems of src/claims.
import type { claimsCodes } from '../../../problems/codes/claims.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { text, type Sentences } from '../../sentences.ts';
import { phrase, quantity, tanks } from '../arguments.ts';

/** What the ± of a value comes from: the instruments, scatter, or both. */
function intervalWords(args: MessageArguments): string {
  const by = text(args, 'by');
  if (by === 'scatter') return 'die die Streuung offenlässt (95 %)';
  return by === 'both' ? 'die Streuung und Messgeräte zusammen offenlassen (95 %)' : 'die die Messgeräte hier auflösen';
}

export const claimsSentences: Sentences<keyof typeof claimsCodes> = {
  'claim-mismatch': (args) => {
    const found = `Im Text steht ${text(args, 'shown')}, aber \`${text(args, 'formula')}\` ergibt ${text(args, 'value')}`;
    if (text(args, 'sign') !== 'negative') return `${found}.`;
    const instead = text(args, 'instead');
    return `${found}, also weniger als null: das Minus schreiben oder ${instead === '' ? 'die Formel umdrehen' : `\`${instead}\` verwenden`}.`;
  },
  'claim-unfilled': (args) => `Diese Zahl ist noch nicht ausgefüllt; \`${text(args, 'formula')}\` ergibt ${text(args, 'value')}.`,
  'statement-false': (args) => {
    const because = text(args, 'because');
    return `„${text(args, 'words')}“ trifft nicht zu: \`${text(args, 'condition')}\` ist nicht wahr${because === '' ? '' : `, denn ${because} gilt nicht`}.`;
  },
  'statement-not-truth': (args) => `\`${text(args, 'formula')}\` ergibt ${text(args, 'value')}, was keine Bedingung ist; nach „if“ mit etwas vergleichen, oder mit „=“ belegen.`,
  'claim-needs-if': (args) => `\`${text(args, 'formula')}\` ist wahr oder nicht wahr; die Wörter davor brauchen „if“ statt „=“.`,
  'claim-no-number': (args) => `In diesen Wörtern steht keine Zahl, die den Wert der Formel (${text(args, 'value')}) nennen könnte; die Zahl hineinschreiben.`,
  'claim-unit-differs': (args) => `${text(args, 'shown')} lässt sich nicht mit der Formel vergleichen, die ${text(args, 'value')} ergibt; eine gemeinsame Einheit verwenden oder die Formel berichtigen.`,
  'claim-percent-points': (args) => `${text(args, 'shown')} ist eine Prozentangabe, aber die Formel ergibt Prozentpunkte (${text(args, 'value')}); „Prozentpunkte“ oder „pp“ schreiben.`,
  'claim-number-unclear': (args) => {
    const suggestion = text(args, 'suggestion');
    return `„${text(args, 'text')}“ ist nicht eindeutig; ${suggestion === '' ? 'mit nur einem Dezimalzeichen schreiben' : `ist ein Dezimalbruch gemeint, ${suggestion} schreiben`}.`;
  },
  'claim-without-unit': (args) => `${text(args, 'shown')} hat keine Einheit und wurde in ${text(args, 'unit')} verglichen; die Einheit ergänzen, wenn kein Tabellenkopf sie nennt.`,
  'claim-uncertainty-unknown': (args) => `Das ± lässt sich nicht prüfen: Für ein Messgerät hinter \`${text(args, 'formula')}\` ist keine Genauigkeit angegeben; unter „measure“ angeben oder das ± weglassen.`,
  'claim-source-missing': () => 'Eine übernommene Zahl braucht ihre Quelle in Anführungszeichen: `= stated "woher sie stammt"`.',
  'stated-measured': (args) => `${text(args, 'shown')} ist als übernommen angegeben, aber diese Notiz misst dieselbe Größe (${quantity(args, 'quantity')}); stammt die Zahl aus den Messwerten, eine Formel verwenden.`,
  'below-resolution': (args) => `${text(args, 'value')} liegt unter den ±${text(args, 'halfWidth')}, ${intervalWords(args)}; keinen Schluss darauf bauen.`,
  'windows-differ': (args) => `Die beiden Seiten stützen sich auf verschiedene Messwerte (${phrase(args, 'left')} gegen ${phrase(args, 'right')}); über denselben Zeitraum vergleichen.`,
  'event-in-window': (args) => `„${text(args, 'event')}“ um ${text(args, 'time')} fällt in diesen Zeitraum und betrifft nur: ${tanks(args, 'tanks')}; das dazusagen oder einen Zeitraum ohne dieses Ereignis wählen.`,
  'formula-of-numbers': (args) => `\`${text(args, 'formula')}\` besteht nur aus eingetippten Zahlen und prüft nichts aus der Notiz; den Messwert nennen oder die Zahl mit ihrer Quelle als übernommen kennzeichnen.`,
  'rounded-coarsely': (args) => `${text(args, 'shown')} ist so grob gerundet, dass es etwas anderes sagt als ${text(args, 'value')}; eine Stelle mehr zeigen.`,
  'direction-differs': (args) => `„${text(args, 'word')}“ sagt das Gegenteil der Formel: \`${text(args, 'formula')}\` ergibt ${text(args, 'value')}; das Wort, das Vorzeichen oder die Formel ändern.`,
  'other-tank-named': (args) => `Im Text steht „${text(args, 'named')}“, aber \`${text(args, 'formula')}\` nimmt die Messwerte von „${text(args, 'used')}“; das gemessene Becken nennen oder die Formel ändern.`,
  'causal-wording': (args) => `„${text(args, 'word')}“ nennt eine Ursache, aber ${phrase(args, 'reason')}; schreiben, was zu sehen war, oder die andere Erklärung nennen.`,
  'loose-number': (args) => `${text(args, 'text')} steht ohne Formel und wird nicht geprüft; die Formel suchen lassen oder die Zahl als übernommen kennzeichnen.`,
};
