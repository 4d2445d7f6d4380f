// What an interval comes from, as sentences tell it: the instruments (with repeats taken at once), the scatter of readings, or both.
export type IntervalSource = 'instruments' | 'scatter' | 'both';
