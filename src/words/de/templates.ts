// What the templates of a new note are called in German. The notes they write are English.
import type { TemplateWords } from '../templates.ts';

export const templateTitles: Readonly<Record<string, TemplateWords>> = {
  'overnight-oxygen': { title: 'Sauerstoff über Nacht', about: 'Wie tief fällt der Sauerstoff zwischen Licht aus und dem Morgen?' },
  'heater-failure': { title: 'Ausfall der Heizung', about: 'Wie schnell kühlt ein Becken ab, wenn seine Heizung ausfällt?' },
  nitrification: { title: 'Nitrifikation eines neuen Filters', about: 'Wie viele Tage, bis ein neuer Filter Ammonium und Nitrit aufnimmt?' },
  'carbon-dioxide': { title: 'Kohlendioxid und pH-Wert während einer Lichtphase', about: 'Wie weit heben Pflanzen den pH-Wert, solange die Lampe brennt?' },
  evaporation: { title: 'Verdunstung und Salzgehalt', about: 'Wie viel Wasser geht verloren, und wie weit steigt der Salzgehalt ohne Nachfüllen?' },
  behaviour: { title: 'Verhalten der Tiere auf einer Wortskala', about: 'Verhalten sich die Tiere anders, zu festen Zeiten in Worten beurteilt?' },
  blank: { title: 'Leer', about: 'Zwei Becken, eine Behandlung, eine eigene Frage.' },
};
