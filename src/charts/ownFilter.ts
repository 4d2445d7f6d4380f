// What the filters at the head of an author's own specification keep: caption, colours and axis titles then speak of what is drawn.
type Json = Readonly<Record<string, unknown>>;

function passes(predicate: Json, value: unknown): boolean {
  const bound = (key: string, holds: (limit: number) => boolean): boolean => predicate[key] === undefined || (typeof value === 'number' && holds(Number(predicate[key])));
  const number = Number(value);
  const [low, high] = (predicate['range'] as readonly number[] | undefined) ?? [];
  const listed = predicate['oneOf'] as readonly unknown[] | undefined;
  return (predicate['equal'] === undefined || predicate['equal'] === value) && (listed === undefined || listed.includes(value))
    && bound('lt', (limit) => number < limit) && bound('lte', (limit) => number <= limit) && bound('gt', (limit) => number > limit) && bound('gte', (limit) => number >= limit)
    && bound('range', () => number >= low! && number <= high!)
    && (predicate['valid'] === undefined || predicate['valid'] === (value !== null && !Number.isNaN(value)));
}

/** The rows that are left behind the filters that come before any other transform; a field that is no field of the rows filters nothing. */
export function keptRows<Row extends Json>(rows: readonly Row[], transforms: readonly Json[]): readonly Row[] {
  const first = transforms.findIndex((each) => each['filter'] === undefined);
  const filters = transforms.slice(0, first < 0 ? transforms.length : first).map((each) => each['filter'] as Json);
  return rows.filter((row) => filters.every((predicate) => {
    const field = String(predicate['field']);
    return !Object.hasOwn(row, field) || passes(predicate, row[field]);
  }));
}
