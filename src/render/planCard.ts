// The plan card: what is asked, the tanks side by side with what differs, the schedule drawn to scale, how the tanks were
// made alike, when the run ends early, the instruments, and cautions.
import { nothingRead } from '../experiment/waiting.ts';
import type { EqualiseStep, Protocol, StopRule, Tank } from '../protocol/types.ts';
import { undeclaredDifferences, waterVolume } from '../protocol/derived.ts';
import { formatValue } from '../quantities/format.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { planDeviations, repeatFacts, sealedTime } from '../protocol/planSeal.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { capital, listWords } from '../charts/panels.ts';
import { cautionPreface, cautionsOf } from './cautions.ts';
import { designCheckHtml } from './designCheck.ts';
import { preparationHtml } from './preparation.ts';
import { stopAlarmHtml } from './stopAlarm.ts';
import { computed, dataHtml, formulaWords, type RenderContext } from './context.ts';
import { planningHtml } from './planningFigures.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { tankMark } from './tankMark.ts';
import { scheduleWords, timelineHtml } from './timeline.ts';

const row = (head: Html, cells: readonly Html[], className: string | null = null): Html =>
  element('tr', { class: className }, element('th', { scope: 'row' }, head), ...cells.map((cell) => element('td', {}, cell)));

const heading = (text: string): Html => element('h3', { class: 'evenwater-heading' }, escapeHtml(text));

const plainValue = (value: NumberValue): string => formatValue(value, { uncertainty: false });

/** An accuracy or resolution as instrument makers print it: in the unit of the reading, degrees for a thermometer. */
function instrumentValue(value: NumberValue, unit: Unit | null): string {
  const text = plainValue(value);
  return unit?.kind === 'temperature' && value.unit.kind === 'temperature-difference' && value.unit.factor === unit.factor ? text.replace(value.unit.print, unit.print) : text;
}

/** Keys of a tank in the order in which keepers look for them. */
const order = ['size', 'water depth', 'volume', 'running since', 'plants', 'animals', 'equipment', 'salinity'];
const hidden = new Set(['role', 'group', 'label', 'like', 'facts']);

function factText(tank: Tank, name: string): string | null {
  const fact = tank.facts.get(name);
  return fact ? plainValue(fact.value) : null;
}

function tanksTable(protocol: Protocol, context: RenderContext): Html {
  const { tanks } = protocol;
  const undeclared = new Set(undeclaredDifferences(protocol).map((each) => each.key));
  const declared = new Set(protocol.differs.map((each) => each.value));
  const keys = [...new Set(tanks.flatMap((tank) => [...tank.written.keys()]))].filter((key) => !hidden.has(key));
  keys.sort((a, b) => (order.indexOf(a) < 0 ? 99 : order.indexOf(a)) - (order.indexOf(b) < 0 ? 99 : order.indexOf(b)));
  const rows: Html[] = [];
  const write = (key: string, texts: readonly (string | null)[]): void => {
    const differ = new Set(texts.map((text) => text ?? '')).size > 1;
    const mark = !differ || tanks.length < 2 ? '' : declared.has(key)
      ? element('span', { class: 'evenwater-tag evenwater-planned' }, '≠ as planned')
      : undeclared.has(key) ? element('span', { class: 'evenwater-tag evenwater-undeclared' }, '≠ not declared') : element('span', { class: 'evenwater-tag' }, '≠ differs');
    rows.push(row(`${escapeHtml(capital(key))} ${mark}`, texts.map((text) => (text === null ? element('span', { class: 'evenwater-none' }, '–') : escapeHtml(text))), differ ? 'evenwater-differs' : null));
  };
  for (const key of keys) if (key !== 'volume') write(key, tanks.map((tank) => tank.written.get(key)?.value ?? null));
  const volumes = tanks.map((tank) => {
    const formula = `volume(${tank.id})`;
    const value = computed(context, formula);
    if (value) return dataHtml(value.text, value.machine, formula, formulaWords(context, formula));
    const volume = waterVolume(tank);
    return volume ? escapeHtml(plainValue(volume)) : element('span', { class: 'evenwater-none' }, '–');
  });
  if (volumes.some((each) => !each.includes('evenwater-none'))) rows.splice(Math.min(rows.length, 2), 0, row('Water volume', volumes));
  for (const name of [...new Set(tanks.flatMap((tank) => [...tank.facts.keys()]))]) write(name.replace(/-/g, ' '), tanks.map((tank) => factText(tank, name)));
  const heads = tanks.map((tank) => element('th', { scope: 'col' }, tankMark(tank), escapeHtml(capital(tank.label)),
    element('span', { class: 'evenwater-role' }, escapeHtml([tank.role?.value, tank.group ? `group ${tank.group.value}` : null].filter(Boolean).join(', ')), ' ', element('code', {}, escapeHtml(tank.id)))));
  return element('div', { class: 'evenwater-scroll', role: 'region', tabindex: 0, 'aria-label': 'Tanks side by side' },
    element('table', { class: 'evenwater-tanks' }, element('caption', { class: 'evenwater-hidden' }, 'Tanks side by side'),
      element('thead', {}, element('tr', {}, element('td', {}), ...heads)), element('tbody', {}, ...rows)));
}

