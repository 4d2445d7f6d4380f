// Reads the files of sentences that measure the search: notes, sentences with marked numbers, and the formulas right for them.

export interface MarkedNumber { readonly start: number; readonly end: number; readonly right: readonly string[] }
export interface MarkedSentence { readonly text: string; readonly numbers: readonly MarkedNumber[] }
export interface SentencesOfNote { readonly note: string; readonly sentences: readonly MarkedSentence[] }

/** `note: PATH`, then sentences with `[5.83 mg/L]` and one line `= formula | formula` for each marked number. */
export function readSentences(file: string): SentencesOfNote[] {
  const notes: { note: string; sentences: MarkedSentence[] }[] = [];
  const lines = file.split('\n');
  for (let index = 0; index < lines.length; index += 1) {
    const line = lines[index]!.trim();
    if (line === '' || line.startsWith('#')) continue;
    if (line.startsWith('note: ')) { notes.push({ note: line.slice(6), sentences: [] }); continue; }
    const answers: string[][] = [];
    while (lines[index + 1]?.startsWith('= ')) { index += 1; answers.push(lines[index]!.slice(2).split(' | ')); }
    let text = '';
    const numbers: MarkedNumber[] = [];
    for (const part of line.split(/(\[[^\]]*\])/)) {
      const marked = part.startsWith('[');
      if (marked) numbers.push({ start: text.length, end: text.length + part.length - 2, right: answers[numbers.length] ?? [] });
      text += marked ? part.slice(1, -1) : part;
    }
    notes.at(-1)?.sentences.push({ text, numbers });
  }
  return notes;
}
