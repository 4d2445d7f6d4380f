// How English prose puts units together; their words stand with the units in src/quantities/atoms.ts.

export const unitGrammar = {
  powers: /^(square|cubic) /u,
  square: 'square',
  /** Between a unit and what it is counted by, whatever it is; and words that do so before a time alone. */
  per: /^(?:\s+(per|an?|each|every)\s+|\s?\/\s?)/iu,
  perAny: /^per$/iu,
  /** A time after such a word that is none of a rate: `24.5 °C an hour after the failure`. */
  notRate: /^\s+(?:after|before|later|earlier|into|ago|past|from)(?![\p{L}])/iu,
  reciprocal: /^(?:per|an?|each)\s+/iu,
  /** Counted things that are no unit of their own: 82 beats per minute. */
  counted: /^(?:gill[ -]beats?|beats?|times|drops?)(?![\p{L}\d])/iu,
  basis: /^\s+(?:as\s+(?:(?:nitrate|nitrite|ammonia|ammonium|phosphate)[- ])?(nitrogen|N|phosphorus|P|calcium carbonate|CaCO3|CaCO₃)|of\s+(?:nitrate|nitrite|ammonia|ammonium)[- ](nitrogen|N)|(?:NO[23]|NH[34]|PO4)-(N|P)|(CaCO3|CaCO₃))(?![\p{L}\d])/iu,
  phosphorus: /^p/iu, nitrogen: /^n/iu,
};

export type UnitGrammar = typeof unitGrammar;
