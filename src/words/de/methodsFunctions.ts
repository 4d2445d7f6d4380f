// What the German methods say of a function; one sentence may serve several. A test holds that none is missing that methods can cite.
const change = 'Änderungen sind der letzte Messwert eines Zeitraums abzüglich des ersten.';
const percent = 'Prozentuale Änderungen beziehen sich auf den ersten Messwert des Zeitraums.';
const steepest = 'Die steilste Änderung ist die schnellste je Stunde zwischen benachbarten Messwerten, nie über einen fehlenden hinweg.';
const steps = 'Schritte zählen ab dem ersten Messwert des Zeitraums; ein prozentualer Schritt bezieht sich auf den Messwert, bei dem er beginnt.';
const hours = 'Stunden unter oder über einem Wert wurden an geraden Linien zwischen den Messwerten abgelesen.';
const passed = 'Als Zeit, zu der ein Wert zuerst über- oder unterschritten war, gilt die des ersten Messwerts jenseits davon.';
const night = 'Atmung und Oberflächenaustausch wurden zusammen an die dunkle Zeit angepasst';

export const functionWords: Readonly<Record<string, string>> = {
  change, rise: change, fall: change, 'percent-change': percent, 'percent-rise': percent, 'percent-fall': percent,
  rate: 'Änderungen je Stunde sind die Änderung vom ersten zum letzten Messwert eines Zeitraums, geteilt durch die Stunden dazwischen.',
  slope: 'Steigungen sind die der Geraden kleinster Quadrate durch die Messwerte eines Zeitraums, je Stunde.',
  'robust-slope': 'Robuste Steigungen sind der Median der Steigungen zwischen je zwei Messwerten eines Zeitraums, je Stunde; einzelne Ausreißer ändern ihn kaum.',
  'steepest-fall': steepest, 'steepest-rise': steepest, 'time-of-steepest-fall': steepest, 'time-of-steepest-rise': steepest,
  steps, 'percent-steps': steps, 'hours-below': hours, 'hours-above': hours, 'first-below': passed, 'first-above': passed,
  settled: 'Eingependelt ist eine Reihe ab der ersten Ablesung, von der während der genannten Dauer kein Messwert um mehr als den genannten Betrag abweicht, bei mindestens drei Messwerten darin.',
  'turning-point': 'Der Wendepunkt ist die Zeit des niedrigsten Messwerts, sofern die Reihe danach um mehr steigt, als das Messgerät auflöst.',
  interpolate: 'Werte zwischen zwei Messwerten liegen auf der Geraden, die sie verbindet.',
  difference: 'Unterschiede zwischen Becken wurden Ablesung für Ablesung gebildet, zu den Zeiten, die beide haben.',
  'percent-difference': 'Prozentuale Unterschiede zwischen Becken beziehen sich auf das zweite Becken der Formel.',
  contrast: 'Der Kontrast sagt, um wie viel mehr sich die Behandlungsbecken von der Ausgangsphase bis zum Zeitraum änderten als die Vergleichsbecken.',
  'permutation-p': 'Das exakte zweiseitige p des Kontrasts, jedes Becken einmal gezählt, ist der Anteil aller Aufteilungen der Becken auf zwei Gruppen, bei denen diese mindestens so weit auseinanderliegen.',
  resolved: 'Aufgelöst heißt eine Änderung oder ein Unterschied, der größer ist als die halbe Breite seines 95-%-Intervalls, sodass die Messgeräte ihn von null unterscheiden können.',
  'gap-explained': 'Der erklärte Teil eines Sauerstoffunterschieds ist der, der mit Temperatur, Luftdruck und Salzgehalt der beiden Becken einhergeht, weil das Wasser des einen mehr Sauerstoff aufnehmen kann.',
  'gap-left': 'Der übrige Teil eines Sauerstoffunterschieds ist der, der bleibt, wenn der durch Temperatur, Luftdruck und Salzgehalt erklärte abgezogen ist.',
  solubility: 'Die Sauerstofflöslichkeit wurde aus Wassertemperatur, Luftdruck am Ort und Salzgehalt derselben Zeile berechnet.',
  saturation: 'Die Sauerstoffsättigung ist der Sauerstoffgehalt in Prozent der Löslichkeit bei Wassertemperatur, Luftdruck am Ort und Salzgehalt derselben Zeile.',
  deficit: 'Das Sättigungsdefizit ist die Löslichkeit bei Wassertemperatur, Luftdruck am Ort und Salzgehalt derselben Zeile abzüglich des Sauerstoffgehalts.',
  respiration: `${night}; die Atmung ist der Sauerstoff, den alles Lebende im Becken in einer Stunde Dunkelheit aufnimmt, der Austausch an der Oberfläche herausgerechnet.`,
  reaeration: `${night}; der Oberflächenaustausch ist der Anteil des Sättigungsdefizits, den die Oberfläche je Stunde mit der Luft ausgleicht.`,
  'balance-point': 'Der Kompensationspunkt ist die Zeit, ab der die Erzeugung die Atmung überwiegt, der an die Dunkelphase angepasste Austausch an der Oberfläche herausgerechnet.',
  'time-to': 'Die Dauer bis zu einem Wert ist die, nach der die angepasste Nacht ihn erreicht hätte, wenn sie ebenso weitergegangen wäre.',
  'predicted-min': 'Der vorhergesagte niedrigste Sauerstoffgehalt gilt für die angepasste Nacht bei der genannten Dunkelheit, dem genannten Oberflächenaustausch und dem genannten Besatz: eine Vorhersage, kein Messwert.',
  'predicted-hours-below': 'Die vorhergesagten Stunden unter einem Wert gelten für die angepasste Nacht bei der genannten Dunkelheit, dem genannten Oberflächenaustausch und dem genannten Besatz: eine Vorhersage, kein Messwert.',
  'un-ionised-ammonia': 'Der Ammoniakgehalt ist der Teil des Gesamtammoniums, der als NH3 vorliegt, aus pH-Wert, Temperatur und Salzgehalt derselben Zeile.',
  'carbon-dioxide': 'Der Kohlendioxidgehalt wurde aus Alkalinität (Karbonathärte), pH-Wert und Temperatur derselben Zeile berechnet, für Süßwasser mit pH 6 bis 8,3.',
  salinity: 'Der Salzgehalt eines Beckens ist der gemessene oder der aus der Leitfähigkeit derselben Zeile.',
  median: 'Der Median ist der mittlere Messwert der Größe nach; bei gerader Anzahl das Mittel der beiden mittleren.',
  sd: 'Standardabweichungen sind die einer Stichprobe.',
};
