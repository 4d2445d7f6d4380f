// Why each point of the design check matters, in German. The English stands with the codes in src/problems/codes/design.ts.
import type { designCodes } from '../../problems/codes/design.ts';

export const designReasons: Readonly<Record<keyof typeof designCodes, string>> = {
  'no-control': 'Ohne ein Becken, das bis auf die Behandlung gleich ist, ändern sich Wetter, Licht und Tageszeit mit, und niemand kann sagen, was davon es war.',
  'one-tank-per-role': 'Wiederholte Messungen in einem Becken sind keine weiteren Becken: Was sich sonst zwischen den beiden unterscheidet, gesehen oder nicht, ist mit der Behandlung vermengt (Hurlbert 1984).',
  'tanks-differ-undeclared': 'Was sich außer der Behandlung unterscheidet, ist eine andere Erklärung des Ergebnisses.',
  'tanks-differ-in-readings': 'Becken, die vor der Behandlung auseinanderlagen, hätten auch ohne sie weiter auseinandergelegen. Wärmeres Wasser hält weniger Sauerstoff, und alles darin lebt schneller.',
  'event-in-one-tank': 'Was mitten im Versuch nur auf einer Seite geschieht, lässt sich hinterher nicht von der Behandlung unterscheiden.',
  'common-step': 'Zwei Becken springen selten im selben Augenblick gleich; eine bewegte, abgewischte oder kalibrierte Sonde oder eine umgerührte Probe bewirkt es in beiden. Eine Änderung über diesen Augenblick hinweg enthält den Sprung.',
  'same-tank-first': 'Eine Sonde, die immer aus demselben Becken kommt, trägt ein wenig von dessen Wert mit, und das zuletzt abgelesene Becken wird immer später abgelesen. Eine wechselnde Reihenfolge macht Streuung daraus.',
  'few-readings-before-lights-off': 'An den Messwerten vor dem Ausschalten des Lichts wird die Nacht gemessen. Aus einem oder zweien lässt sich Gleichstand nicht von Drift unterscheiden.',
  'run-ends-early': 'Der tiefste Sauerstoffgehalt der Nacht kommt kurz vor dem Licht: Ein Versuch, der im Dunkeln endet, sieht weder den tiefsten Wert noch die Erholung.',
  'interval-too-coarse': 'Zwei Messwerte geben eine Gerade durch jede Kurve. Eine Phase braucht mindestens drei, sonst bleibt ungesehen, was in ihr geschieht.',
  'interval-coarse-for-rate': 'Zwischen zwei Ablesungen kann das Wasser seinen tiefsten Punkt durchlaufen und zurückkehren. Der Abstand entscheidet, wie viel von der Wirkung sich dort verbergen kann.',
  'effect-below-instrument': 'Ein Unterschied, den das Messgerät nicht zeigen kann, bleibt ungesehen, wie sorgfältig es auch abgelesen wird. Eine größere Wirkung erwarten, ein feineres Messgerät nehmen oder Messungen wiederholen.',
  'instrument-without-accuracy': 'Ohne die Genauigkeit, die der Hersteller angibt, hat keine Zahl dieses Messgeräts eine Unsicherheit, und niemand kann sagen, welche Unterschiede echt sind.',
  'calibration-old': 'Sonden driften. Die vom Hersteller angegebene Genauigkeit gilt für eine frische Kalibrierung. Dreißig Tage sind übliche Praxis, ohne Quelle.',
  'pressure-level-missing': 'Wetterberichte geben den auf Meereshöhe umgerechneten Druck; das Wasser spürt den Druck des Ortes. In 500 m Höhe unterscheiden sich beide um etwa 60 hPa, und die Sauerstoffsättigung mit ihnen.',
  'equalise-without-condition': 'Ein Schritt mit einer Bedingung wird an den Messwerten geprüft; einer mit dem Vermerk, wann er geschah, lässt sich wenigstens zeigen. Ein Schritt ohne beides ist ein guter Vorsatz.',
  'animals-without-stop-rule': 'Die Tiere gehen vor. Um vier Uhr morgens, müde und neugierig, entscheidet niemand gut: Der Plan entscheidet vorher, wann Schluss ist und was dann zu tun ist.',
  'limit-while-asleep': 'Eine Regel hilft nur, solange jemand hinsieht. Einen Wecker stellen, einen Datenlogger wachen lassen oder nachts öfter ablesen.',
  'plan-changed-after-seal': 'Ein versiegelter Plan sagt, was vor der ersten Ablesung beschlossen war. Spätere Änderungen können gute Gründe haben; die Methoden teilen sie mit.',
  'repeat-changed': 'Eine Wiederholung, die mehr als die Daten ändert, wiederholt nur den Rest. Die Methoden sagen, was geändert wurde.',
};
