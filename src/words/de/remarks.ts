// German sentences for remarks in the working of a formula. Digits arrive with a point and are written with a comma.
import type { RemarkCode } from '../en/remarks.ts';
import type { WorkingRemark } from '../remarks.ts';

type Arguments = WorkingRemark['args'];
const text = (args: Arguments, name: string): string => String(args[name] ?? '').replace(/(\d)\.(?=\d)/gu, '$1,');
const count = (args: Arguments, one: string, many: string): string => (Number(args['count']) === 1 ? one : `${text(args, 'count')} ${many}`);

export const remarkSentences: Readonly<Record<RemarkCode, (args: Arguments) => string>> = {
  'nearest-reading': (args) => `Kein Messwert von ${text(args, 'name')} um ${text(args, 'wanted')}; der nächste innerhalb, um ${text(args, 'found')}, wurde genommen.`,
  tie: (args) => `${count(args, 'Ein Wert ist', 'Werte sind')} gleich; der erste, um ${text(args, 'time')}, wurde genommen.`,
  interpolated: (args) => `Abgelesen auf der Geraden zwischen den Messwerten um ${text(args, 'from')} und ${text(args, 'to')}.`,
  'first-true': (args) => `Zuerst wahr um ${text(args, 'time')}.`,
  'first-false': (args) => `Zuerst nicht wahr um ${text(args, 'time')}.`,
  'readings-checked': (args) => `Geprüft an ${count(args, 'einem Messwert', 'Messwerten')}.`,
  stretch: (args) => `Zwischen den Messwerten um ${text(args, 'from')} und ${text(args, 'to')}.`,
  'least-squares': (args) => `Ausgleichsgerade durch ${count(args, 'einen Messwert', 'Messwerte')}.`,
  'steps-missing': (args) => `${count(args, 'Ein Schritt hat', 'Schritte haben')} keinen Wert, weil ein Messwert fehlt.`,
  gap: (args) => `Zwischen ${text(args, 'from')} und ${text(args, 'to')} fehlen Messwerte.`,
  'straight-lines': (args) => `${count(args, 'Ein Messwert', 'Messwerte')}, durch Geraden verbunden.`,
  'half-width': (args) => `Halbe Breite des 95-%-Intervalls: ${text(args, 'value')}.`,
  'night-fit': (args) => `Angepasst an ${count(args, 'einen Messwert', 'Messwerte')}: Austausch ${text(args, 'exchange')} /h (95 %: ${text(args, 'low')} bis ${text(args, 'high')}), Atmung ${text(args, 'respiration')} mg/L/h, Korrelation der beiden ${text(args, 'correlation')}, Streuung ${text(args, 'scatter')} mg/L.`,
  'night-joint': (args) => `Beide zusammen bei 95 %: Austausch ${text(args, 'exchangeLow')} bis ${text(args, 'exchangeHigh')} /h mit Atmung ${text(args, 'respirationLow')} bis ${text(args, 'respirationHigh')} mg/L/h; der Nettoverlust beim mittleren Sättigungsdefizit von ${text(args, 'deficit')} mg/L ist besser bekannt: ${text(args, 'net')} ± ${text(args, 'half')} mg/L/h.`,
  'scatter-follows': (args) => `Die Streuung um die angepasste Nacht folgt vielleicht so eng ihren Nachbarn (glaubhafteste Korrelation ${text(args, 'correlation')}), dass das Intervall seltener als in 95 % der Fälle trifft.`,
  'time-interval': (args) => `95-%-Intervall ${text(args, 'low')} bis ${text(args, 'high')}.`,
  'time-open': (args) => `95-%-Intervall ab ${text(args, 'low')}; dass die Höhe nie erreicht wird, lässt sich nicht ausschließen.`,
  'scatter-alone': () => 'Das Intervall zählt allein die Streuung: Ohne angegebene Genauigkeit ist die der Messgeräte nicht bekannt.',
  'balance-open': () => 'Kein 95-%-Intervall: Mit anderen Messwerten gleicher Streuung zeigte sich der Kompensationspunkt vielleicht nicht.',
  'what-if': (args) => `Eine Vorhersage, kein Messwert: Dunkelheit von ${text(args, 'dark')}, ${text(args, 'exchange') === '1' ? 'Austausch wie angepasst' : `Austausch ${text(args, 'exchange')}-mal so stark`}, ${text(args, 'stocking') === '1' ? 'Atmung wie angepasst' : `Atmung ${text(args, 'stocking')}-mal so groß`}. Sie setzt voraus, dass alle Tiere, Pflanzen und Bakterien weitermachen wie in der angepassten Nacht.`,
  'beyond-fit': (args) => `Die Vorhersage reicht ${text(args, 'beyond')} über den letzten angepassten Messwert hinaus, mit Temperatur und Druck wie zuletzt.`,
  extrapolated: () => 'Eine Vorhersage aus der angepassten Nacht, als ginge sie gleich weiter.',
  serial: (args) => `95-%-Intervall ${text(args, 'value')}; darin zählt mit, wie eng die Messwerte aufeinander folgen (${text(args, 'correlation')} von einem zum nächsten).`,
  'one-tank-a-side': () => 'Ein Becken je Seite: Diese beiden Becken unterscheiden sich so; was die Behandlung tut, müssen weitere Becken zeigen.',
  'tanks-as-units': (args) => `Jedes Becken zählt einmal: ${text(args, 'treatment')} gegen ${text(args, 'control')} Becken; das kleinste p, das ein exakter Test dieses Plans erreichen kann, ist ${text(args, 'smallest')}.`,
  'tanks-as-units-p': (args) => `Jedes Becken zählt einmal: ${text(args, 'treatment')} gegen ${text(args, 'control')} Becken. Exaktes Permutations-p ${text(args, 'p')}; das kleinste, das dieser Plan erreichen kann, ist ${text(args, 'smallest')}.`,
  'nearly-random-walk': () => 'Die Messwerte folgen vielleicht so eng aufeinander, dass das Intervall seltener als in 95 % der Fälle trifft.',
  'few-for-serial': (args) => `Bei nur ${count(args, 'einem Messwert', 'Messwerten')} kann verborgen bleiben, dass die Messwerte eng aufeinander folgen; das Intervall wäre dann zu schmal, und andernfalls ist es etwas zu breit.`,
  'median-slope': (args) => `Median von ${text(args, 'count')} Steigungen zwischen zwei Messwerten; 95-%-Intervall ${text(args, 'low')} bis ${text(args, 'high')}, die Messwerte als unabhängig genommen.`,
  'median-slope-alone': (args) => `Median von ${text(args, 'count')} Steigungen zwischen zwei Messwerten; zu wenige für ein Intervall.`,
  'gap-parts': (args) => `Von ${text(args, 'difference')} mg/L (Mittel aus ${count(args, 'einer Zeile', 'Zeilen')}): Temperatur ${text(args, 'temperature')}, Druck ${text(args, 'pressure')}, Salzgehalt ${text(args, 'salinity')}, übrig ${text(args, 'left')} mg/L.`,
  'ammonia-saline': () => 'In Salzwasser, mit der Ammoniumkonstante von Meerwasser (Khoo, Culberson und Bates 1977), für einen pH-Wert, wie ihn eine in gewöhnlichen Puffern eingestellte Elektrode zeigt; ein pH-Wert auf der Gesamtskala der Meereskunde ergäbe hier etwa ein Viertel zu wenig.',
  'carbon-dioxide-rule': (args) => `Um ${text(args, 'time')} gäbe die Faustregel des Handels, 3 · KH · 10^(7 − pH), hinter der keine veröffentlichte Gleichung steht, ${text(args, 'rule')} statt ${text(args, 'value')} mg/L, ${text(args, 'low')} % weniger: Bei ${text(args, 'temperature')} °C hat das Gleichgewicht ${text(args, 'coefficient')}, wo die Regel 3 hat.`,
  'fresh-water': () => 'Kein Salzgehalt angegeben oder gemessen: für Süßwasser berechnet.',
  'pressure-as-read': () => 'Luftdruck wie am Ort abgelesen.',
  'pressure-from-sea-level': (args) => `Luftdruck von Meereshöhe auf ${text(args, 'elevation')} m umgerechnet, nach der Standardatmosphäre.`,
  'saturation-local-pressure': () => 'Sättigung beim Luftdruck des Ortes (Benson und Krause 1984).',
  'saturation-given-pressure': () => 'Sättigung beim Druck in der Formel (Benson und Krause 1984).',
  'salinity-from-conductivity': () => 'Salzgehalt aus Leitfähigkeit und Temperatur (PSS-78).',
  'salinity-from-specific-gravity': (args) => `Salzgehalt aus der relativen Dichte gegen reines Wasser von ${text(args, 'reference')} °C (EOS-80), ohne Korrektur für das Glas.`,
  'salinity-from-specific-conductance': () => 'Salzgehalt aus der Leitfähigkeit bei 25 °C (Schemel 2001).',
};
