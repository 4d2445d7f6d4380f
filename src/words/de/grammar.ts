// Small rules of German that the generated prose shares: cases of nouns, lists, plurals, numbers as words, dates.
// Labels of tanks and instruments are the author's words and are never bent: they stand in quotes beside a noun of ours.
import { asPieces, type Pieces, type Slot } from '../pieces.ts';

export type Article = 'der' | 'die' | 'das';
export type Case = 'nominative' | 'accusative' | 'dative' | 'genitive';

/** A noun in the singular. */
export interface Noun {
  /** Without article: `Sauerstoffgehalt`, `relative Dichte`. */
  readonly name: string;
  readonly article: Article;
  /** The noun alone and in the genitive; ` bei 25 °C` after it stays as it is. */
  readonly head: string;
  readonly genitive: string;
  readonly adjective: string | null;
  readonly tail: string;
}

export function noun(head: string, article: Article, options: { genitive?: string; adjective?: string; tail?: string } = {}): Noun {
  const { adjective = null, tail = '' } = options;
  const ending = article === 'die' || article === 'das' ? 'e' : 'er';
  return {
    head, article, adjective, tail, genitive: options.genitive ?? (article === 'die' ? head : `${head}s`),
    name: `${adjective === null ? '' : `${adjective}${article === 'das' ? 'es' : ending} `}${head}${tail}`,
  };
}

/** The definite articles by gender and case. */
export const articles: Readonly<Record<Article, Readonly<Record<Case, string>>>> = {
  der: { nominative: 'der', accusative: 'den', dative: 'dem', genitive: 'des' },
  die: { nominative: 'die', accusative: 'die', dative: 'der', genitive: 'der' },
  das: { nominative: 'das', accusative: 'das', dative: 'dem', genitive: 'des' },
};

/** A noun with its definite article: `der Sauerstoffgehalt`, `des Sauerstoffgehalts`, `der relativen Dichte`. */
export function withArticle(word: Noun, wanted: Case): string {
  const plain = wanted === 'nominative' || (wanted === 'accusative' && word.article !== 'der');
  const adjective = word.adjective === null ? '' : `${word.adjective}${plain ? 'e' : 'en'} `;
  return `${articles[word.article][wanted]} ${adjective}${wanted === 'genitive' ? word.genitive : word.head}${word.tail}`;
}

/** A label with `Becken` or `Aquarium` as its head, whose gender is therefore known: `Mattenbecken`, `Becken 2`, `offenes Becken`. */
interface TankLabel { readonly adjective: string | null; readonly noun: string; readonly tail: string }
function tankLabel(label: string): TankLabel {
  const found = /^(?:(\p{Ll}+)es )?([\p{L}\d-]*(?:[Bb]ecken|[Aa]quarium))((?:\s.*)?)$/u.exec(label);
  return found ? { adjective: found[1] ?? null, noun: found[2]!, tail: found[3]! } : { adjective: null, noun: 'Becken', tail: ` „${label}“` };
}

/** A tank without an article: `Mattenbecken`, `offenes Becken`, `Becken „Matte“`. */
export function tankName(label: string): string {
  const { adjective, noun: head, tail } = tankLabel(label);
  return `${adjective === null ? '' : `${adjective}es `}${head}${tail}`;
}

/** A tank in a case: `das offene Becken`, `dem Mattenbecken`, `des Beckens „Matte“`. */
export function theTank(label: string, wanted: Case): string {
  const { adjective, noun: head, tail } = tankLabel(label);
  return withArticle(noun(head, 'das', { tail, ...(adjective === null ? {} : { adjective }) }), wanted);
}

/** `im Mattenbecken`, `im Becken „offen“`. */
export function inTank(label: string): string {
  return theTank(label, 'dative').replace(/^dem /u, 'im ');
}

/** `a`, `a und b`, `a, b und c`. */
export function listed<V>(items: readonly Slot<V>[], word = 'und'): Pieces<V> {
  return items.flatMap((item, index) => {
    const before = index === 0 ? [] : [index === items.length - 1 ? ` ${word} ` : ', '];
    return [...before, ...asPieces(item)];
  });
}

/** The same for plain text. */
export function listedText(items: readonly string[], word = 'und'): string {
  return items.length <= 1 ? items.join('') : `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)!}`;
}

const words = ['kein', 'ein', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun', 'zehn', 'elf', 'zwölf'];

/** From two to twelve as a word; one has a gender and is left to the sentence. */
export function numberWord(count: number): string {
  return Number.isInteger(count) && count >= 1 && count <= 12 ? words[count]! : String(count);
}

/** `counted(2, 'ein Messwert', 'Messwerte')`: `zwei Messwerte`. `one` carries its article in the case that is wanted. */
export function counted(count: number, one: string, many: string): string {
  return count === 1 ? one : `${numberWord(count)} ${many}`;
}

/** `einmal`, `zweimal`, `17-mal`. */
export function times(count: number): string {
  return Number.isInteger(count) && count >= 1 && count <= 12 ? `${words[count]!}mal` : `${count}-mal`;
}

export function capital(text: string): string {
  const first = text.search(/\S/);
  if (first < 0 || /^pH\b/.test(text.slice(first))) return text;
  return text.slice(0, first) + text.charAt(first).toUpperCase() + text.slice(first + 1);
}

/** Capital letter at the start of a row of pieces. */
export function capitalPieces<V>(pieces: Pieces<V>): Pieces<V> {
  const [first, ...rest] = pieces;
  return typeof first === 'string' ? [capital(first), ...rest] : pieces;
}

const months = ['Januar', 'Februar', 'März', 'April', 'Mai', 'Juni', 'Juli', 'August', 'September', 'Oktober', 'November', 'Dezember'];

/** `14. März 2026`; with `year` false, `14. März`. */
export function dateWords(date: { readonly year: number; readonly month: number; readonly day: number }, year = true): string {
  return `${date.day}. ${months[date.month - 1]}${year ? ` ${date.year}` : ''}`;
}

/** How often, of a length as `formatDuration` writes it: `stündlich`, `täglich`, `alle 30 min`. */
export function everyWords(length: string): string {
  const adverbs: Readonly<Record<string, string>> = { '1 s': 'sekündlich', '1 min': 'minütlich', '1 h': 'stündlich', '1 d': 'täglich', '24 h': 'täglich' };
  return adverbs[length] ?? `alle ${length}`;
}
