// What the note knows by name, with a few words about each: series, tanks, quantities, functions.
import type { FunctionEntry } from '../formula/catalogue.ts';
import { signatureLabel } from '../formula/catalogue.ts';
import { instrumentFigure } from '../formula/show.ts';
import { waterVolume } from '../protocol/derived.ts';
import type { MeasuredQuantity, Protocol, Tank } from '../protocol/types.ts';
import { formatValue } from '../quantities/format.ts';
import { placesOf } from '../readings/heads.ts';
import { describedIn } from '../formula/catalogue/described.ts';
import type { AskedNote, Asking } from './asking.ts';

export interface KnownSeries { readonly name: string; readonly detail: string; readonly documentation: string }

/** Every series that a formula of this note can name: readings, means over groups, facts of tanks. */
export function seriesNames(note: AskedNote): KnownSeries[] {
  const { protocol, asking } = note;
  if (!protocol) return [];
  const known = new Map<string, KnownSeries>();
  for (const series of note.dataset.series.values()) {
    const measure = protocol.measure.find((each) => each.id === series.quantity);
    known.set(series.id, { name: series.id, detail: series.unit.print, documentation: seriesHelp(protocol, series.place, measure, asking) });
  }
  for (const measure of protocol.measure) {
    for (const place of placesOf(measure, protocol)) {
      const name = `${place}.${measure.id}`;
      if (!known.has(name)) known.set(name, { name, detail: measure.unit?.print ?? '', documentation: seriesHelp(protocol, place, measure, asking) });
    }
  }
  for (const [group, tanks] of groupsOf(protocol)) {
    for (const measure of protocol.measure) {
      if (measure.id.includes('@') || measure.scale || !placesOf(measure, protocol).some((place) => tanks.some((tank) => tank.id === place))) continue;
      known.set(`${group}.${measure.id}`, { name: `${group}.${measure.id}`, detail: measure.unit?.print ?? '', documentation: `${asking.words.shared.meanOver} ${tanks.map((tank) => tank.label).join(', ')}` });
    }
  }
  for (const tank of protocol.tanks) {
    for (const [fact, value] of tank.facts) known.set(`${tank.id}.${fact}`, { name: `${tank.id}.${fact}`, detail: formatValue(value.value), documentation: tank.label });
  }
  return [...known.values()];
}

/** Groups and roles with their tanks. */
export function groupsOf(protocol: Protocol): Map<string, Tank[]> {
  const groups = new Map<string, Tank[]>();
  for (const tank of protocol.tanks) {
    for (const name of new Set([tank.role?.value, tank.group?.value])) if (name) groups.set(name, [...groups.get(name) ?? [], tank]);
  }
  return groups;
}

function seriesHelp(protocol: Protocol, place: string, measure: MeasuredQuantity | undefined, { words }: Asking): string {
  const tank = protocol.tanks.find((each) => each.id === place)?.label ?? place;
  return measure ? `${words.seriesDetail(measure.what?.value ?? measure.id, tank)}\n\n${instrument(measure)}` : tank;
}

const instrument = (measure: MeasuredQuantity): string => [
  measure.with?.value, measure.accuracy ? `± ${instrumentFigure(measure.accuracy)}` : null,
].filter(Boolean).join(' · ');

export function tankHelp(tank: Tank): string {
  const volume = waterVolume(tank);
  return [[tank.label, tank.role?.value, volume ? formatValue(volume) : null].filter(Boolean).join(' · '), tank.plants?.value, tank.animals?.value].filter(Boolean).join('\n\n');
}

export function quantityHelp(measure: MeasuredQuantity, { words }: Asking): string {
  return [measure.what && words.quantityWord(measure.what.value), instrument(measure)].filter(Boolean).join('\n\n');
}

/** A function's entry as Markdown: signatures, definition, equation, unit, source, example. */
export function functionHelp(english: FunctionEntry, { language, words: { shared } }: Asking): string {
  const entry = describedIn(language, english);
  const labels = entry.signatures.map((signature) => signatureLabel(entry.name, signature)).join('\n');
  return [
    `\`\`\`text\n${labels}\n\`\`\``, entry.definition, entry.equation === '' ? null : `\`${entry.equation}\``, `${shared.gives}: ${entry.units}`,
    `${shared.example}: \`${entry.example.formula}\` → ${entry.example.gives}`, entry.source ? `${shared.source}: ${entry.source}` : null,
  ].filter(Boolean).join('\n\n');
}
