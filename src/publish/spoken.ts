// A sentence with its numbers, times, dates and units written as said: 5.83 mg/L is "five point eight three milligrams per litre".
import { atoms } from '../quantities/atoms.ts';
import { matchPrintedUnit } from '../quantities/printedUnits.ts';
import type { Language } from '../words/languages.ts';
import { speechIn } from '../words/speech.ts';
import { unitWordForms } from '../words/units.ts';

/** True for a unit that stands there in words already, in whatever case they have. */
function isWritten(printed: string, language: Language): boolean {
  const shown = printed.trim().toLowerCase();
  return Object.values(unitWordForms(language) ?? {}).some((forms) => forms.some((form) => form.length > 3 && shown.startsWith(form.toLowerCase())));
}

/** A unit symbol in words: `mg/L/h` is "milligrams per litre per hour". Null where a part has no words. */
function spokenUnit(symbol: string, one: boolean, language: Language = 'en'): string | null {
  const say = speechIn(language);
  const forms = unitWordForms(language);
  const whole = say.special[symbol];
  if (whole) return whole[one ? 0 : 1];
  const basis = /-(N|P|CaCO3)$/.exec(symbol);
  const parts = (basis ? symbol.slice(0, -basis[0].length) : symbol).split('/');
  const said = parts.map((part, index) => {
    const [, name = part, power = ''] = /^(.*?)(2|3)?$/.exec(part) ?? [];
    const words = say.special[name] ?? (forms === null ? atoms.find((atom) => atom.symbol === name)?.words.filter((word) => /^[a-z -]+$/i.test(word)).slice(0, 2) : forms[name]);
    if (!words || words.length === 0) return null;
    const word = say.unit(words, index > 0 || one);
    return power === '2' ? say.power.square(word) : power === '3' ? say.power.cubic(word) : word;
  });
  if (said.some((each) => each === null)) return null;
  return said.filter((each) => each !== '').join(say.per) + (basis ? say.basis[basis[1]!] ?? '' : '');
}

/** A sentence with its numbers, times, dates and units written as said. */
export function spokenText(printed: string, language: Language = 'en'): string {
  const say = speechIn(language);
  const text = say.wordedDate === null ? printed
    : printed.replace(say.wordedDate, (_, day: string, month: string, year: string | undefined) => say.dateInWords(Number(day), month, year === undefined ? null : Number(year)));
  const pattern = /(?<date>\b(\d{4})-(\d{2})-(\d{2})\b)|(?<clock>\b([01]?\d|2[0-3]):([0-5]\d)(?::[0-5]\d)?\b(?:\s*(am|pm)\b)?)|(?<number>(?<![\p{L}\d_.,-])[-−+]?\d+(?:[.,]\d+)?(?![\p{L}_]*\d))|(?<plusminus>±)|(?<about>~(?=\s?\d))/gu;
  let said = '';
  let at = 0;
  for (let match = pattern.exec(text); match; match = pattern.exec(text)) {
    if (match.index < at) continue;
    said += text.slice(at, match.index);
    at = match.index + match[0].length;
    const groups = match.groups!;
    if (groups['date']) said += say.date(Number(match[2]), Number(match[3]), Number(match[4]));
    else if (groups['clock']) {
      const half = match[8];
      const hour = Number(match[6]) % (half ? 12 : 24) + (half === 'pm' ? 12 : 0);
      said += say.clock(hour, Number(match[7]));
      at += say.afterClock?.exec(text.slice(at))?.[0].length ?? 0;
    } else if (groups['plusminus']) said += say.plusMinus;
    else if (groups['about']) said += say.about;
    else {
      const number = say.number(match[0]);
      const range = /^\s?[–-]\s?(?=\d)/.exec(text.slice(at));
      if (range) { said += number + say.to; at += range[0].length; pattern.lastIndex = at; continue; }
      const unit = matchPrintedUnit(text, at, language);
      const words = unit && /^[^\p{L}]*[\p{L}µ°%‰]/u.test(text.slice(at)) ? spokenUnit(unit.unit.symbol, /^[-−+]?1$/.test(match[0]), language) : null;
      said += match[0] === '1' && (words || /^ \p{L}/u.test(text.slice(at))) ? say.oneOf(number, words ?? '') : number;
      if (unit && isWritten(text.slice(at, at + unit.length), language)) continue;
      if (unit && words !== null) { said += words === '' ? '' : ` ${words}`; at += unit.length; }
      else if (/^[\p{L}°%]/u.test(text.slice(at))) said += ' ';
    }
    pattern.lastIndex = at;
  }
  return (said + text.slice(at)).replace(/≤/g, say.atMost).replace(/≥/g, say.atLeast).replace(/\s+/g, ' ').trim();
}
