// The word forms by which keepers say what a number is: read by the search for formulas (src/claims/find).
// To teach it a word, add the form to its line. `*` stands for the rest of a word: `unplug*` is unplug, unplugged, unplugging.

/** What a word can say about the number beside it. */
export type Cue =
  | 'lowest' | 'highest' | 'mean' | 'median' | 'deviation' | 'range' | 'fall' | 'rise' | 'perHour' | 'steepest' | 'slope' | 'difference' | 'widest' | 'percent'
  | 'level' | 'first' | 'last' | 'below' | 'above' | 'spent' | 'crossed' | 'duration' | 'later' | 'volume' | 'length' | 'width' | 'height' | 'readings' | 'missed'
  | 'times' | 'margin' | 'each' | 'moment' | 'respiration' | 'exchange' | 'most' | 'share';

export const cueForms: Readonly<Record<Cue, readonly string[]>> = {
  lowest: ['lowest', 'minimum', 'minimal', 'least', 'low point', 'low of', 'all-time low', 'bottom*', 'coldest', 'coolest', 'weakest', 'never fell below', 'never dropped below', 'never went below',
    'never went under', 'never under', 'never below', 'never got colder', 'never fell under', 'never sank below', 'not fall below', 'not drop below', 'stayed above', 'trough', 'worst', 'dip', 'sank as low as', 'as low as',
    'down as far as', 'at its worst', 'poorest'],
  highest: ['highest', 'maximum', 'maximal', 'peak*', 'top*', 'warmest', 'hottest', 'at its best', 'at best', 'never went above', 'never rose above', 'never above', 'never got warmer', 'never exceeded', 'stayed below',
    'stayed under', 'as high as', 'crest', 'record*', 'worst', 'at its worst', 'most', 'summit'],
  mean: ['mean', 'average', 'averaged', 'averages', 'averaging', 'on average', 'averagely'],
  median: ['median', 'middle value'],
  deviation: ['standard deviation', 'scatter*', 'deviat*'],
  range: ['range', 'ranged', 'spread', 'span*', 'swing', 'swung', 'varied', 'vary', 'fluctuat*'],
  fall: ['fell', 'fall', 'falls', 'fallen', 'falling', 'lost', 'lose', 'loses', 'losing', 'loss', 'losses', 'drop*', 'sank', 'sink*', 'sunk', 'declin*', 'decreas*', 'cooled', 'cools', 'cooling', 'gave up', 'given up', 'gone', 'went down',
    'came down', 'pulled down', 'pushed down', 'pulled*down', 'drifted down', 'down by', 'shed', 'slid', 'slipp*', 'used up', 'consumed', 'eaten', 'less by', 'reduc*', 'shrank', 'lower by', 'fewer', 'down', 'disappear*', 'vanish*',
    'depart*', 'cost', 'took'],
  rise: ['rose', 'rise', 'rises', 'risen', 'rising', 'gain*', 'climb*', 'increas*', 'recover*', 'warmed', 'warms', 'warming', 'grew', 'grow*', 'went up', 'came up', 'up by', 'added', 'picked up', 'built up', 'won back', 'rebound*', 'regain*',
    'came back', 'bounced back', 'heated up', 'more by', 'up'],
  perHour: ['per hour', 'an hour', 'each hour', 'every hour', 'hourly', 'rate', 'speed', 'pace', 'a day', 'per day', 'daily'],
  steepest: ['steep*', 'fastest', 'quickest', 'sharpest', 'most rapid*', 'greatest rate', 'hardest'],
  slope: ['slope', 'trend', 'fitted', 'least squares', 'straight line'],
  difference: ['apart', 'differ*', 'gap', 'ahead of', 'behind', 'higher than', 'lower than', 'warmer', 'cooler', 'colder', 'above that', 'below that', 'more than the', 'less than the', 'than the', 'than in', 'than tank', 'compared with',
    'compared to', 'against the', 'lead', 'advantage', 'margin', 'separat*', 'distance', 'between the tanks', 'between the two', 'between them', 'higher in', 'lower in', 'richer', 'poorer', 'lagged', 'trailed', 'divide*'],
  widest: ['largest gap', 'widest', 'biggest gap', 'greatest gap', 'largest difference', 'biggest difference', 'greatest difference', 'furthest apart', 'farthest apart', 'most they differed', 'at most apart', 'largest', 'greatest', 'biggest'],
  percent: ['percent*', 'per cent', 'share', 'fraction', 'proportion'],
  share: ['as much as', 'of what the', 'relative to the', 'as a share'],
  level: ['stood at', 'stood', 'standing at', 'was at', 'were at', 'read', 'reads', 'showed', 'shows', 'showing', 'held', 'holds', 'had', 'was', 'were', 'measured', 'sat at', 'at', 'down to', 'up to', 'back to', 'reached', 'contained', 'with', 'carried',
    'came to', 'left with', 'of'],
  first: ['start*', 'began', 'begin*', 'at first', 'initial*', 'first reading', 'outset', 'to begin with', 'set out', 'opening', 'at the beginning', 'opened'],
  last: ['end', 'ended', 'ends', 'ending', 'final*', 'last reading', 'in the end', 'finish*', 'at last', 'the last', 'closing', 'closed at', 'wound up', 'when we stopped', 'before we stopped'],
  below: ['below', 'under', 'beneath', 'less than', 'lower than', 'short of'],
  above: ['above', 'over', 'beyond', 'more than', 'higher than', 'past'],
  spent: ['spent', 'for a total of', 'stayed', 'remained', 'time below', 'time under', 'time above', 'hours below', 'hours under', 'was below', 'was under', 'were below', 'was above', 'was over', 'stood below', 'in all'],
  crossed: ['went below', 'went under', 'fell below', 'fell under', 'dropped below', 'dropped under', 'dipped below', 'dipped under', 'sank below', 'sank under', 'crossed', 'passed', 'first below', 'first under', 'for the first time', 'rose above',
    'climbed above', 'climbed past', 'broke', 'reached', 'first read below', 'first read under', 'came below', 'got below', 'slipped below', 'slipped under'],
  duration: ['lasted', 'last*', 'long', 'took', 'ran for', 'for', 'length of', 'duration', 'went on for', 'ran', 'dark for', 'off for', 'on for'],
  later: ['later', 'after', 'since', 'before', 'until', 'passed', 'elapsed', 'into'],
  volume: ['volume', 'litre*', 'liter*', 'fill*', 'of water', 'capacity', 'holds'],
  length: ['long', 'length', 'longer side'],
  width: ['wide', 'width', 'deep front to back', 'depth front to back'],
  height: ['high', 'height', 'tall'],
  readings: ['readings', 'measurements', 'samples', 'values', 'times'],
  missed: ['missed', 'missing', 'skipped', 'not taken', 'gaps'],
  times: ['times', 'twice', 'fold', 'factor'],
  margin: ['to spare', 'margin', 'above the limit', 'below the limit', 'over the limit', 'under the limit', 'clear of', 'headroom', 'from the limit', 'short of the'],
  each: ['both', 'each', 'every', 'all tanks', 'either', 'tanks'],
  moment: ['came', 'reached', 'happened', 'at', 'by', 'when', 'occurred', 'fell at', 'until', 'hit', 'was at'],
  respiration: ['respir*', 'breath*', 'consum*'],
  exchange: ['reaeration', 'surface exchange', 'gas exchange', 'exchange rate'],
  most: ['at most', 'most'],
};

