// German words of the plan card and of the printed plan.
import type { PlanCardWords } from '../en/planCard.ts';
import { counted, everyWords, listedText, tankName } from './grammar.ts';

const tankKeys: Readonly<Record<string, string>> = {
  size: 'Maße', 'water depth': 'Wassertiefe', volume: 'Volumen', 'running since': 'in Betrieb seit', plants: 'Pflanzen', animals: 'Tiere', equipment: 'Ausrüstung',
  salinity: 'Salzgehalt', role: 'Rolle', group: 'Gruppe', label: 'Name', facts: 'weitere Angaben',
};

/** `Dunkelphase 2`, `Phase „Fütterung“`. */
export function phaseName(id: string): string {
  const [, name, night] = /^(baseline|dark|recovery)(?:-(\d+))?$/u.exec(id) ?? [];
  const known = name === 'baseline' ? 'Ausgangsphase' : name === 'dark' ? 'Dunkelphase' : name === 'recovery' ? 'Erholung' : null;
  return known === null ? `Phase „${id}“` : night === undefined ? known : `${known} ${night}`;
}

export const planWords: PlanCardWords = {
  thePlan: 'Der Plan',
  plan: 'Plan',
  expected: 'Erwartet: ',
  directions: { north: 'N', south: 'S', east: 'O', west: 'W' },
  aboveSeaLevel: (height) => `${height} über dem Meer`,
  noDaylight: 'kein Tageslicht am Standort',
  headings: {
    tanks: 'Becken', schedule: 'Zeitplan', equalise: 'Vorher angeglichen', stop: 'Abbruch, wenn', instruments: 'Messgeräte', design: 'Prüfung des Plans', cautions: 'Sicherheit',
  },
  tankKey: (key) => tankKeys[key] ?? key,
  role: (role) => (role === 'treatment' ? 'Behandlung' : 'Vergleich'),
  group: (name) => `Gruppe ${name}`,
  waterVolume: 'Wasservolumen',
  asPlanned: '≠ wie geplant',
  notDeclared: '≠ nicht angegeben',
  differs: '≠ verschieden',
  sideBySide: 'Die Becken nebeneinander',
  differIn: (keys) => `Die Becken sollen sich nur hierin unterscheiden: ${listedText(keys.map((key) => tankKeys[key] ?? key))}.`,
  differUnsaid: 'Der Plan sagt nicht, worin sich die Becken unterscheiden sollen.',
  ofTanks: (labels) => listedText(labels.map(tankName)),

  equalise: {
    done: (how) => `✓ erledigt: ${how}`,
    alsoDone: (how) => `; erledigt: ${how}`,
    noCondition: 'keine Bedingung genannt',
    acceptedIf: 'Bedingung:',
    notChecked: '○ nicht geprüft: noch kein gepaarter Messwert; ',
    held: '✓ erfüllt',
    didNotHold: '✕ nicht erfüllt',
    atReadings: (count, first, last) => `bei ${counted(count, 'einem gepaarten Messwert', 'gepaarten Messwerten')}, ${first}${count > 1 ? ` bis ${last}` : ''}`,
    widest: (figure) => `; größter Wert ${figure}`,
  },

  stop: {
    if: 'Wenn',
    endTheRun: 'den Versuch beenden',
    crossed: (clock, later) => `✕ erreicht um ${clock} Uhr${later > 0 ? ` und bei ${counted(later, 'einem späteren Messwert', 'späteren Messwerten')}` : ''}`,
    notCrossed: '✓ bei keinem Messwert erreicht',
    noReadings: '○ noch keine Messwerte',
    outcome: (text) => `. Ausgang: ${text}`,
    alarm: 'HALT: eine Abbruchregel ist erreicht',
    wasCrossed: 'Eine Abbruchregel wurde erreicht',
    at: ({ clock, date, later }) => ` um ${clock} Uhr am ${date}${later > 0 ? ` und bei ${counted(later, 'einem späteren Messwert', 'späteren Messwerten')}` : ''}.`,
    planSaid: (action) => `Im Plan steht: ${action}`,
    wasDone: (outcome) => `Was getan wurde: ${outcome}`,
    writeOutcome: 'Danach unter „outcome“ im Plan eintragen, was getan wurde.',
  },

  instruments: {
    caption: 'Messgrößen und Messgeräte',
    heads: ['Größe', 'Einheit', 'Messgerät', 'Wo', 'Genauigkeit', 'Auflösung', 'Kalibriert'],
    bothTanks: 'beide Becken', theTank: 'das Becken', allTanks: 'alle Becken', notStated: 'nicht angegeben',
  },

  notes: {
    alternates: 'Welches Becken zuerst abgelesen wird, wechselt von Mal zu Mal.',
    drawn: (seed) => `Die Reihenfolge der Ablesung wird für jede Messzeit gelost${seed === null ? '' : `, Startwert ${seed}`}.`,
    order: (labels) => `Reihenfolge der Ablesung: ${labels.map(tankName).join(', ')}.`,
    sealed: ({ clock, date, changed }) => `Versiegelt um ${clock} Uhr am ${date}${changed ? '; seitdem geändert, siehe Prüfung des Plans' : ', unverändert'}.`,
    repeats: (name, samePlan) => `Wiederholt ${name}${samePlan ? ' mit demselben Plan' : ''}.`,
  },

  design: { accepted: 'Hingenommen: ', acceptedByAuthor: 'vom Verfasser hingenommen', fine: 'Die Prüfung des Plans hat nichts anzumerken.' },

  planning: {
    summary: 'Was dieser Plan unterscheiden kann',
    lead: 'Die kleinsten Unterschiede, die die Messgeräte auflösen (95 %), solange ein Messgerät, das beide abliest, bei beiden um denselben Betrag abweicht:',
    figures: ({ single, phase, change }) =>
      `: zwischen zwei Becken zu einer Zeit ${single}${phase ? `; im Mittel von ${phase.readings} Messwerten der ${phaseName(phase.phase)} ${phase.difference}` : ''}; zwischen den Änderungen zweier Becken ${change}`,
    oneTank: 'Mit einem Becken je Seite kann keine Zahl von Messwerten die Behandlung vom Becken unterscheiden.',
    tanks: ({ treatment, control, deviations, smallestP }) =>
      `Mit ${counted(treatment, 'einem Behandlungsbecken', 'Behandlungsbecken')} und ${counted(control, 'einem Vergleichsbecken', 'Vergleichsbecken')} wird ein Unterschied vom ${deviations}-Fachen der Streuung zwischen gleich behandelten Becken in vier von fünf Fällen gefunden; das kleinste p eines exakten Permutationstests ist ${smallestP}.`,
  },

  preparation: {
    summary: 'Material und Vorbereitung',
    counts: (things, steps) => `: ${counted(things, 'ein Gegenstand', 'Gegenstände')}, ${counted(steps, 'ein Schritt', 'Schritte')}`,
    atHand: 'Bereitlegen',
    beforeFirst: 'Vor der ersten Ablesung',
    every: 'jedes Becken',
    tanks: (count, facts) => `${count} Becken${facts.length === 0 ? '' : ` (${count > 1 ? 'je ' : ''}${facts.join(', ')})`}`,
    ofWater: (volume) => `${volume} Wasser`,
    instrumentFor: (instrument, quantity) => `${instrument}, für: ${quantity}`,
    timer: 'eine Zeitschaltuhr für die Lampen',
    nightTools: 'eine Uhr mit Wecker, eine Taschenlampe, Bleistift und der ausgedruckte Plan',
    dayTools: 'eine Uhr, Bleistift und der ausgedruckte Plan',
    calibrate: (days, instruments) => `Höchstens ${days} Tage vor Beginn kalibrieren: ${listedText(instruments)}; das Datum unter „calibrated“ eintragen.`,
    setTimers: 'Die Zeitschaltuhren aller Lampen auf dieselben Zeiten stellen und bei einem Wechsel zusehen.',
    readNamedFirst: 'Zuerst das Becken ablesen, das der ausgedruckte Plan für die Messzeit nennt; es wechselt von Mal zu Mal.',
    readInOrder: (labels) => `In dieser Reihenfolge ablesen: ${listedText(labels.map(tankName))}.`,
    haveReady: (action) => `Bereithalten, was die Abbruchregel verlangt: ${action.replace(/\.$/, '')}.`,
  },

  cautionsList: (titles) => `: ${listedText(titles)}`,

  schedule: {
    none: 'Kein Zeitplan angegeben.',
    lightsOff: 'Licht aus', lightsOn: 'Licht an', sunrise: 'Sonnenaufgang', sunset: 'Sonnenuntergang',
    shortDay: (date) => date.replace(/^(\d+\. )(\p{L}+) .*$/u, (_, day: string, month: string) => `${day}${month.length <= 4 ? month : `${month.slice(0, 3)}.`}`),
    phase: (id) => id.replace(/^baseline$/u, 'Ausgangsphase').replace(/^dark(?=$|-)/u, 'dunkel').replace(/^recovery(?=$|-)/u, 'Erholung'),
    sentences: (facts) => {
      const { start, end, lightsOff, lightsOn } = facts;
      const clocks = (texts: readonly string[]): string => (texts.length > 3 ? `${texts[0]!} Uhr und zu ${texts.length - 1} anderen Zeiten` : texts.length === 0 ? '' : `${listedText(texts)} Uhr`);
      const nightly = facts.daily ? ', jeden Tag' : '';
      const [off, on] = [clocks(lightsOff), clocks(lightsOn)];
      const stretches = facts.stretches.map(({ every, between }) => `${everyWords(every)}${between === null ? '' : ` von ${between[0]} bis ${between[1]} Uhr`}`);
      return [
        end === null ? `Ab ${start.clock} Uhr am ${start.date}.` : `Von ${start.clock} Uhr am ${start.date} bis ${end.clock} Uhr${end.sameDay ? '' : ` am ${end.date}`} (${end.length}).`,
        ...(off && on ? [`Licht aus um ${off} und an um ${on}${nightly}.`] : off ? [`Licht aus um ${off}${nightly}.`] : on ? [`Licht an um ${on}${nightly}.`] : []),
        ...(stretches.length > 0 ? [`Geplante Ablesungen: ${stretches.join(', ')}${facts.slots > 0 ? `, insgesamt ${facts.slots}` : ''}.`] : []),
        `Zeiten sind ${facts.zone === null ? 'UTC' : `Ortszeit in ${facts.zone}`}.`,
      ];
    },
  },

  sheet: {
    title: (title) => `Plan: ${title}`,
    time: 'Zeit', first: 'zuerst', remark: 'Bemerkung',
    more: (count) => `und ${count} weitere in der Notiz`,
    stopAtOnce: 'Sofort abbrechen',
    ifThen: (condition, action) => `Wenn ${condition}: ${action ?? planWords.stop.endTheRun}`,
    takeCare: 'Vorsicht: ',
    cautions: (titles) => `${titles.join('; ')}. Mehr steht auf der Plankarte; örtliche Vorschriften und die Anleitungen der Hersteller gehen vor.`,
    foot: ({ left, stem, version }) =>
      `${left > 0 ? `${left} spätere Ablesungen passen nicht auf diese Seite: auf liniertem Papier weiterschreiben. ` : ''}Für eine nicht gemachte Ablesung - schreiben; einen falschen Wert so durchstreichen, dass er lesbar bleibt. ${stem}, Evenwater ${version}.`,
  },
};