function equaliseItem(step: EqualiseStep, index: number, protocol: Protocol, context: RenderContext): Html {
  const check = context.note.equalise.find((each) => each.step === index);
  const accept = step.accept?.text.trim() ?? null;
  let state: Html;
  if (accept === null) {
    state = step.done ? element('span', { class: 'evenwater-kept' }, escapeHtml(`✓ done: ${step.done.value}`)) : element('span', { class: 'evenwater-none' }, 'no condition stated');
  } else {
    const condition = element('span', {}, 'accepted if ', element('code', {}, escapeHtml(accept)));
    if (!check || check.holds === null) state = element('span', { class: 'evenwater-none' }, '○ not checked: no paired reading yet; ', condition);
    else {
      const times = check.checkedAt.length;
      const range = times > 0 ? `${times === 1 ? 'at one paired reading' : `at ${times} paired readings`}, ${formatClock(check.checkedAt[0]!, protocol.zone)}${times > 1 ? ` to ${formatClock(check.checkedAt[times - 1]!, protocol.zone)}` : ''}` : '';
      const worst = check.worst === null ? '' : escapeHtml(`; widest figure ${check.worst}`);
      state = element('span', { class: check.holds ? 'evenwater-kept' : 'evenwater-crossed' }, check.holds ? '✓ held ' : '✕ did not hold ', escapeHtml(range), worst, '; ', condition);
    }
  }
  return element('li', {}, escapeHtml(step.step), step.why ? element('span', { class: 'evenwater-why' }, escapeHtml(` (${step.why})`)) : '',
    element('div', { class: 'evenwater-state' }, state, accept !== null && step.done ? escapeHtml(`; done: ${step.done.value}`) : ''));
}

function stopItem(rule: StopRule, index: number, protocol: Protocol, context: RenderContext): Html {
  const check = context.note.stopRules.find((each) => each.rule === index);
  const crossed = check?.crossedAt ?? [];
  const state = crossed.length > 0
    ? element('span', { class: 'evenwater-crossed' }, escapeHtml(`✕ crossed at ${formatClock(crossed[0]!, protocol.zone)}${crossed.length > 1 ? ` and at ${crossed.length - 1} later reading${crossed.length > 2 ? 's' : ''}` : ''}`))
    : !nothingRead(context.note.dataset) && check && check.evaluation?.value !== null ? element('span', { class: 'evenwater-kept' }, '✓ not crossed at any reading') : element('span', { class: 'evenwater-none' }, '○ no readings yet');
  return element('li', {}, 'If ', element('code', {}, escapeHtml(rule.when?.text.trim() ?? '–')), rule.do ? escapeHtml(`: ${rule.do}`) : '',
    element('div', { class: 'evenwater-state' }, state, rule.outcome ? escapeHtml(`. Outcome: ${rule.outcome.value}`) : ''));
}

function instrumentsTable(protocol: Protocol): Html {
  const heads = ['Quantity', 'Unit', 'Instrument', 'Where', 'Accuracy', 'Resolution', 'Calibrated'];
  const cells = protocol.measure.map((measure) => [
    `${measure.what?.value ?? measure.id} (${measure.id})`, measure.scale ? measure.scale.join(', ') : measure.unit && measure.unit.print !== '1' ? measure.unit.print : '–',
    measure.with?.value ?? '–', measure.in.length > 0 && !protocol.tanks.every((tank) => measure.in.some((place) => place.value === tank.id)) ? measure.in.map((place) => protocol.tanks.find((tank) => tank.id === place.value)?.label ?? place.value).join(', ') : protocol.tanks.length === 2 ? 'both tanks' : protocol.tanks.length === 1 ? 'the tank' : 'all tanks',
    measure.accuracy ? `± ${instrumentValue(measure.accuracy, measure.unit)}` : 'not stated', measure.resolution ? instrumentValue(measure.resolution, measure.unit) : '–', measure.calibrated?.value ?? '–',
  ]);
  const used = heads.map((_, index) => index < 4 || cells.some((each) => each[index] !== '–'));
  const keep = <T>(list: readonly T[]): T[] => list.filter((_, index) => used[index]);
  return element('div', { class: 'evenwater-scroll', role: 'region', tabindex: 0, 'aria-label': 'Measured quantities and instruments' },
    element('table', { class: 'evenwater-instruments' }, element('caption', { class: 'evenwater-hidden' }, 'Measured quantities and instruments'),
      element('thead', {}, element('tr', {}, ...keep(heads).map((head) => element('th', { scope: 'col' }, head)))),
      element('tbody', {}, ...cells.map((each) => element('tr', {}, ...keep(each).map((cell, index) => (index === 0 ? element('th', { scope: 'row' }, escapeHtml(capital(cell))) : element('td', {}, escapeHtml(cell)))))))));
}

