// The plan card: what is asked, the tanks side by side with what differs, the schedule drawn to scale, how the tanks were
// made alike, when the run ends early, the instruments, and cautions.
import { languageOf } from '../words/languages.ts';
import { unitWords } from '../words/units.ts';
import { plannedDate } from '../writing/facts.ts';
import { nothingRead } from '../experiment/waiting.ts';
import type { EqualiseStep, Protocol, StopRule, Tank } from '../protocol/types.ts';
import { undeclaredDifferences, waterVolume } from '../protocol/derived.ts';
import { printedUnit } from '../formula/show.ts';
import { formatValue } from '../quantities/format.ts';
import type { NumberValue } from '../quantities/types.ts';
import { planDeviations, repeatFacts, sealedTime } from '../protocol/planSeal.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { dateWords } from '../charts/chartWords.ts';
import { capital, placeWords, quantityWords } from '../charts/panels.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { cautionWords, type PlanCardWords } from '../words/page.ts';
import { cautionsOf } from './cautions.ts';
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

const plainValue = (value: NumberValue, protocol: Protocol): string => unitWords(formatValue(value, { uncertainty: false, decimalMark: decimalMarkOf(protocol.language) }), languageOf(protocol.language));

/** An accuracy or resolution as instrument makers print it: in degrees for a thermometer. */
const instrumentValue = (value: NumberValue, protocol: Protocol): string => plainValue({ ...value, unit: printedUnit(value.unit) }, protocol);

/** What a plan says with a date at its front, `2026-03-14 in air-saturated water`, with the date in words; other text as typed. */
const withDate = (text: string, protocol: Protocol): string => text.replace(/^\d{4}-\d{2}-\d{2}(?=$|,|\s+\p{L})/u, (date) => plannedDate(date, protocol));

/** Keys of a tank in the order in which keepers look for them. */
const order = ['size', 'water depth', 'volume', 'running since', 'plants', 'animals', 'equipment', 'salinity'];
const hidden = new Set(['role', 'group', 'label', 'like', 'facts']);

function factText(tank: Tank, name: string, protocol: Protocol): string | null {
  const fact = tank.facts.get(name);
  return fact ? plainValue(fact.value, protocol) : null;
}

function tanksTable(protocol: Protocol, context: RenderContext): Html {
  const { tanks } = protocol;
  const words = context.plan;
  const undeclared = new Set(undeclaredDifferences(protocol).map((each) => each.key));
  const declared = new Set(protocol.differs.map((each) => each.value));
  const keys = [...new Set(tanks.flatMap((tank) => [...tank.written.keys()]))].filter((key) => !hidden.has(key) && !tanks.some((tank) => tank.facts.has(key)));
  keys.sort((a, b) => (order.indexOf(a) < 0 ? 99 : order.indexOf(a)) - (order.indexOf(b) < 0 ? 99 : order.indexOf(b)));
  const rows: Html[] = [];
  const write = (key: string, texts: readonly (string | null)[]): void => {
    const differ = new Set(texts.map((text) => text ?? '')).size > 1;
    const mark = !differ || tanks.length < 2 ? '' : declared.has(key)
      ? element('span', { class: 'evenwater-tag evenwater-planned' }, words.asPlanned)
      : undeclared.has(key) ? element('span', { class: 'evenwater-tag evenwater-undeclared' }, words.notDeclared) : element('span', { class: 'evenwater-tag' }, words.differs);
    rows.push(row(`${escapeHtml(capital(words.tankKey(key)))} ${mark}`, texts.map((text) => (text === null ? element('span', { class: 'evenwater-none' }, '–') : escapeHtml(text))), differ ? 'evenwater-differs' : null));
  };
  for (const key of keys) if (key !== 'volume') write(key, tanks.map((tank) => { const said = tank.written.get(key)?.value; return said === undefined ? null : withDate(said, protocol); }));
  const volumes = tanks.map((tank) => {
    const formula = `volume(${tank.id})`;
    const value = computed(context, formula);
    if (value) return dataHtml(value.text, value.machine, formula, formulaWords(context, formula));
    const volume = waterVolume(tank);
    return volume ? escapeHtml(plainValue(volume, protocol)) : element('span', { class: 'evenwater-none' }, '–');
  });
  if (volumes.some((each) => !each.includes('evenwater-none'))) rows.splice(Math.min(rows.length, 2), 0, row(words.waterVolume, volumes));
  for (const name of [...new Set(tanks.flatMap((tank) => [...tank.facts.keys()]))]) write(name.replace(/-/g, ' '), tanks.map((tank) => factText(tank, name, protocol)));
  const heads = tanks.map((tank) => element('th', { scope: 'col' }, tankMark(tank), escapeHtml(capital(tank.label)),
    element('span', { class: 'evenwater-role' }, escapeHtml([tank.role ? words.role(tank.role.value) : null, tank.group ? words.group(tank.group.value) : null].filter(Boolean).join(', ')), ' ', element('code', {}, escapeHtml(tank.id)))));
  return element('div', { class: 'evenwater-scroll', role: 'region', tabindex: 0, 'aria-label': words.sideBySide },
    element('table', { class: 'evenwater-tanks' }, element('caption', { class: 'evenwater-hidden' }, words.sideBySide),
      element('thead', {}, element('tr', {}, element('td', {}), ...heads)), element('tbody', {}, ...rows)));
}

