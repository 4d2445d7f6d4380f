// German text cut into its sentences: the point of an ordinal (`14. März`) or of a short form (`z. B.`) ends none; after a number, a letter is a unit (`3 L.`).
const ordinal = /(?:^|\s|[(„])\d{1,2}\.$/u;
const month = /^(?:Januar|Februar|März|April|Mai|Juni|Juli|August|September|Oktober|November|Dezember)\b/u;
const shortForm = /(?:^|(?<!\d)\s|[(„])(?:\p{L}|ca|bzw|vgl|usw|etc|inkl|Nr|Abb|Tab|Dr)\.$/u;

export function sentencesOf(text: string): string[] {
  const parts = text.replace(/\s+/g, ' ').trim().split(/(?<=[^\s.][.!?][“”"')‘]*)\s+(?=[\p{Lu}„“"(])/u).filter((each) => each !== '');
  return parts.reduce<string[]>((sentences, part) => {
    const last = sentences.at(-1);
    if (last !== undefined && ((ordinal.test(last) && month.test(part)) || shortForm.test(last))) sentences[sentences.length - 1] = `${last} ${part}`;
    else sentences.push(part);
    return sentences;
  }, []);
}
