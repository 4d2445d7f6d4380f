// A line above the blocks that matter while working: the plan's problems and the claims, and how far the readings are.
// The same lines stand there whether the text is whole or not, so that nothing moves; what one says is made when it is seen.
import * as vscode from 'vscode';
import type { Note } from '../experiment/types.ts';
import type { Block } from '../note/syntax.ts';
import { formatClock } from '../time/text.ts';
import { slotWords } from '../words/slots.ts';
import type { CalmNotes } from './calm.ts';
import { claimCounts, problemCounts, slotCounts } from './counts.ts';
import { interfaceLanguage } from './language.ts';
import type { NoteStore } from './noteStore.ts';
import { noteSelector } from './selector.ts';
import { claimsSentence, problemsSentence } from './sentences.ts';
import type { Severities } from './severities.ts';

/** What a line says; null while the text cannot be read so far. */
type Say = () => string | null;

class NoteLens extends vscode.CodeLens {
  readonly key: string;
  readonly say: Say;

  constructor(range: vscode.Range, key: string, say: Say) {
    super(range);
    this.key = key;
    this.say = say;
  }
}

export function registerCodeLenses(notes: NoteStore, calm: CalmNotes, severities: Severities): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  const lastSaid = new Map<string, string>();
  return vscode.Disposable.from(
    changed,
    calm.onDidShow(() => changed.fire()),
    vscode.workspace.onDidChangeConfiguration((event) => { if (event.affectsConfiguration('evenwater.codeLens')) changed.fire(); }),
    notes.onDidClose(({ uri }) => { for (const key of lastSaid.keys()) if (key.startsWith(`${uri.toString()} `)) lastSaid.delete(key); }),
    vscode.languages.registerCodeLensProvider(noteSelector, {
      onDidChangeCodeLenses: changed.event,
      provideCodeLenses: async (document, token) => {
        if (!vscode.workspace.getConfiguration('evenwater', document.uri).get<boolean>('codeLens', true)) return [];
        // Until then the editor keeps the lines that it has, where they are.
        const note = await calm.noteInCalm(document, token);
        return note ? note.syntax.blocks.flatMap((block, index) => lensesOf(document, note, block, index, severities)) : [];
      },
      resolveCodeLens: (lens: vscode.CodeLens) => {
        if (!(lens instanceof NoteLens)) return lens;
        const title = lens.say() ?? lastSaid.get(lens.key) ?? '–';
        lastSaid.set(lens.key, title);
        lens.command = { title, command: 'evenwater.check' };
        return lens;
      },
    }),
  );
}

/** Two lines above the plan, one above a table: always as many, whatever is wrong inside. */
function lensesOf(document: vscode.TextDocument, note: Note, block: Block, index: number, severities: Severities): NoteLens[] {
  const says: readonly Say[] = block.word === 'protocol'
    ? [() => vscode.l10n.t('Plan: {0}', problemsSentence(problemCounts(severities.problemsOf(document, note), block.range))), () => claimsText(note)]
    : block.word === 'readings' ? [() => readingsText(note, index)] : [];
  const same = note.syntax.blocks.slice(0, index).filter((each) => each.word === block.word).length;
  const { range } = document.lineAt(block.startLine);
  return says.map((say, place) => new NoteLens(range, `${document.uri.toString()} ${block.word} ${same} ${place}`, say));
}

function claimsText(note: Note): string | null {
  return note.protocol ? capital(claimsSentence(claimCounts(note))) : null;
}

function readingsText(note: Note, index: number): string | null {
  const table = note.tables.find((each) => each.block === index);
  if (!table || !note.protocol) return null;
  const isLast = table === note.tables.at(-1);
  const slots = isLast ? slotCounts(note.protocol, note.tables) : null;
  if (!slots) return table.rows.length === 1 ? vscode.l10n.t('1 row') : vscode.l10n.t('{0} rows', table.rows.length);
  const words = slotWords(interfaceLanguage);
  const { missed, late, early, next } = slots;
  return [
    vscode.l10n.t('{0} of {1} slots read', slots.read, slots.planned), ...(missed > 0 ? [words.missedCount(missed)] : []),
    ...(late > 0 ? [words.lateCount(late)] : []), ...(early > 0 ? [words.earlyCount(early)] : []),
    ...(next === null ? [] : [vscode.l10n.t('next {0}', formatClock(next, note.protocol.zone))]),
  ].join(' · ');
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