function equaliseItem(step: EqualiseStep, index: number, protocol: Protocol, context: RenderContext): Html {
  const check = context.note.equalise.find((each) => each.step === index);
  const words = context.plan.equalise;
  const accept = step.accept?.text.trim() ?? null;
  let state: Html;
  if (accept === null) {
    state = step.done ? element('span', { class: 'evenwater-kept' }, escapeHtml(words.done(withDate(step.done.value, protocol)))) : element('span', { class: 'evenwater-none' }, words.noCondition);
  } else {
    const condition = element('span', {}, `${words.acceptedIf} `, element('code', {}, escapeHtml(accept)));
    if (!check || check.holds === null) state = element('span', { class: 'evenwater-none' }, words.notChecked, condition);
    else {
      const times = check.checkedAt.length;
      const range = times > 0 ? words.atReadings(times, formatClock(check.checkedAt[0]!, protocol.zone), formatClock(check.checkedAt[times - 1]!, protocol.zone)) : '';
      const worst = check.worst === null ? '' : escapeHtml(words.widest(check.worst));
      state = element('span', { class: check.holds ? 'evenwater-kept' : 'evenwater-crossed' }, `${check.holds ? words.held : words.didNotHold} `, escapeHtml(range), worst, '; ', condition);
    }
  }
  return element('li', {}, escapeHtml(step.step), step.why ? element('span', { class: 'evenwater-why' }, escapeHtml(` (${step.why})`)) : '',
    element('div', { class: 'evenwater-state' }, state, accept !== null && step.done ? escapeHtml(words.alsoDone(withDate(step.done.value, protocol))) : ''));
}

function stopItem(rule: StopRule, index: number, protocol: Protocol, context: RenderContext): Html {
  const check = context.note.stopRules.find((each) => each.rule === index);
  const words = context.plan.stop;
  const crossed = check?.crossedAt ?? [];
  const state = crossed.length > 0
    ? element('span', { class: 'evenwater-crossed' }, escapeHtml(words.crossed(formatClock(crossed[0]!, protocol.zone), crossed.length - 1)))
    : !nothingRead(context.note.dataset) && check && check.evaluation?.value !== null ? element('span', { class: 'evenwater-kept' }, words.notCrossed) : element('span', { class: 'evenwater-none' }, words.noReadings);
  return element('li', {}, `${words.if} `, element('code', {}, escapeHtml(rule.when?.text.trim() ?? '–')), rule.do ? escapeHtml(`: ${rule.do}`) : '',
    element('div', { class: 'evenwater-state' }, state, rule.outcome ? escapeHtml(words.outcome(rule.outcome.value)) : ''));
}

function instrumentsTable(protocol: Protocol, { instruments: words }: PlanCardWords): Html {
  const { heads } = words;
  const cells = protocol.measure.map((measure) => [
    `${quantityWords(protocol, measure.id)} (${measure.id})`, measure.scale ? measure.scale.join(', ') : measure.unit && measure.unit.print !== '1' ? unitWords(measure.unit.print, languageOf(protocol.language)) : '–',
    measure.with?.value ?? '–', measure.in.length > 0 && !protocol.tanks.every((tank) => measure.in.some((place) => place.value === tank.id)) ? measure.in.map((place) => placeWords(protocol, place.value)).join(', ') : protocol.tanks.length === 2 ? words.bothTanks : protocol.tanks.length === 1 ? words.theTank : words.allTanks,
    measure.accuracy ? `± ${instrumentValue(measure.accuracy, protocol)}` : words.notStated, measure.resolution ? instrumentValue(measure.resolution, protocol) : '–', measure.calibrated ? withDate(measure.calibrated.value, protocol) : '–',
  ]);
  const used = heads.map((_, index) => index < 4 || cells.some((each) => each[index] !== '–'));
  const keep = <T>(list: readonly T[]): T[] => list.filter((_, index) => used[index]);
  return element('div', { class: 'evenwater-scroll', role: 'region', tabindex: 0, 'aria-label': words.caption },
    element('table', { class: 'evenwater-instruments' }, element('caption', { class: 'evenwater-hidden' }, words.caption),
      element('thead', {}, element('tr', {}, ...keep(heads).map((head) => element('th', { scope: 'col' }, head)))),
      element('tbody', {}, ...cells.map((each) => element('tr', {}, ...keep(each).map((cell, index) => (index === 0 ? element('th', { scope: 'row' }, escapeHtml(capital(cell))) : element('td', {}, escapeHtml(cell)))))))));
}

