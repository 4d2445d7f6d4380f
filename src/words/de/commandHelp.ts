// German help of the command line. Names of commands, options and files stay.
import type { CommandHelp } from '../en/commandHelp.ts';

export const commandHelp: CommandHelp = {
  usageHead: 'Aufruf',
  about: 'evenwater: Notizen über Aquarienversuche, deren Zahlen nicht von den Messwerten abweichen können.',
  call: 'evenwater BEFEHL … [--json] [--language KÜRZEL]',
  more: (languages) => [
    'Mehr sagt evenwater BEFEHL --help. --version nennt die Version.',
    `--language KÜRZEL  Sprache der Sätze: ${languages.join(' oder ')}; ohne Angabe Englisch. Codes und --json bleiben, wie sie sind.`,
  ],
  commands: {
    new: {
      usage: '[--template NAME] [--to DATEI]',
      summary: 'Eine neue Notiz schreiben: Plan, leere Messtabelle und Anfang des Texts.',
      lines: [
        'Jede Option kann fehlen; die Vorlage hat auf jede Frage eine Antwort.',
        '',
        '  --template NAME      eine der Vorlagen unten',
        '  --question TEXT      was der Versuch zeigen soll',
        '  --treatment TEXT     was die Behandlungsbecken haben und die anderen nicht',
        '  --tanks NAMEN        links, rechts: Behandlung und Reihenfolge werden aus einem Startwert ausgelost',
        '  --measure NAMEN      DO, T, P: kurze Namen, oder Namen von Größen',
        '  --place TEXT         Graz, 47.07, 15.44, Europe/Vienna: eines oder mehrere davon',
        '  --start ZEIT         2026-03-14 20:00, ein Datum oder eine Uhrzeit',
        '  --light-off ZEIT     22:00 oder none',
        '  --every DAUER        30 min',
        '  --length DAUER       14 h',
        '  --seed TEXT          Startwert der Auslosung; ohne Angabe die Ziffern des ersten Tages',
        '  --repeat NOTIZ       stattdessen eine Wiederholung dieses Versuchs: derselbe Plan am Tag von --start',
        '  --language KÜRZEL    auch die Sprache der Notiz; eine Wiederholung folgt ihrer ersten Notiz',
        '  --to DATEI           die Datei, die geschrieben wird; ohne Angabe geht die Notiz an die Standardausgabe',
        '',
        'Rückgabe 0, wenn die Notiz ohne Problem geschrieben wurde, 1, wenn sie Warnungen oder Fehler hat, 2 bei falschem Aufruf.',
      ],
    },
    log: {
      usage: 'NOTIZ WERTE… [--at ZEIT]',
      summary: 'Eine Zeile mit Messwerten in eine Notiz eintragen.',
      lines: [
        'Die Werte stehen in der Reihenfolge des Plans: evenwater log nacht.tank.md 7.31 24.9 8.28 24.6 1008.1',
        'Lost oder wechselt der Plan die Reihenfolge der Becken, gilt die der eingetragenen Zeit; was wohin ging, wird ausgegeben.',
        'Für eine ausgefallene Ablesung steht -. Ohne Werte: schreibt, was ein früherer Aufruf nicht konnte, und sagt, was fällig ist.',
        '',
        '  --at ZEIT      06:30, 2026-03-15T06:30, +90 (Minuten nach dem Beginn) oder now; ohne Angabe die fällige Messzeit',
        '  --note TEXT    eine Bemerkung zur Zeile',
        '  --anyway       auch Werte eintragen, die falsch aussehen',
        '  --forget       die Zeilen verwerfen, die im Journal auf diese Notiz warten; gibt sie aus',
        '',
        'Die Zeile wird ausgegeben, wenn sie auf dem Datenträger steht. Bis dahin steht sie im Journal (im Ordner EVENWATER_STATE',
        'oder im Ordner des Systems für Programmzustände), und ein späterer Aufruf schreibt sie. Die Notiz wird in einem Schritt',
        'ersetzt, unter einer Sperrdatei daneben; Zeilen, die ein anderes Programm inzwischen schrieb, bleiben.',
        'Rückgabe 0, wenn die Zeile eingetragen ist, 1, wenn sie abgelehnt wurde (mit dem Grund), 2 bei falschem Aufruf oder unlesbarer Notiz.',
      ],
    },
    check: {
      usage: 'PFAD…',
      summary: 'Notizen prüfen: jede Zahl und Aussage gegen die Messwerte.',
      lines: [
        'Eine Datei wird selbst geprüft; ein Ordner meint jede *.tank.md darin und darunter, außer in Punktordnern und node_modules.',
        'Gibt für jedes Problem eine Zeile aus: Datei:Zeile:Spalte: Schwere Code: Satz.',
        'Rückgabe 0 ohne Fehler, 1 mit Fehlern, 2 bei falschem Aufruf oder unlesbarer Eingabe.',
      ],
    },
    find: {
      usage: 'NOTIZ',
      summary: 'Die Formeln hinter Zahlen finden, die ohne Beleg stehen oder nicht stimmen.',
      lines: [
        'Nennt jede Zahl, die keine Formel prüft oder die ihre Formel nicht ergibt, mit den Formeln dieser Notiz, die sie ergeben, die beste zuerst.',
        'Die Punkte vergleichen nur die Formeln einer Zahl. Ergibt nichts die Zahl, steht da, was nahe kommt, mit seinem Wert und dem Versehen, das es erklären würde.',
        'Rückgabe 0, was immer gefunden wurde, 1, wenn die Notiz keinen lesbaren Plan hat, 2 bei falschem Aufruf oder unlesbarer Eingabe.',
      ],
    },
    ask: {
      usage: "NOTIZ 'FORMEL'",
      summary: 'Eine Formel aus einer Notiz berechnen und ihren Wert ausgeben.',
      lines: [
        "Beispiel: evenwater ask nacht.tank.md 'min(mat.DO, dark)'",
        'Rückgabe 1 mit den Problemen, wenn die Formel oder die Messwerte dahinter eines haben, 2, wenn die Notiz nicht lesbar ist.',
      ],
    },
    publish: {
      usage: 'NOTIZ --to ORDNER',
      summary: 'Eine Notiz veröffentlichen: als eine Seite mit allem darin, oder in anderer Form.',
      lines: [
        'Schreibt ORDNER/<Stamm>.html, jede Datei ganz oder gar nicht. Lehnt ab, solange die Notiz einen Fehler hat; nennt Warnungen und Zahlen ohne Beleg.',
        '--as FORM     eine andere Form; mehrmals möglich:',
        '  html         eine Seite mit allem darin (wie ohne Angabe)',
        '  markdown     <Stamm>.post.md mit Abbildungen als SVG-Dateien, für Foren und Blogs; --front-matter setzt Metadaten davor',
        '  card         eine Übersichtskarte, als Markdown und als SVG-Bild: Frage, Antwort, Abbildung, Grenzen der Aussage',
        '  plan         der Plan als eine Seite A4 mit einer leeren Tabelle für den Bleistift; kurz --plan',
        '  narration    die Befunde als nummerierte Sätze zum Sprechen, Zahlen wie auf Deutsch und Englisch gesprochen, in anderen Sprachen wie gedruckt',
        '  data         <Stamm>-data/: Tabellen als CSV mit Metadaten (CSVW, Data Package, RO-Crate), der Plan als JSON, Notiz, Datendateien und Beitrag',
        '--published Z die Zeit der Veröffentlichung, die der Beitrag nennt (2026-04-13T10:00+03:00); ohne Angabe die des Plans, oder keine.',
        'Rückgabe 0, wenn der Beitrag geschrieben wurde, 1, wenn er abgelehnt wurde, 2 bei falschem Aufruf oder unlesbarer Eingabe.',
      ],
    },
    recheck: {
      usage: 'BEITRAG',
      summary: 'Jede Zahl eines Beitrags aus der Notiz und den Daten darin nachrechnen.',
      lines: [
        'Nimmt Notiz und Daten aus BEITRAG.html, prüft ihre Prüfsummen, liest und berechnet alles noch einmal und vergleicht die',
        'ganze Seite: Belege, Tabellen, erzeugte Sätze, Zeichnungen und die Werte und Formeln hinter den Zahlen.',
        'Wurde der Beitrag mit einer anderen Version gemacht, steht das zuerst; dann werden Zahlen, Werte, Formeln und der eigene Text beurteilt, erzeugter Wortlaut, Gestaltung und Zeichnungen nicht.',
        'Das zeigt, dass die Seite zu den Daten darin passt, nicht, wer sie geschrieben hat.',
        'Rückgabe 0, wenn alles übereinstimmt, 1 mit einer Zeile je Unterschied, 2 bei falschem Aufruf oder unlesbarer Eingabe.',
      ],
    },
    extract: {
      usage: 'BEITRAG --to ORDNER',
      summary: 'Notiz und Daten aus einem Beitrag herausnehmen, Byte für Byte.',
      lines: [
        'Schreibt die Notiz und jede Datendatei, die BEITRAG.html enthält, nach ORDNER, in die Unterordner, aus denen sie kamen.',
        'Steht dort schon eine Datei mit anderem Inhalt, bleibt sie unberührt, und nichts wird geschrieben.',
        'Rückgabe 0, wenn alle geschrieben sind und ihre Prüfsummen stimmen, 1, wenn etwas im Beitrag nicht stimmt, 2 bei falschem Aufruf oder unlesbarer Eingabe.',
      ],
    },
    format: {
      usage: 'PFAD… [--check]',
      summary: 'Die Messtabellen von Notizen ausrichten; kein Wert wird geändert.',
      lines: [
        'Eine Datei wird selbst ausgerichtet; ein Ordner meint jede *.tank.md darin und darunter. Gibt für jede geänderte Notiz eine Zeile aus.',
        '',
        '  --check    nichts ändern, und Rückgabe 1, wenn eine Notiz nicht ausgerichtet ist',
      ],
    },
    seal: {
      usage: 'NOTIZ [--block NAME | --plan]',
      summary: 'Eine Messtabelle versiegeln, oder den Plan.',
      lines: [
        'Schreibt eine Prüfsumme über Zeiten, Einheiten und erste Werte unter die Spaltenköpfe. Berichtigungen, Kennzeichen, Bemerkungen und',
        'Ausrichten lassen ein Siegel gültig; jede andere Änderung ist ein Fehler bei evenwater check, der die Zelle nennt.',
        '',
        '  --block NAME    die Tabelle dieses Namens, oder ihre Nummer in der Notiz; ohne Angabe die letzte unversiegelte',
        '  --plan          stattdessen der Plan, vor der ersten Ablesung; die Methoden führen jede spätere Änderung auf',
      ],
    },
  },
};
