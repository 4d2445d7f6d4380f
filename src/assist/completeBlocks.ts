// Suggestions of whole forms: block words behind a fence with a skeleton of the block, forms of claims behind a brace.
import { showValue } from '../formula/show.ts';
import { blockWords, type BlockWord } from '../note/syntax.ts';
import { placesOf } from '../readings/heads.ts';
import { formatClock } from '../time/text.ts';
import type { AskedNote } from './asking.ts';
import type { ClaimPlace } from './formulaPlace.ts';
import type { FencePlace } from './place.ts';
import { snippetText, stop, type Suggestion } from './types.ts';

/** Block words at a fence; where the fence is not closed, with a skeleton and the closing fence. */
export function completeFence(note: AskedNote, place: FencePlace, offset: number): Suggestion[] {
  const typed = note.text.slice(place.infoStart, offset);
  if (/\s/u.test(typed.trimStart()) || offset < place.infoStart) return [];
  const range = { start: offset - typed.trimStart().length, end: offset };
  const hasPlan = note.syntax.blocks.some((block) => block.word === 'protocol' && (offset < block.range.start || offset > block.infoRange.end + 1));
  return blockWords.filter((word) => word !== 'protocol' || !hasPlan).map((word, index) => {
    const body = skeleton(note, word);
    const lines = [word, ...body, place.marks];
    return {
      label: word, kind: 'block', insert: place.closed ? word : lines.join(`\n${snippetText(place.linePrefix)}`), snippet: !place.closed, range, detail: '',
      documentation: `${note.asking.words.blockHelp[word]}\n\n\`\`\`text\n${plain(body).join('\n')}\n\`\`\``, sort: String(index), goesOn: word === 'readings' || word === 'figure',
    };
  });
}

/** A snippet's lines as they look before anything is typed. */
const plain = (lines: readonly string[]): string[] => lines.map((line) => line.replace(/\$\{\d+[:|]((?:[^}\\]|\\.)*)\}/gu, '$1').replace(/\$\d/gu, '').replace(/\\(.)/gu, '$1'));

function skeleton(note: AskedNote, word: BlockWord): string[] {
  const { protocol, asking: { words: { fillers } } } = note;
  switch (word) {
    case 'protocol': return [
      `question: ${stop(1, fillers.question)}`, 'place:', `  name: ${stop(2, fillers.place)}`, `  time zone: ${stop(3, 'Europe/Amsterdam')}`,
      'tanks:', `  ${stop(4, 'mat')}:`, '    role: treatment', `    size: ${stop(5, '50 x 30 x 32 cm')}`, `    plants: ${stop(6, fillers.plants)}`,
      `  ${stop(7, 'open')}:`, '    role: control', `    size: ${stop(8, '50 x 30 x 32 cm')}`, `    plants: ${fillers.plantless}`, 'differs: [plants]',
      'schedule:', `  start: ${stop(9, '2026-03-14 20:00')}`, `  end: ${stop(10, '2026-03-15 10:00')}`, `  every: ${stop(11, '30 min')}`,
      'measure:', `  DO: {what: dissolved oxygen, unit: mg/L, with: ${stop(12, fillers.instrument)}, accuracy: ${stop(13, '0.1 mg/L')}}`, '$0',
    ];
    case 'readings': {
      if (!protocol) return [`time  ${stop(1, fillers.series)}`, '$0'];
      const heads = [...protocol.tanks.map((tank) => tank.id), 'room'].flatMap((place) => protocol.measure
        .filter((measure) => placesOf(measure, protocol).includes(place)).map((measure) => `${place}.${measure.id}`));
      const last = note.dataset.times.at(-1);
      const next = protocol.schedule?.slots.find((slot) => last === undefined || slot > last);
      return [`time  ${heads.map(snippetText).join('  ')}`, next === undefined ? '$0' : `${formatClock(next, protocol.zone)}  $0`];
    }
    case 'values': return [`${stop(1, fillers.name)} = ${stop(2, fillers.formula)}`];
    case 'figure': {
      const quantity = protocol?.measure.find((measure) => !measure.scale)?.id ?? 'DO';
      return [`show: [${stop(1, quantity)}]`];
    }
    case 'summary': {
      const quantity = protocol?.measure.find((measure) => !measure.scale)?.id ?? 'DO';
      return [`of: [${stop(1, quantity)}]`, `rows: ${protocol && protocol.phases.length > 0 ? '${2|phases,tanks|}' : '${2|tanks,phases|}'}`, `show: [${stop(3, 'min, mean, max')}]`];
    }
    default: return [];
  }
}

/** Forms of claims behind a `{`. */
export function completeClaim(note: AskedNote, claim: ClaimPlace, offset: number): Suggestion[] {
  if (claim.words.trim() !== '' && !/^\s*\??\s*$/u.test(claim.words)) return [];
  const closing = note.text[offset] === '}';
  const range = { start: claim.open + 1, end: offset + (closing ? 1 : 0) };
  const typed = note.text.slice(claim.open + 1, offset);
  const form = (label: string, insert: string, documentation: string, sort: string, detail = ''): Suggestion => (
    { label, filter: `${typed}${label}`, kind: 'claim', insert: `${insert}}`, snippet: true, range, detail, documentation, sort, goesOn: true });
  const { claimHelp, fillers } = note.asking.words;
  const forms = [
    form('? = …', '? = $0', claimHelp.fill, '0'),
    form('… = …', `${stop(1, fillers.number)} = $0`, claimHelp.value, '1'),
    form('… if …', `${stop(1, fillers.words)} if $0`, claimHelp.condition, '2'),
    form('… = stated "…"', `${stop(1, fillers.words)} = stated "${stop(2, fillers.source)}"$0`, claimHelp.stated, '3'),
  ];
  const named = note.results.flatMap((result, index) => {
    const { value } = result.evaluation;
    if (!value) return [];
    const shown = showValue(value, note.context);
    return [form(`${shown} = ${result.name}`, `${snippetText(shown)} = ${result.name}$0`, `\`${result.formula.text.trim()}\``, `5${String(index).padStart(3, '0')}`, shown)];
  });
  return [...forms, ...named].map((each, index) => (index < forms.length ? each : { ...each, goesOn: false }));
}
