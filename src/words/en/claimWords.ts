// The English words that claims are read by: `about`, `more than`, months, ranges, causes.
import { numberWordAt, wordOf } from './numberWords.ts';
import { literal } from '../literal.ts';

const months = ['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december'];
const monthNames = months.map((name) => (name.length > 3 ? `${name.slice(0, 3)}(?:${name.slice(3)}|\\.)?` : name)).join('|');

export type Bound = 'above' | 'at-least' | 'below' | 'at-most';

export const claimWords = {
  /** Before a number: 5 % are allowed. What may stand between such a word and the number is `between`. */
  approximate: ['about', 'around', 'nearly', 'almost', 'roughly', 'approximately', 'approx\\.?', 'circa', 'ca\\.?', 'close to', 'some'] as readonly string[],
  between: '(?:\\s+(?:at|by))?(?:\\s+(?:an?|the))?\\s+',
  /** Before a number: the value must lie on that side. */
  bounds: [
    [/(?:(?<![\p{L}\p{N}])(?:at least|no less than|not less than|no fewer than)\s+|≥\s*)$/iu, 'at-least'],
    [/(?:(?<![\p{L}\p{N}])(?:at most|no more than|not more than)\s+|≤\s*)$/iu, 'at-most'],
    [/(?:(?<![\p{L}\p{N}])(?:more than|greater than|higher than|above|exceeding|just over|well over)\s+|>\s*)$/iu, 'above'],
    [/(?:(?<![\p{L}\p{N}])(?:less than|fewer than|lower than|smaller than|under|below|just under|well under)\s+|<\s*)$/iu, 'below'],
  ] as readonly (readonly [RegExp, Bound])[],
  numberWordAt, wordOf,
  /** `two hours and a half`. */
  andHalf: /^\s+and\s+a\s+half(?![\p{L}\p{N}])/iu,
  /** After a number word that counts instead of measuring. */
  counts: /^\s+(?:of|times)\b/i,

  months: monthNames,
  monthOf: (name: string): number => months.findIndex((each) => each.startsWith(name.slice(0, 3).toLowerCase())) + 1,
  monthNames: ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'] as readonly string[],
  /** A date in words, by day, month, year; sticky. */
  dayMonth: new RegExp(`(\\d{1,2})(?:st|nd|rd|th)?\\s+(?:of\\s+)?(${monthNames})(?:,?\\s+(\\d{4}))?(?![\\p{L}\\p{N}])`, 'iuy'),
  monthDay: new RegExp(`(${monthNames})\\s+(\\d{1,2})(?:st|nd|rd|th)?(?:,?\\s+(\\d{4}))?(?![\\p{L}\\p{N}:.])`, 'iuy') as RegExp | null,
  /** `15.03.2026`, where that can mean one day alone. */
  dottedDate: null as RegExp | null,
  dateLike: (day: number, month: string, year: number | null): string => `${day} ${month}${year === null ? '' : ` ${year}`}`,
  /** An hour with its minutes, `6 Uhr 30`, or alone, then as the third group. */
  hourWord: null as RegExp | null,
  /** What may stand behind a clock time before its `±`. */
  afterClock: null as RegExp | null,
  noon: /(noon|midday|midnight)(?![\p{L}\p{N}])/iuy,
  midnight: /midnight/i,

  perHour: '(?:per|an|a|each|every)\\s+hour|per\\s+hr?|hourly',
  notPerHour: 'after|before|later|earlier|into|ago|past|from',
  percentagePoints: '(?:percentage|per[\\s\\u00a0\\u202f\\u2009]cent)[- ]points?',
  joins: '–|—|-|−|to|until|till|and up to|bis|tot|à|a|al',
  and: '(?:and\\s+)?',
  betweenBefore: /(?:^|[^\p{L}])between\s*$/iu,
  listed: /^\s*(?:,|and|or|&|,\s*and|then|,\s*then)\s*$/,
  andAlone: /^\s*and\s*$/,
  pHBefore: /(?<![\p{L}\p{N}])pH(?:\s+(?:of|was|is|at|to|from|about|around))*\s*[~≈]?\s*$/u,
  /** Words that are units far less often than words. */
  notUnits: /^(?:in|a|as|at|am|pm)$/i,
  /** Words that may follow a number without a unit. Any other word (`gallons`, `degrees`) may be a unit that is not known. */
  links: new Set(('a after again and as at because before but by during for from had has her his if in instead into is its less more now of off on or over '
    + 'since so than that the their then there this to under until up was were when where which while with within').split(' ')) as ReadonlySet<string>,

  causal: /(?<![\p{L}])(?:due to|because of|because|owing to|thanks to|caused by|causes|caused|as a result of|confirms?|confirmed|proves?|proved|proof that|demonstrates? that|shows? that)(?![\p{L}])|(?:(?<=[,;]\s)|(?<=^\s*))so(?=\s)(?!\s+(?:far|much|many|that|as|long|few|little|on)\b)/giu,
  hedged: /(?<![\p{L}])(?:may|might|could|perhaps|possibly|cannot|can't|not|nor|neither|whether|does not|did not|no)(?![\p{L}])[^.!?]{0,60}$/iu,

  /** Words before a change that say which way it went; the group `up` tells the way. Verbs and nouns that say nothing else. */
  directions: /(?<![\p{L}])(?:(?<up>rose|risen|rises|rise|rising|gained|gains?|gaining|increase[sd]?|increasing|climb(?:s|ed)?|grew|grown|warmed|went up|recovered)|fell|fallen|falls?|falling|lost|loses?|losing|loss|drop(?:s|ped)?|decline[sd]?|declining|decrease[sd]?|decreasing|sank|sunk|cooled|went down|shrank)(?![\p{L}])/giu,
  /** The same right behind the number: `a 2.3 mg/L rise`. */
  directionNouns: /^\s+(?:(?<up>rise|gain|increase|climb)|fall|loss|drop|decline|decrease)(?![\p{L}])/iu,
  /** A clause with such a word speaks of two things: `unlike the clear tank it fell`. */
  othersNamed: /(?<![\p{L}])(?:than|like|unlike|as|with|beside|against|from|towards?|whereas|while|when|both|other|its?|that of)(?![\p{L}])/iu,
  /** A name of the plan in any form that a sentence gives it. */
  nameForms: (name: string): RegExp => new RegExp(`(?<![\\p{L}\\p{N}-])${literal(name.trim()).replace(/\s+/g, '\\s+')}(?![\\p{L}\\p{N}-])`, 'iu'),

  /** A ratio of two readings in words: `twice as fast`, `threefold`, `a third of its oxygen`, `doubled`. */
  multiples: /(?<![\p{L}\p{N}])(?:(?:(?:two|three|four|five|six|seven|eight|nine|ten|\d+(?:\.\d+)?)\s*(?:times|×|x)|twice|thrice|half)\s+(?:as\s+(?:much|fast|high|low|large|steep|strong|long|great|quick)(?:ly)?|the\s+(?:loss|fall|rate|rise|oxygen|speed)|faster|slower|higher|lower|more|less|steeper)|\d+(?:\.\d+)?\s*[×x]\s+(?:as|the|faster|slower|higher|lower|more|less)|(?:two|three|four|five|six|ten|\d+(?:\.\d+)?)-?fold|doubled|tripled|trebled|quadrupled|halved|(?:a|one)\s+(?:half|third|quarter|fifth|tenth)\s+of\s+(?:its|their|the\s+oxygen)|half\s+(?:of\s+)?its)(?![\p{L}])/giu,
  /** A unit that number words may stand before. */
  unitAhead: /per\s?cent|%|gram|degree|litre|liter|pascal|°|mg|kelvin/iu,

  truths: ['not true', 'true'] as readonly [no: string, yes: string],
  span: (from: string, to: string): string => `${from} to ${to}`,
};

export type ClaimWords = typeof claimWords;