/** Ways to name quantities of the closed list besides their own names, by that name. */
export const quantityForms: Readonly<Record<string, readonly string[]>> = {
  'dissolved oxygen': ['oxygen', 'o2', 'do', 'breath*'],
  'oxygen saturation': ['saturat*'],
  'water temperature': ['temperature*', 'warm*', 'cool*', 'cold*', 'heat*', 'water'],
  'air temperature': ['air', 'room', 'temperature*', 'cellar'],
  'air pressure': ['pressure*', 'baromet*'],
  'total ammonia': ['ammonia', 'ammonium', 'tan'],
  nitrite: ['nitrite'],
  nitrate: ['nitrate'],
  pH: ['ph', 'acid*'],
  'carbonate hardness': ['hardness', 'carbonate', 'kh', 'buffer*'],
  'total hardness': ['hardness', 'gh'],
  phosphate: ['phosphate'],
  conductivity: ['conductiv*'],
  salinity: ['salin*', 'salt*'],
  saturation: ['saturat*'],
  deficit: ['deficit', 'lacking', 'short of saturation'],
  'carbon-dioxide': ['carbon dioxide', 'co2', 'co₂', 'gas content'],
  'un-ionised-ammonia': ['un-ionised', 'unionised', 'free ammonia', 'nh3', 'nh₃', 'toxic ammonia'],
};

