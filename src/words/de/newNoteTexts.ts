// The templates of a new note in German, by their English: the author's texts in the plan, the sentences, and the names.
// Placeholders as in the templates. A text inside `{…}` has no comma, brace, quotation mark or colon with a space.

export const newNoteTexts: Readonly<Record<string, string>> = {
  // In several templates.
  none: 'keine',
  'treated tank': 'behandeltes Becken',
  'Bring the tanks to one temperature': 'Die Becken auf eine Temperatur bringen',
  'Fill the tanks with one batch of water': 'Alle Becken mit Wasser aus einem Ansatz füllen',

  // overnight-oxygen
  'Does a floating mat lower the overnight oxygen minimum?': 'Senkt eine Schwimmpflanzendecke das nächtliche Sauerstoffminimum?',
  'Does WITH change the overnight oxygen minimum?': 'Fällt das nächtliche Sauerstoffminimum mit „WITH“ anders aus?',
  'The tank with the mat falls lower and recovers later.': 'Im Becken mit der Pflanzendecke fällt der Sauerstoff tiefer und erholt sich später.',
  'floating mat, 80 % of the surface': 'Schwimmpflanzendecke, 80 % der Oberfläche',
  'floating-mat tank': 'Becken mit Schwimmpflanzen',
  'open-surface tank': 'Becken mit freier Oberfläche',
  '6 ramshorn snails': '6 Posthornschnecken',
  'sponge filter, 25 W heater': 'Schwammfilter, Heizer 25 W',
  'Warm water holds less oxygen and everything in it breathes faster': 'Warmes Wasser hält weniger Sauerstoff, und alles darin atmet schneller',
  'Bring the tanks to one oxygen level under the lamp': 'Die Becken unter der Lampe auf einen Sauerstoffgehalt bringen',
  'Put run-in filter material of one source into each tank': 'In jedes Becken eingefahrenes Filtermaterial derselben Herkunft geben',
  'The bacteria of a filter breathe too': 'Auch die Bakterien eines Filters atmen',
  'animals of a warm-water tank': 'Tiere eines Warmwasserbeckens',
  'Switch the air pump on and end the run': 'Die Luftpumpe einschalten und den Versuch beenden',
  'The lowest oxygen of the night was {? = lowest-TREATED} with the treatment and {? = lowest-CONTROL} without it, {? = lower-by} apart.':
    'Der niedrigste Sauerstoffgehalt der Nacht war {? = tiefster-TREATED} mit der Behandlung und {? = tiefster-CONTROL} ohne sie, ein Unterschied von {? = unterschied}.',
  'Between lights-off and lights-on the treated side lost {? = night-loss-TREATED}, the control {? = night-loss-CONTROL}.':
    'Zwischen Licht aus und Licht an verlor die behandelte Seite {? = nachtverlust-TREATED}, der Vergleich {? = nachtverlust-CONTROL}.',

  // heater-failure
  'How much longer does a tank with a cover glass stay warm after its heater fails?': 'Wie viel länger bleibt ein Becken mit Deckscheibe warm, wenn sein Heizer ausfällt?',
  'Does WITH change how long a tank stays warm after its heater fails?': 'Bleibt ein Becken mit „WITH“ nach dem Ausfall seines Heizers anders lange warm?',
  'The covered tank cools more slowly.': 'Das abgedeckte Becken kühlt langsamer ab.',
  'cover glass, sponge filter, 50 W heater': 'Deckscheibe, Schwammfilter, Heizer 50 W',
  'sponge filter, 50 W heater': 'Schwammfilter, Heizer 50 W',
  'covered tank': 'abgedecktes Becken',
  'bare tank': 'offenes Becken',
  'java fern on wood': 'Javafarn auf Holz',
  'all heaters unplugged': 'alle Heizer ausgesteckt',
  'Plug the heaters in again and end the run': 'Die Heizer wieder einstecken und den Versuch beenden',
  'From the failure to the end the treated side lost {? = loss-TREATED}, the control {? = loss-CONTROL}.':
    'Vom Ausfall bis zum Ende verlor die behandelte Seite {? = verlust-TREATED}, der Vergleich {? = verlust-CONTROL}.',

  // nitrification
  'Does a run-in sponge shorten the weeks until a new filter takes up ammonia?': 'Verkürzt ein eingefahrener Schwamm die Wochen, bis ein neuer Filter Ammonium aufnimmt?',
  'Does WITH change how many days pass until a new filter takes up ammonia?': 'Vergehen mit „WITH“ mehr oder weniger Tage, bis ein neuer Filter Ammonium aufnimmt?',
  'With the run-in sponge ammonia and nitrite fall days earlier.': 'Mit dem eingefahrenen Schwamm fallen Ammonium und Nitrit um Tage früher.',
  'new filter with a run-in sponge': 'neuer Filter mit eingefahrenem Schwamm',
  'new filter': 'neuer Filter',
  'seeded tank': 'Becken mit Schwamm',
  'plain tank': 'Becken ohne Schwamm',
  'ammonium chloride for 2 mg/L-N dosed': 'Ammoniumchlorid für 2 mg/L-N dosiert',
  'Nitrifiers work faster in the warm': 'Nitrifizierer arbeiten im Warmen schneller',
  'Total ammonia was first read below 0.25 mg/L-N {? = days-earlier} earlier with the treatment.':
    'Mit der Behandlung lag das Gesamtammonium {? = tage-früher} früher zum ersten Mal unter 0,25 mg/L-N.',
  'Nitrite rose to {? = nitrite-peak-TREATED} with the treatment and to {? = nitrite-peak-CONTROL} without it.':
    'Nitrit stieg mit der Behandlung auf {? = nitritspitze-TREATED} und ohne sie auf {? = nitritspitze-CONTROL}.',

  // carbon-dioxide
  'How far does a dense stand of stem plants raise the pH through a light period?': 'Wie weit hebt ein dichter Bestand von Stängelpflanzen den pH-Wert während einer Lichtphase?',
  'Does WITH change how far the pH rises through a light period?': 'Steigt der pH-Wert während einer Lichtphase mit „WITH“ anders?',
  'The planted tank rises by more than half a pH.': 'Im bepflanzten Becken steigt der pH-Wert um mehr als einen halben pH.',
  'stem plants, two thirds of the ground': 'Stängelpflanzen, zwei Drittel des Bodens',
  'planted tank': 'bepflanztes Becken',
  'unplanted tank': 'unbepflanztes Becken',
  'sponge filter, 25 W heater, lamp of 20 W': 'Schwammfilter, Heizer 25 W, Lampe 20 W',
  'all lamps switched on': 'alle Lampen eingeschaltet',
  'all lamps switched off': 'alle Lampen ausgeschaltet',
  'Fill the tanks with one batch of water and let it stand overnight': 'Alle Becken mit Wasser aus einem Ansatz füllen und über Nacht stehen lassen',
  'While the lamps were on the pH of the treated side rose by {? = rise-TREATED}, to {? = highest-TREATED}, that of the control by {? = rise-CONTROL}.':
    'Bei eingeschalteten Lampen stieg der pH-Wert der behandelten Seite um {? = anstieg-TREATED} bis auf {? = höchster-TREATED}, der des Vergleichs um {? = anstieg-CONTROL}.',

  // evaporation
  'Does a cover glass slow evaporation and the rise of salinity in a small marine tank?': 'Bremst eine Deckscheibe in einem kleinen Meerwasserbecken die Verdunstung und den Anstieg des Salzgehalts?',
  'Does WITH change evaporation and the rise of salinity in a small marine tank?': 'Verdunstet aus einem kleinen Meerwasserbecken mit „WITH“ anders viel Wasser, und steigt der Salzgehalt anders?',
  'The covered tank loses less than half as much water.': 'Das abgedeckte Becken verliert weniger als halb so viel Wasser.',
  'cover glass, powerhead, 50 W heater': 'Deckscheibe, Strömungspumpe, Heizer 50 W',
  'powerhead, 50 W heater': 'Strömungspumpe, Heizer 50 W',
  'open tank': 'offenes Becken',
  'Mix one batch of salt water for all tanks': 'Für alle Becken einen Ansatz Salzwasser mischen',
  'Fill all tanks to one mark': 'Alle Becken bis zur selben Marke füllen',
  'The water of the treated side sank by {? = sunk-TREATED}, that of the control by {? = sunk-CONTROL}.':
    'Das Wasser der behandelten Seite sank um {? = gesunken-TREATED}, das des Vergleichs um {? = gesunken-CONTROL}.',
  'The salinity rose by {? = saltier-TREATED} with the treatment and by {? = saltier-CONTROL} without it.':
    'Der Salzgehalt stieg mit der Behandlung um {? = salziger-TREATED} und ohne sie um {? = salziger-CONTROL}.',

  // behaviour
  'Are small tetras calmer under floating plants?': 'Sind kleine Salmler unter Schwimmpflanzen ruhiger?',
  'Does WITH change how calm small tetras are?': 'Sind kleine Salmler mit „WITH“ mehr oder weniger ruhig?',
  'Under floating plants the fish are noted as calm more often and breathe more slowly.': 'Unter Schwimmpflanzen werden die Fische öfter als ruhig notiert und atmen langsamer.',
  'floating plants, half of the surface': 'Schwimmpflanzen, die halbe Oberfläche',
  'shaded tank': 'beschattetes Becken',
  'bright tank': 'helles Becken',
  '8 ember tetras': '8 Funkensalmler',
  'sponge filter, 25 W heater, lamp of 10 W': 'Schwammfilter, Heizer 25 W, Lampe 10 W',
  'fed one pinch of fine flakes a tank': 'je Becken eine Prise feines Flockenfutter gegeben',
  'Fish breathe faster in warmer water': 'In wärmerem Wasser atmen Fische schneller',
  'Change a third of the water, switch the air pump on, end the run and call a veterinarian if it lasts':
    'Ein Drittel des Wassers wechseln, die Luftpumpe einschalten, den Versuch beenden und tierärztlichen Rat holen, wenn es anhält',
  'On average the fish of the treated side beat their gills {? = gill-TREATED}, those of the control {? = gill-CONTROL}.':
    'Im Mittel schlugen die Kiemen der Fische auf der behandelten Seite {? = kiemen-TREATED}, im Vergleich {? = kiemen-CONTROL}.',

  // blank
  'What do you want to know?': 'Welche Frage soll der Versuch beantworten?',
  'Does WITH make a difference?': 'Macht „WITH“ einen Unterschied?',
  'write here what you change': 'hier angeben, was anders gemacht wird',
  'write here what the control has instead': 'hier angeben, was der Vergleich stattdessen hat',
  'control tank': 'Vergleichsbecken',
  'The temperature of the treated side changed by {? = change-TREATED}, that of the control by {? = change-CONTROL}.':
    'Die Temperatur der behandelten Seite änderte sich um {? = änderung-TREATED}, die des Vergleichs um {? = änderung-CONTROL}.',

  // Instruments of src/edits/planLibrary.ts
  'optical oxygen meter': 'optisches Sauerstoffmessgerät',
  thermometer: 'Thermometer',
  'pH meter': 'pH-Messgerät',
  'drop test': 'Tröpfchentest',
  'colour test': 'Farbtest',
  refractometer: 'Refraktometer',
  'conductivity meter': 'Leitfähigkeitsmessgerät',
  'steel ruler on the glass': 'Stahllineal an der Scheibe',
  'watched for two minutes': 'Beobachtung über zwei Minuten',
  'stopwatch and counter': 'Stoppuhr und Zähler',
  'light meter': 'Lichtmessgerät',
  barometer: 'Barometer',
  'room thermometer': 'Raumthermometer',
  hygrometer: 'Hygrometer',
};