/** Reading order, seal and repeat, each in a sentence. */
function planNotes(protocol: Protocol): string[] {
  const notes: string[] = [];
  const label = (id: string): string => protocol.tanks.find((tank) => tank.id === id)?.label ?? id;
  if (protocol.orderRule?.value === 'alternate') notes.push('The tank read first changes from one time to the next.');
  else if (protocol.orderRule) notes.push(`The order of reading is drawn for each time${protocol.seed ? ` from the seed ${protocol.seed.value}` : ''}.`);
  else if (protocol.order.length > 1) notes.push(`Reading order: ${protocol.order.map((tank) => label(tank.value)).join(', ')}.`);
  const sealed = sealedTime(protocol);
  if (sealed !== null) notes.push(`Sealed at ${formatClock(sealed, protocol.zone)} on ${formatDate(sealed, protocol.zone)}${planDeviations(protocol) ? '; changed since, see the design check' : ', unchanged'}.`);
  const repeat = repeatFacts(protocol);
  if (repeat) notes.push(`Repeats ${repeat.name}${repeat.changed?.length === 0 ? ' with the same plan' : ''}.`);
  return notes;
}

/** The plan as a card. */
export function planCardHtml(protocol: Protocol, context: RenderContext): Html {
  const parts: Html[] = [];
  const { place } = protocol;
  if (protocol.question) parts.push(element('p', { class: 'evenwater-question' }, escapeHtml(protocol.question.value)));
  if (protocol.hypothesis) parts.push(element('p', { class: 'evenwater-hypothesis' }, element('strong', {}, 'Expected: '), escapeHtml(protocol.hypothesis.value)));
  const where = [place.name?.value ?? null, place.latitude && place.longitude ? `${Math.abs(place.latitude.value)}° ${place.latitude.value < 0 ? 'S' : 'N'}, ${Math.abs(place.longitude.value)}° ${place.longitude.value < 0 ? 'W' : 'E'}` : null,
    place.elevation ? `${plainValue(place.elevation.value)} above sea level` : null].filter((each): each is string => each !== null);
  if (where.length > 0) parts.push(element('p', { class: 'evenwater-place' }, escapeHtml(`${where.join(' · ')}${place.daylight ? '' : ' · no daylight reaches the tanks'}`)));
  if (protocol.tanks.length > 0) {
    const differs = protocol.differs.map((each) => each.value);
    parts.push(heading('Tanks'), tanksTable(protocol, context));
    if (protocol.tanks.length > 1) parts.push(element('p', { class: 'evenwater-differs-words' }, escapeHtml(differs.length > 0 ? `The tanks are meant to differ in ${listWords(differs, protocol)} only.` : 'The plan does not say in what the tanks are meant to differ.')));
  }
  if (protocol.schedule) {
    const words = scheduleWords(protocol);
    parts.push(heading('Schedule'), element('p', {}, escapeHtml(words)), timelineHtml(protocol, words));
    if (protocol.events.length > 0) {
      parts.push(element('ul', { class: 'evenwater-events' }, ...protocol.events.map((event) => element('li', {}, element('strong', {}, formatClock(event.at, protocol.zone)), ' ', escapeHtml(event.what),
        event.tanks.length > 0 ? escapeHtml(` (${listWords(event.tanks.map((tank) => protocol.tanks.find((each) => each.id === tank.value)?.label ?? tank.value), protocol)})`) : ''))));
    }
  }
  const notes = planNotes(protocol);
  if (notes.length > 0) parts.push(element('p', { class: 'evenwater-place' }, escapeHtml(notes.join(' '))));
  if (protocol.equalise.length > 0) parts.push(heading('Made alike beforehand'), element('ol', { class: 'evenwater-steps' }, ...protocol.equalise.map((step, index) => equaliseItem(step, index, protocol, context))));
  if (protocol.stopRules.length > 0) parts.push(heading('Ended early if'), element('ul', { class: 'evenwater-steps' }, ...protocol.stopRules.map((rule, index) => stopItem(rule, index, protocol, context))));
  if (protocol.measure.length > 0) parts.push(heading('Instruments'), instrumentsTable(protocol), planningHtml(protocol));
  parts.push(heading('Design check'), designCheckHtml(context), preparationHtml(protocol, false));
  const cautions = cautionsOf(protocol);
  if (cautions.length > 0) {
    const list = element('ul', {}, ...cautions.map((each) => element('li', {}, element('strong', {}, escapeHtml(`${each.title}. `)), escapeHtml(each.text))));
    parts.push(element('details', { class: 'evenwater-cautions', open: context.target === 'post' },
      element('summary', {}, element('strong', {}, 'Cautions'), context.target === 'post' ? '' : escapeHtml(`: ${listWords(cautions.map((each) => each.title.charAt(0).toLowerCase() + each.title.slice(1)), protocol)}`)),
      list, element('p', { class: 'evenwater-preface' }, cautionPreface)));
  }
  return element('section', { class: 'evenwater-card evenwater-plan', 'aria-label': 'The plan' }, element('p', { class: 'evenwater-label' }, 'Plan'), stopAlarmHtml(protocol, context), ...parts);
}