/** Ways to name the moments and stretches that every plan knows. */
export const momentForms: Readonly<Record<string, readonly string[]>> = {
  'light-off': ['lights-off', 'lights off', 'light off', 'lights out', 'lights went out', 'lights went off', 'lamps off', 'lamps-off', 'lamps out', 'lamps went out', 'lamp went out', 'lamps went off', 'lamp went off', 'lights were switched off', 'lamps were switched off',
    'lights had gone out', 'when the lights went', 'turned off the light*', 'darkness', 'dark fell', 'switched the light* off', 'lamp was off', 'lamps were off'],
  'light-on': ['lights-on', 'lights on', 'light on', 'lamps on', 'lamps-on', 'lamps came on', 'lamp came on', 'lights came on', 'light came on', 'lamps went on', 'lights went on', 'came back on', 'lamps came back', 'lights returned', 'lamps were switched on',
    'lights were switched on', 'before the lamps', 'turned on the light*', 'by morning', 'in the morning', 'next morning', 'morning'],
  sunrise: ['sunrise', 'the sun rose', 'sun came up'],
  sunset: ['sunset', 'the sun set', 'sun went down'],
  dawn: ['dawn', 'first light'],
  dusk: ['dusk', 'nightfall'],
};

export const phaseForms: Readonly<Record<string, readonly string[]>> = {
  dark: ['dark', 'darkness', 'night', 'overnight', 'nightly', 'dark phase', 'dark period', 'over the night', 'during the night', 'all night', 'through the night'],
  baseline: ['baseline', 'before lights-off', 'before the lamps went out', 'beforehand', 'lit evening'],
  recovery: ['recovery', 'recover*', 'after sunrise', 'afterwards'],
};

/** Stretches between lights-off and lights-on, whatever the sun does. */
export const nightForms: readonly string[] = [...phaseForms['dark']!, 'lamps off to lamps on', 'from lights-off to lights-on'];
export const dayForms: readonly string[] = ['while the lights were on', 'while the lamps were on', 'under the lamps', 'under the lights', 'under light', 'in the light', 'with the lights on', 'with the lamps on', 'by day', 'photoperiod', 'lit hours', 'lights were on'];
export const wholeForms: readonly string[] = ['over the run', 'whole run', 'over the whole', 'from first to last', 'first reading to the last', 'start to finish', 'from morning to evening', 'in all', 'altogether', 'all in all', 'over the night', 'through the night',
  'weeks', 'throughout', 'all night', 'all day', 'over the day', 'in total', 'from start to end'];