/** Names, without the `TREATED` or `CONTROL` that may follow. */
export const newNoteNames: Readonly<Record<string, string>> = {
  // Tanks.
  mat: 'bedeckt', open: 'offen', covered: 'abgedeckt', bare: 'unbedeckt', seeded: 'schwamm', plain: 'vergleich', planted: 'bepflanzt', empty: 'unbepflanzt', shaded: 'schatten', bright: 'hell',
  treated: 'behandelt',
  // Events and phases.
  'heaters-off': 'heizer-aus', heated: 'geheizt', cooling: 'Abkühlung', dosing: 'zugabe', 'lamps-on': 'lampen-an', 'lamps-off': 'lampen-aus', before: 'vorher', light: 'Licht', after: 'danach', feeding: 'futtergabe',
  // Results.
  'lowest-': 'tiefster-', 'night-loss-': 'nachtverlust-', 'lower-by': 'unterschied', 'loss-': 'verlust-', 'half-warmth-': 'halbwarm-', 'ammonia-gone-': 'ammonium-weg-', 'days-earlier': 'tage-früher',
  'nitrite-peak-': 'nitritspitze-', 'rise-': 'anstieg-', 'highest-': 'höchster-', 'sunk-': 'gesunken-', 'saltier-': 'salziger-', 'gill-': 'kiemen-', 'change-': 'änderung-',
  // Words of a scale.
  calm: 'ruhig', restless: 'unruhig', surface: 'oben', gasping: 'schnappend',
};
