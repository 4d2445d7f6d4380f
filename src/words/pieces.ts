// Sentences with places for values: a sentence is a row of texts and things of the caller's own kind.
/** `V` is what the caller puts into the places, a computed value with its formula, say. */
export type Pieces<V> = readonly (string | V)[];
export type Slot<V> = string | number | V | Pieces<V>;

/** A sentence as a template: `say\`lost ${value} in ${hours} h\``. */
export function say<V>(texts: TemplateStringsArray, ...slots: readonly Slot<V>[]): Pieces<V> {
  const pieces: (string | V)[] = [];
  texts.forEach((text, index) => {
    if (text !== '') pieces.push(text);
    if (index < slots.length) pieces.push(...asPieces(slots[index]!));
  });
  return pieces;
}

export function asPieces<V>(slot: Slot<V>): Pieces<V> {
  if (typeof slot === 'number') return [String(slot)];
  return Array.isArray(slot) ? slot as Pieces<V> : [slot as string | V];
}

export function join<V>(parts: readonly Slot<V>[], between: string): Pieces<V> {
  return parts.flatMap((part, index) => (index === 0 ? [...asPieces(part)] : [between, ...asPieces(part)]));
}

/** True when nothing would be seen. */
export function isEmpty<V>(pieces: Pieces<V>): boolean {
  return pieces.every((piece) => piece === '');
}
