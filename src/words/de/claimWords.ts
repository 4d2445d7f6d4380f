// The German words that claims are read by: `etwa`, `mehr als`, months, ranges, causes.
import type { ClaimWords } from '../en/claimWords.ts';
import { numberWordAt, wordOf } from './numberWords.ts';
import { literal } from '../literal.ts';

const monthNames = ['Januar', 'Februar', 'März', 'April', 'Mai', 'Juni', 'Juli', 'August', 'September', 'Oktober', 'November', 'Dezember'];
/** `Jan.`, `Jänner`, `Mrz` and the full names. */
const forms = ['jan(?:uar|\\.)?|jänner', 'feb(?:ruar|\\.)?|feber', 'märz|mrz\\.?|mär\\.?', 'apr(?:il|\\.)?', 'mai', 'juni?\\.?', 'juli?\\.?', 'aug(?:ust|\\.)?', 'sept?(?:ember|\\.)?', 'okt(?:ober|\\.)?', 'nov(?:ember|\\.)?', 'dez(?:ember|\\.)?'];
const months = forms.join('|');

export const claimWords: ClaimWords = {
  approximate: ['etwa', 'ungefähr', 'rund', 'fast', 'knapp', 'beinahe', 'nahezu', 'circa', 'zirka', 'ca\\.?', 'um die', 'gut'],
  between: '(?:\\s+(?:bei|um|auf))?(?:\\s+(?:der|die|das|den|dem))?\\s+',
  bounds: [
    [/(?:(?<![\p{L}\p{N}])(?:mindestens|wenigstens|nicht weniger als|nicht unter)\s+|≥\s*)$/iu, 'at-least'],
    [/(?:(?<![\p{L}\p{N}])(?:höchstens|maximal|nicht mehr als|nicht über)\s+|≤\s*)$/iu, 'at-most'],
    [/(?:(?<![\p{L}\p{N}])(?:mehr als|größer als|höher als|oberhalb von|länger als|später als)\s+|>\s*)$/iu, 'above'],
    [/(?:(?<![\p{L}\p{N}])(?:weniger als|kleiner als|niedriger als|tiefer als|unter|unterhalb von|kürzer als|früher als)\s+|<\s*)$/iu, 'below'],
  ],
  numberWordAt, wordOf,
  andHalf: /(?!)/u,
  counts: /^\s+(?:von|mal)\b/i,

  months,
  monthOf: (name) => forms.findIndex((form) => new RegExp(`^(?:${form})$`, 'iu').test(name)) + 1,
  monthNames,
  dayMonth: new RegExp(`(\\d{1,2})\\.?\\s+(${months})(?:\\s+(\\d{4}))?(?![\\p{L}\\p{N}])`, 'iuy'),
  monthDay: null,
  dottedDate: /(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})(?![\p{L}\p{N}])/uy,
  dateLike: (day, month, year) => `${day}. ${month}${year === null ? '' : ` ${year}`}`,
  hourWord: /(\d{1,2})\s+Uhr\s+(\d{2})(?![.,]?\d)(?!\s*(?:[°%‰µ/]|(?:mg|g|h|min|hPa|l|L|Grad|Prozent)(?!\p{L})))|(\d{1,2})(?=\s+Uhr(?!\p{L}))/uy,
  afterClock: /^\s+Uhr(?![\p{L}])/u,
  noon: /(mittags?|mitternacht)(?![\p{L}\p{N}])/iuy,
  midnight: /mitternacht/i,

  perHour: '(?:pro|je)\\s+Stunde|pro\\s+Std\\.?|in\\s+der\\s+Stunde|die\\s+Stunde|stündlich',
  notPerHour: 'nach|vor|später|früher|danach|davor|lang',
  percentagePoints: 'Prozentpunkt(?:e|en)?',
  joins: '–|—|-|−|bis|bis zu',
  and: '(?:und\\s+)?',
  betweenBefore: /(?:^|[^\p{L}])zwischen\s*$/iu,
  listed: /^\s*(?:,|und|oder|&|,\s*und|dann|,\s*dann|bzw\.)\s*$/,
  andAlone: /^\s*und\s*$/,
  pHBefore: /(?<![\p{L}\p{N}])pH(?:-Werte?s?)?(?:\s+(?:von|war|ist|bei|auf|um|etwa|rund|betrug|lag|der|dort))*\s*[~≈]?\s*$/u,
  notUnits: /^(?:in|a|an|am|ab|d|h|s)$/,
  links: new Set(('ab aber allein als am an auf aus bei bis da dann darauf das dem den denn der des die doch dort durch er es für gegen gegenüber ging hat hatte hier ihr im in ins ist ja je '
    + 'mehr mit nach noch nun nur ob oder ohne pro schon sein seit sich sie so sobald sodass stand über um und unter von vor war waren weil weniger wenn wie wieder wo wurde während zu zum zur zwischen').split(' ')),

  causal: /(?<![\p{L}])(?:weil|wegen|durch(?!\s+(?:die\s+(?:Nacht|Dunkelheit|Dunkelphase|Oberfläche|Wand)|den\s+(?:Tag|Abend)|das\s+Glas))|aufgrund|auf Grund|dank|deshalb|deswegen|daher|darum|dadurch|somit|folglich|infolge(?:dessen)?|also(?!\s+(?:[-−~]?\d|(?:mit|ohne|um|von|auf|bei|etwa|rund|knapp|fast)(?![\p{L}])))|verursacht(?:e|en)?|bewirkt(?:e|en)?|bestätigt(?:e|en)?|beweist|bewies(?:en)?|belegt(?:e|en)?|zeigt(?:e|en)?, dass)(?![\p{L}])/giu,
  hedged: /(?<![\p{L}])(?:vielleicht|möglicherweise|womöglich|vermutlich|wohl|könnten?|kann|mag|mögen|dürfte|nicht|kein(?:e[mnrs]?)?|weder|noch|ob)(?![\p{L}])[^.!?]{0,60}$/iu,

  directions: /(?<![\p{L}])(?:(?<up>stieg|stiegen|steigt|gestiegen|angestiegen|anstieg|zunahme|zugenommen|gewann|gewonnen|zuwachs|wuchs|gewachsen|erwärmte|erholte)|fiel|fielen|fällt|gefallen|abfall|verlor|verloren|verliert|verlust|abnahme|abgenommen|sank|sanken|gesunken|kühlte|rückgang)(?![\p{L}])/giu,
  directionNouns: /^\s+(?:(?<up>gewonnen|gestiegen|angestiegen|zugenommen|mehr geworden|anstieg|zunahme|zuwachs)|gefallen|verloren|gesunken|abgenommen|verlust|abnahme|rückgang|abfall)(?![\p{L}])/iu,
  othersNamed: /(?<![\p{L}])(?:als|wie|anders|mit|neben|gegen|gegenüber|während|beide[nrs]?|andere[nmrs]?|seine[nmrs]?|dessen|deren)(?![\p{L}])/iu,
  nameForms: (name: string): RegExp => {
    const forms = name.trim().split(/\s+/u).map((word) => `${literal(word.replace(/(?<=\p{L}{4})(?:e[rsnm]?|s)$/u, ''))}(?:e[rsnm]?|n|s)?`);
    return new RegExp(`(?<![\\p{L}\\p{N}-])${forms.join('\\s+')}(?![\\p{L}\\p{N}-])`, 'iu');
  },

  multiples: /(?<![\p{L}\p{N}])(?:(?:doppelt|halb|dreimal|viermal|fünfmal|zehnmal|\d+(?:,\d+)?\s*(?:-?mal|×|x))\s+(?:so\s+(?:viel|schnell|hoch|stark|tief|lang|groß|steil)|schneller|langsamer|höher|tiefer|mehr|weniger)|(?:zwei|drei|vier|fünf|sechs|zehn|\d+(?:,\d+)?-?)fache[nsr]?|verdoppelte?n?|verdreifachte?n?|vervierfachte?n?|halbierte?n?|(?:die\s+Hälfte|ein\s+(?:Drittel|Viertel|Fünftel|Zehntel))\s+(?:seines|ihres|des\s+Sauerstoffs))(?![\p{L}])/giu,
  unitAhead: /Prozent|%|gramm|Grad|Liter|Pascal|°|mg|Kelvin/iu,

  truths: ['nicht wahr', 'wahr'],
  span: (from, to) => `${from} bis ${to}`,
};