/** Reading order, seal and repeat, each in a sentence. */
function planNotes(protocol: Protocol, { notes: words }: PlanCardWords): string[] {
  const notes: string[] = [];
  const label = (id: string): string => protocol.tanks.find((tank) => tank.id === id)?.label ?? id;
  if (protocol.orderRule?.value === 'alternate') notes.push(words.alternates);
  else if (protocol.orderRule) notes.push(words.drawn(protocol.seed?.value ?? null));
  else if (protocol.order.length > 1) notes.push(words.order(protocol.order.map((tank) => label(tank.value))));
  const sealed = sealedTime(protocol);
  if (sealed !== null) notes.push(words.sealed({ clock: formatClock(sealed, protocol.zone), day: formatDate(sealed, protocol.zone), date: dateWords(sealed, protocol), changed: Boolean(planDeviations(protocol)) }));
  const repeat = repeatFacts(protocol);
  if (repeat) notes.push(words.repeats(repeat.name, repeat.changed?.length === 0));
  return notes;
}

/** The plan as a card. */
export function planCardHtml(protocol: Protocol, context: RenderContext): Html {
  const parts: Html[] = [];
  const words = context.plan;
  const { headings, directions } = words;
  const { place } = protocol;
  const degrees = (angle: number): string => String(Math.abs(angle)).replace('.', decimalMarkOf(protocol.language));
  if (protocol.question) parts.push(element('p', { class: 'evenwater-question' }, escapeHtml(protocol.question.value)));
  if (protocol.hypothesis) parts.push(element('p', { class: 'evenwater-hypothesis' }, element('strong', {}, words.expected), escapeHtml(protocol.hypothesis.value)));
  const where = [place.name?.value ?? null, place.latitude && place.longitude ? `${degrees(place.latitude.value)}° ${place.latitude.value < 0 ? directions.south : directions.north}, ${degrees(place.longitude.value)}° ${place.longitude.value < 0 ? directions.west : directions.east}` : null,
    place.elevation ? words.aboveSeaLevel(plainValue(place.elevation.value, protocol)) : null].filter((each): each is string => each !== null);
  if (where.length > 0) parts.push(element('p', { class: 'evenwater-place' }, escapeHtml(`${where.join(' · ')}${place.daylight ? '' : ` · ${words.noDaylight}`}`)));
  if (protocol.tanks.length > 0) {
    const differs = protocol.differs.map((each) => each.value);
    parts.push(heading(headings.tanks), tanksTable(protocol, context));
    if (protocol.tanks.length > 1) parts.push(element('p', { class: 'evenwater-differs-words' }, escapeHtml(differs.length > 0 ? words.differIn(differs) : words.differUnsaid)));
  }
  if (protocol.schedule) {
    const said = scheduleWords(protocol);
    parts.push(heading(headings.schedule), element('p', {}, escapeHtml(said)), timelineHtml(protocol, said));
    if (protocol.events.length > 0) {
      parts.push(element('ul', { class: 'evenwater-events' }, ...protocol.events.map((event) => element('li', {}, element('strong', {}, formatClock(event.at, protocol.zone)), ' ', escapeHtml(event.what),
        event.tanks.length > 0 ? escapeHtml(` (${words.ofTanks(event.tanks.map((tank) => protocol.tanks.find((each) => each.id === tank.value)?.label ?? tank.value))})`) : ''))));
    }
  }
  const notes = planNotes(protocol, words);
  if (notes.length > 0) parts.push(element('p', { class: 'evenwater-place' }, escapeHtml(notes.join(' '))));
  if (protocol.equalise.length > 0) parts.push(heading(headings.equalise), element('ol', { class: 'evenwater-steps' }, ...protocol.equalise.map((step, index) => equaliseItem(step, index, protocol, context))));
  if (protocol.stopRules.length > 0) parts.push(heading(headings.stop), element('ul', { class: 'evenwater-steps' }, ...protocol.stopRules.map((rule, index) => stopItem(rule, index, protocol, context))));
  if (protocol.measure.length > 0) parts.push(heading(headings.instruments), instrumentsTable(protocol, words), planningHtml(protocol));
  parts.push(heading(headings.design), designCheckHtml(context), preparationHtml(protocol, false));
  const cautions = cautionsOf(protocol);
  if (cautions.length > 0) {
    const list = element('ul', {}, ...cautions.map((each) => element('li', {}, element('strong', {}, escapeHtml(`${each.title}. `)), escapeHtml(each.text))));
    parts.push(element('details', { class: 'evenwater-cautions', open: context.target === 'post' },
      element('summary', {}, element('strong', {}, headings.cautions), context.target === 'post' ? '' : escapeHtml(words.cautionsList(cautions.map((each) => each.title)))),
      list, element('p', { class: 'evenwater-preface' }, cautionWords(context.language).preface)));
  }
  return element('section', { class: `evenwater-card evenwater-plan${protocol.tanks.length > 2 ? ' evenwater-wide' : ''}`, 'aria-label': words.thePlan }, element('p', { class: 'evenwater-label' }, words.plan), stopAlarmHtml(protocol, context), ...parts);
}
