// Proposes what each column of a data file holds, from its head, its unit and the plan. Only a proposal: the keeper says.
import type { MeasuredQuantity, Protocol } from '../../protocol/types.ts';
import { measureByName } from '../../quantities/measures.ts';
import type { Unit } from '../../quantities/types.ts';
import { convertible } from '../../quantities/units.ts';
import { placesOf, planUnit } from '../heads.ts';
import { unitInHead } from './fileUnits.ts';

export interface Proposal { readonly from: string; readonly to: string | null; readonly unit: Unit | null }

const timeWords = /^(?:date\s*[/_-]?\s*time|timestamp|time\s*stamp|time|date|datum|zeit|uhrzeit|tijd|tijdstip|heure|hora|fecha|clock)\b/iu;
const remarkWords = /^(?:remarks?|notes?|comments?|bemerkung(?:en)?|opmerking(?:en)?)$/iu;

/**
 * One proposal a head, in order; each target at most once. Two time heads (date and clock) are joined by `+`. `units` are those that
 * the file prints in a line of their own, head by head.
 */
export function proposeColumns(heads: readonly string[], protocol: Protocol, units: readonly (Unit | null)[] = []): Proposal[] {
  const taken = new Set<string>();
  const times = heads.filter((head) => timeWords.test(head.trim()));
  const date = times.find((head) => /^(?:date|datum|fecha)$/iu.test(head.trim()));
  const clock = times.find((head) => head !== date && /^(?:time|zeit|uhrzeit|tijd|heure|hora|clock)$/iu.test(head.trim()));
  const found: Proposal[] = [];
  const whole = date !== undefined && clock !== undefined ? null : times[0];
  for (const [index, head] of heads.entries()) {
    const unit = unitInHead(head) ?? units[index] ?? null;
    if (head === whole) { found.push({ from: head, to: 'time', unit: null }); continue; }
    if (head === date && clock !== undefined) { found.push({ from: `${date} + ${clock}`, to: 'time', unit: null }); continue; }
    if (head === clock && date !== undefined) continue;
    if (remarkWords.test(head.trim())) { found.push({ from: head, to: 'remark', unit: null }); continue; }
    const target = targetOf(head, unit, protocol, taken);
    if (target) taken.add(target.head);
    const planned = target ? planUnit(target.measure) : null;
    const bracket = target && unit && planned && unit.symbol !== planned.symbol && convertible(unit, planned) ? `[${unit.symbol}]` : '';
    found.push({ from: head, to: target ? target.head + bracket : null, unit });
  }
  return found;
}

function targetOf(head: string, unit: Unit | null, protocol: Protocol, taken: ReadonlySet<string>): { head: string; measure: MeasuredQuantity } | null {
  const words = head.toLowerCase().replace(/[([].*$/u, '').split(/[^\p{L}\p{N}.%-]+/u).filter((word) => word !== '');
  const exact = head.trim().split('[')[0]!;
  let best: { head: string; measure: MeasuredQuantity; score: number } | null = null;
  for (const measure of protocol.measure) {
    const planned = planUnit(measure);
    if (unit && planned && !convertible(unit, planned)) continue;
    const entry = measure.what ? measureByName(measure.what.value) : null;
    const names = [measure.id, ...(entry ? [entry.name, ...entry.alsoCalled] : [])].map((name) => name.toLowerCase());
    const plain = words.join(' ');
    let score = 0;
    for (const name of names) {
      if (plain === name) score = Math.max(score, 4);
      else if (words.includes(name)) score = Math.max(score, 3);
      else if (name.length > 3 && plain.includes(name)) score = Math.max(score, 2.5);
      else if (words.some((word) => word.length > 3 && name.split(' ').some((part) => part.startsWith(word)))) score = Math.max(score, 2);
    }
    if (unit && planned && score > 0) score += 1;
    for (const place of placesOf(measure, protocol)) {
      const target = `${place}.${measure.id}`;
      if (taken.has(target)) continue;
      const tank = protocol.tanks.find((each) => each.id === place);
      const here = words.includes(place.toLowerCase()) || (tank !== undefined && tank.label !== '' && head.toLowerCase().includes(tank.label.toLowerCase()));
      const total = exact === target ? 20 : score === 0 ? 0 : score + (here ? 2 : 0);
      if (total > (best?.score ?? 0)) best = { head: target, measure, score: total };
    }
  }
  return best;
}
