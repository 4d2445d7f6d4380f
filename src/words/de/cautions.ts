// German words of the cautions on the plan card, and the words of a plan that call for each.
import type { CautionWords } from '../en/cautions.ts';

export const cautionWords: CautionWords = {
  preface: 'Ausgewählt nach dem, was dieser Plan nennt; zur Erinnerung und nicht vollständig. Die Vorschriften des Landes, des Vermieters und der Gerätehersteller gehen vor.',
  cautions: {
    mains: {
      title: 'Netzstrom neben Wasser',
      text: 'Jeden Stecker über einen Fehlerstromschutzschalter mit höchstens 30 mA betreiben und ihn prüfen, jedes Kabel in einer Tropfschleife unter seiner Steckdose hängen lassen und den Stecker ziehen, bevor Hände ins Wasser kommen.',
    },
    gas: {
      title: 'Druckgas',
      text: 'Die Flasche aufrecht anketten, Druckminderer und alle Verbindungen mit Seifenwasser prüfen und den Raum lüften: Kohlendioxid sammelt sich am Boden und warnt nicht.',
    },
    chemicals: {
      title: 'Chemikalien und Reagenzien',
      text: 'Zuerst das Sicherheitsdatenblatt lesen, Handschuhe und Schutzbrille tragen, jede Flasche beschriften, Reagenzien von den Becken fernhalten und gebrauchte nach den örtlichen Vorschriften sammeln.',
    },
    animals: {
      title: 'Lebende Tiere',
      text: 'Die Tiere bei jeder Ablesung ansehen, den Versuch beenden, sobald eine Abbruchregel oder ihr Verhalten es verlangt, und eine Tierärztin oder einen Tierarzt rufen, wenn es ihnen schlecht geht. Versuche mit Wirbeltieren, Kopffüßern und Zehnfußkrebsen können eine Genehmigung brauchen: vor dem Beginn klären.',
    },
    release: {
      title: 'Nichts gelangt in offene Gewässer',
      text: 'Pflanzen, Tiere und Beckenwasser nie in Gräben, Teiche oder Abläufe schütten, die dorthin führen. Manche Schwimmpflanzen dürfen in manchen Ländern weder gehalten noch weitergegeben werden.',
    },
    night: {
      title: 'Allein und nachts arbeiten',
      text: 'Den Boden trocken und den Weg beleuchtet halten, jemandem Bescheid sagen und lieber eine Ablesung auslassen, als etwas zu wagen: Ein fehlender Messwert wird „-“ geschrieben und schadet nicht.',
    },
    light: {
      title: 'Ultraviolett und starke Lampen',
      text: 'Ultraviolettlampen ausschalten, bevor ihr Gehäuse geöffnet wird, und nicht in starke Lampen blicken.',
    },
    heat: {
      title: 'Heizer',
      text: 'Einen Heizer eine Viertelstunde ausschalten, bevor er aus dem Wasser kommt, und sich zum Schutz der Tiere nicht auf einen einzigen Thermostat verlassen.',
    },
    glass: {
      title: 'Gewicht',
      text: 'Ein Liter Wasser wiegt ein Kilogramm: Unterschrank und Boden prüfen und nie ein gefülltes Becken bewegen.',
    },
  },
  finds: {
    mains: /(?:heizer|heizstab|heizung|pumpe|lampe|leuchte|\bled|licht|filter|kühler|\bstrom\b|netzstrom|abschäumer|rührer|ventilator|thermostat|steckdose)/u,
    gas: /(?:kohlendioxid|\bco₂|gasflasche|druckflasche|druckgas|druckminderer|stickstoffgas|sauerstoffgas|flaschengas|magnetventil)/u,
    chemicals: /(?:reagenz|titr|tröpfchentest|tropftest|testkoffer|säure|bleiche|chlor\b|hypochlorit|permanganat|peroxid|ammonium|ammoniumchlorid|formalin|kupfer|medikament|dosier|natrium|calciumchlorid)/u,
    light: /(?:\buv|ultraviolett|halogen-?metalldampf|laser)/u,
    heat: /(?:heizer|heizstab)/u,
    probe: /(?:messgerät|meter\b|sonde|elektrode|sensor|refraktometer|fühler)/iu,
  },
};