export const ordinals: Readonly<Record<string, number>> = { first: 1, second: 2, third: 3, fourth: 4, fifth: 5, sixth: 6, seventh: 7, last: -1 };
export const hourNumbers: readonly string[] = ['twelve', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven'];

/** Words of tanks' labels and of events that name nothing by themselves. */
export const emptyWords: readonly string[] = ['tank', 'tanks', 'the', 'with', 'without', 'and', 'a', 'an', 'of', 'in', 'on', 'off', 'at', 'to', 'for', 'no', 'none', 'aquarium', 'water', 'surface', 'cover', 'both', 'cm', 'half', 'was', 'were', 'is', 'by', 'day', 'all', 'from', 'added'];

/** What a sentence without a number can state, for turning it into a claim. */
export type StatementCue = 'steady' | 'faster' | 'slower' | 'more' | 'less' | 'higher' | 'lower' | 'later' | 'earlier' | 'neverBelow' | 'neverAbove' | 'fell' | 'rose' | 'than' | 'always';

export const statementForms: Readonly<Record<StatementCue, readonly string[]>> = {
  steady: ['hardly changed', 'barely changed', 'hardly moved', 'barely moved', 'hardly at all', 'scarcely changed', 'stayed steady', 'stayed the same', 'stayed level', 'remained steady', 'remained constant', 'stayed constant', 'held steady', 'did not change',
    'kept its level', 'hardly fell', 'barely fell', 'hardly rose', 'barely rose', 'hardly dropped', 'barely dropped', 'hardly cooled', 'barely cooled', 'next to nothing', 'unchanged', 'was stable', 'were stable', 'stayed stable', 'no change'],
  faster: ['faster', 'quicker', 'more quickly', 'more rapidly', 'more steeply'],
  slower: ['slower', 'more slowly', 'less quickly', 'less rapidly'],
  more: ['more', 'further', 'farther', 'deeper', 'most'],
  less: ['less', 'not as much', 'not as far'],
  higher: ['higher', 'warmer', 'above', 'richer', 'more oxygen', 'hotter', 'ahead of', 'better'],
  lower: ['lower', 'cooler', 'colder', 'below', 'poorer', 'less oxygen', 'behind', 'under', 'worse', 'beneath'],
  later: ['later'],
  earlier: ['earlier', 'sooner', 'before'],
  neverBelow: ['never fell below', 'never dropped below', 'never went below', 'never went under', 'never sank below', 'never fell under', 'stayed above', 'remained above', 'kept above', 'did not fall below', 'did not drop below', 'always above', 'was always above', 'not fall below', 'stayed over'],
  neverAbove: ['never rose above', 'never went above', 'stayed below', 'remained below', 'kept below', 'did not rise above', 'always below', 'never exceeded', 'never climbed above', 'stayed under'],
  fell: cueForms.fall,
  rose: cueForms.rise,
  than: ['than', 'compared with', 'compared to'],
  always: ['always', 'at every reading', 'all night', 'throughout', 'the whole night', 'at all times', 'all day', 'every time'],
};

/** Everything above, and the small patterns by which sentences are read: a language has all of them. */
export const findWords = {
  cueForms, quantityForms, momentForms, phaseForms, nightForms, dayForms, wholeForms, ordinals, hourNumbers, emptyWords, statementForms,
  /** What may follow an ordinal: `the second night`. */
  ordinalOf: '\\s+(?:dark\\s+)?(?:night|phase|period|evening|day|morning)',
  clauseEnd: /[,;:]\s|(?<![\p{L}])(?:while|whereas|but)(?![\p{L}])|[–—]\s/giu,
  /** Words between a preposition and its number. */
  beforeNumber: /(?:\s|~|≈|^)(?:about|around|nearly|almost|roughly|only|just|some|a|an|as little as|as much as|no more than|ph|barely|hardly|still|another|a mere|exactly)(?=\s|$)/gu,
  /** The preposition before a number, by the English word that the search weighs. */
  prepositions: Object.fromEntries(['by', 'to', 'from', 'at', 'of', 'with', 'than', 'under', 'below', 'above', 'over', 'until', 'for'].map((each) => [each, each])) as Readonly<Record<string, string>>,
  /** An hour in words: a part of an hour, the hour, the part of the day. */
  spoken: new RegExp(`(?<![\\p{L}\\p{N}:.])(half past |quarter past |quarter to )?(${hourNumbers.join('|')}|\\d{1,2})(?: o'clock| o’clock)?(?: (in the morning|in the afternoon|in the evening|at night|sharp)| on (?:the|that|each) [\\p{L} ]*?(?:morning|evening|night))?(?![\\p{L}\\p{N}:%°]|\\.\\d)`, 'gu'),
  spokenMinutes: { 'half past ': 30, 'quarter past ': 15, 'quarter to ': -15 } as Readonly<Record<string, number>>,
  /** Which twelve hours a part of the day means. */
  spokenHours: { 'in the morning': 'first', 'in the afternoon': 'second', 'in the evening': 'second', 'at night': 'both', sharp: 'both' } as Readonly<Record<string, 'first' | 'second' | 'both'>>,
  spokenBefore: /(?<![\p{L}])(at|by|from|to|until|till|before|after|since|between|and|past)\s+$/u,
  spokenNotAfter: /^\s+(?:of|hour|tank|degree|minute|day|week|night|litter|\p{L}+s(?![\p{L}]))/u,
  dayPair: /(?<![\p{N}.:])(\d{1,2})(?:st|nd|rd|th)?\s*(?:and|to|until|till|–|-|or)\s*(?=\d{1,2}(?:st|nd|rd|th)?\s+(?:of\s+)?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec))/gu,
  shortMonths: ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'] as readonly string[],
  /** One length of time without a number, and its hours. */
  single: /(?<![\p{L}])(?:first|last|an|one|that|this|the)\s+(?:full\s+)?(half[\s-]hour|hour|day|week)(?![\p{L}])/gu,
  singleSizes: { 'half-hour': 0.5, 'half hour': 0.5, hour: 1, day: 24, week: 168 } as Readonly<Record<string, number>>,
  singleNotAfter: /(?:per|rate of)\s*$/u,
  first: /(?<![\p{L}])first/u,
  last: /(?<![\p{L}])last/u,
  /** "It" is the tank that the sentence before spoke of last. */
  pronoun: /(?<![\p{L}])its?(?![\p{L}])/u,
  /** What a tank of a role is called besides its label: where it is alone in it, and several together. */
  roles: {
    treatment: { alone: ['treated', 'treatment'], several: ['treatment', 'treatments', 'treated tanks', 'treatment tanks'] },
    control: { alone: ['control', 'untreated'], several: ['control', 'controls', 'control tanks', 'untreated tanks'] },
  } as Readonly<Record<'treatment' | 'control', { readonly alone: readonly string[]; readonly several: readonly string[] }>>,
  room: ['room', 'air', 'barometer', 'cellar', 'pressure'] as readonly string[],
  /** Names the tank that was not named. */
  otherTank: /(?<![\p{L}])(?:the other|its neighbour|the second|other one)(?![\p{L}])|(?<![\p{L}])than(?![\p{L}])/u,
  plural: 's',
  conjunctions: 'and|or|&',
  /** A noun of ours at the end of a label's word, without which it is looked for as well; null where words are not put together so. */
  labelParts: null as RegExp | null,
  /** Endings of word forms. */
  endings: /(?:ing|ed|es|s)$/u,
};
