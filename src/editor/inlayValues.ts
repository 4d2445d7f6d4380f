// At line ends: the computed value behind each `?`, and on wish the steps of a row of readings. Nothing in the line moves.
import * as vscode from 'vscode';
import { stepsAtLineEnds, valuesAtLineEnds, type KnownValues, type RowOfSteps, type ValueAtLineEnd } from '../assist/lineEnds.ts';
import type { CalmNotes } from './calm.ts';
import type { NoteStore } from './noteStore.ts';
import { rangeOf, toRange } from './places.ts';
import { noteSelector } from './selector.ts';

/** A hint whose explanation is made when somebody points at it. */
class LineEndHint extends vscode.InlayHint {
  readonly explain: (hint: vscode.InlayHint) => void;

  constructor(position: vscode.Position, label: string, explain: (hint: vscode.InlayHint) => void) {
    super(position, label);
    this.paddingLeft = true;
    this.explain = explain;
  }
}

export function registerInlayValues(notes: NoteStore, calm: CalmNotes): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  const known = new Map<string, KnownValues>();
  const knownFor = ({ uri }: vscode.TextDocument): KnownValues => {
    const key = uri.toString();
    const values = known.get(key) ?? new Map<string, string>();
    known.set(key, values);
    return values;
  };
  return vscode.Disposable.from(
    changed,
    calm.onDidShow(() => changed.fire()),
    notes.onDidClose(({ uri }) => known.delete(uri.toString())),
    vscode.workspace.onDidChangeConfiguration((event) => { if (event.affectsConfiguration('evenwater.stepsBesideReadings')) changed.fire(); }),
    vscode.languages.registerInlayHintsProvider(noteSelector, {
      onDidChangeInlayHints: changed.event,
      provideInlayHints: async (document, visible, token) => {
        const note = await calm.noteInCalm(document, token);
        if (!note) return [];
        const wantsSteps = vscode.workspace.getConfiguration('evenwater', document.uri).get<boolean>('stepsBesideReadings', false);
        return [
          ...valuesAtLineEnds(note, knownFor(document)).map(({ at, parts }) => valueHint(document, at, parts)),
          ...(wantsSteps ? stepsAtLineEnds(note).map((row) => stepHint(document, row)) : []),
        ].filter((hint) => visible.contains(hint.position));
      },
      resolveInlayHint: (hint) => {
        if (hint instanceof LineEndHint) hint.explain(hint);
        return hint;
      },
    }),
  );
}

function valueHint(document: vscode.TextDocument, at: number, parts: readonly ValueAtLineEnd[]): LineEndHint {
  return new LineEndHint(document.positionAt(at), `= ${parts.map((part) => part.value).join(' · ')}`, (hint) => {
    const text = new vscode.MarkdownString();
    for (const { claim, value, kept } of parts) {
      text.appendCodeblock(`${value} = ${claim.syntax.formula.text.trim()}`, 'text');
      if (kept) text.appendText(vscode.l10n.t('As last computed: the plan or the readings cannot be read at the moment.')).appendMarkdown('\n\n');
    }
    hint.tooltip = text;
    // What is only remembered is not written into the note.
    const sure = parts.filter((part) => !part.kept);
    if (sure.length > 0) hint.textEdits = sure.map(({ claim, value }) => new vscode.TextEdit(toRange(document, rangeOf(claim.syntax.words)), value));
  });
}

function stepHint(document: vscode.TextDocument, { at, label, parts }: RowOfSteps): LineEndHint {
  return new LineEndHint(document.positionAt(at), `Δ ${label}`, (hint) => {
    const steps = parts.filter((step) => step.text !== '').map((step) => `${step.column} ${step.text} ${step.unit}`.trimEnd());
    hint.tooltip = new vscode.MarkdownString().appendText(vscode.l10n.t('Steps since the row above: {0}', steps.join(', ')));
  });
}
