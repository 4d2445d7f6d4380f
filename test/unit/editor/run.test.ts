// A run that was started: when a slot is due, who says so, and what several windows make of it.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { planRow } from '../../../src/edits/planRow.ts';
import { RunHolder, type RunStorage, type RunWorld } from '../../../src/editor/logging/runHolder.ts';
import { countdown, isQuiet, later, momentOf, newRun, readRunState, runText, shouldTell, toldOf } from '../../../src/editor/logging/runState.ts';
import { at, note, zone } from './smallNight.ts';

suite('run', () => {
  const started = newRun('file:///night.tank.md', at('20:00'));
  const moment = (now: number) => momentOf(planRow(note, now)!, now);

  test('a slot is due from its own minute on, once; later puts this slot off and no other; quiet hours keep it quiet', () => {
    deepEqual(moment(at('21:58')), { kind: 'waiting', next: at('22:00'), left: 120_000 });
    equal(moment(at('22:00')).kind, 'due');
    const slot = at('22:00');
    ok(shouldTell(started, slot, at('22:00'), false));
    ok(!shouldTell(started, slot, at('22:00'), true));
    ok(!shouldTell(toldOf(started, slot), slot, at('22:03'), false));
    const putOff = { ...toldOf(started, slot), later: { slot, until: at('22:03') + later } };
    ok(!shouldTell(putOff, slot, at('22:07'), false));
    ok(shouldTell(putOff, slot, at('22:08'), false));
    ok(shouldTell(putOff, at('22:30'), at('22:04'), false));
    ok(!shouldTell(toldOf(putOff, slot), slot, at('22:12'), false));
  });

  test('quiet hours, also over midnight, in the zone of the note', () => {
    ok(isQuiet('23:00-07:00', at('23:30'), zone) && isQuiet('23:00 - 07:00', at('02:00'), zone) && !isQuiet('23:00-07:00', at('22:59'), zone) && !isQuiet('23:00-07:00', at('07:00'), zone));
    ok(isQuiet('12:00-13:00', at('12:30'), zone) && !isQuiet('12:00-13:00', at('13:00'), zone));
    ok(!isQuiet('', at('03:00'), zone) && !isQuiet('always', at('03:00'), zone));
  });

  test('the countdown', () => { deepEqual([0, 1, 61_000, 725_000, 3_729_000, -5].map(countdown), ['0:00', '0:01', '1:01', '12:05', '1:02:09', '0:00']); });

  test('what is stored is read again; what cannot be read is no run', () => {
    deepEqual(readRunState(runText(started)), started);
    for (const wrong of ['', '{"note":', 'null', '"x"', '{}', '{"note":3,"started":1}']) equal(readRunState(wrong), null);
    deepEqual(readRunState('{"note":"n","started":1,"told":"x","later":{"slot":1},"claim":7}'), newRun('n', 1));
  });
});

suite('run: windows over one storage', () => {
  const name = 'file:///night.tank.md';
  /** A storage in memory that several windows share, and their clock; `broken` refuses to store. */
  const desk = (broken = false) => {
    const texts = new Map<string, string>();
    const clock = { now: at('21:59') };
    const storage: RunStorage = {
      read: (note) => Promise.resolve(texts.get(note) ?? null),
      write: (note, text) => { if (!broken) texts.set(note, text); return Promise.resolve(!broken); },
      remove: (note) => { texts.delete(note); return Promise.resolve(); },
      all: () => Promise.resolve([...texts.values()]),
    };
    /** Everybody who waits meets here, so that two claims are made before either is looked at again. */
    const world: RunWorld = { now: () => clock.now, wait: () => new Promise((resolve) => { setTimeout(resolve, 5); }) };
    return { texts, clock, open: (window: string) => new RunHolder(storage, world, window) };
  };
  const ours = (note: string) => note === name;

  test('a night of ticks in two windows tells each slot once, and none that is logged or quiet', async () => {
    const { clock, open } = desk();
    const [front, behind] = [open('a'), open('b')];
    await front.start(name);
    ok(await behind.takeUp(ours));
    const told: string[] = [];
    for (clock.now = at('21:40'); clock.now <= at('23:10'); clock.now += 20_000) {
      const due = momentOf(planRow(note, clock.now)!, clock.now);
      if (due.kind !== 'due') continue;
      const speaks = await Promise.all([front, behind].map((window) => window.takesTelling(due.slot, isQuiet('22:20-22:50', clock.now, zone))));
      speaks.forEach((each, index) => { if (each) told.push(`${index} ${new Date(due.slot).toISOString().slice(11, 16)}`); });
    }
    deepEqual(told.map((each) => each.slice(2)), ['21:00', '22:00']); // 22:00 and 23:00 of the note's clock; 22:30 was quiet until it was over.
  });

  test('later puts it off in both windows, and either may speak then', async () => {
    const { clock, open } = desk();
    const [one, other] = [open('a'), open('b')];
    await one.start(name);
    await other.takeUp(ours);
    clock.now = at('22:00');
    ok(await one.takesTelling(at('22:00'), false));
    ok(!await other.takesTelling(at('22:00'), false));
    await one.putOff(at('22:00'));
    clock.now = at('22:04');
    ok(!await one.takesTelling(at('22:00'), false) && !await other.takesTelling(at('22:00'), false));
    clock.now = at('22:05');
    await other.look(); // As it does every few seconds.
    ok(await other.takesTelling(at('22:00'), false));
    ok(!await one.takesTelling(at('22:00'), false));
  });

  test('a run ended in one window is over in the other; one that was not started never speaks', async () => {
    const { texts, clock, open } = desk();
    const [one, other] = [open('a'), open('b')];
    clock.now = at('22:00');
    ok(!await other.takeUp(ours) && !await other.takesTelling(at('22:00'), false));
    await one.start(name);
    ok(await other.takeUp(ours));
    await one.end();
    equal(texts.size, 0);
    ok(!await other.takesTelling(at('22:00'), false));
    equal(other.state, null);
  });

  test('a window that is loaded again finds its run, and not that of a note it has nothing to do with', async () => {
    const { clock, open } = desk();
    await open('a').start(name);
    await open('x').start('file:///other.tank.md');
    const again = open('c');
    ok(await again.takeUp(ours));
    equal(again.state?.note, name);
    clock.now = at('22:00');
    ok(await again.takesTelling(at('22:00'), false));
    const reloaded = open('d');
    await reloaded.takeUp(ours);
    ok(!await reloaded.takesTelling(at('22:00'), false)); // It was told before the reload.
  });

  test('a text torn off while another window writes ends no run; a storage that cannot be written keeps it in its window', async () => {
    const { texts, open } = desk();
    const one = open('a');
    await one.start(name);
    texts.set(name, '');
    await one.look();
    equal(one.state?.note, name);
    const alone = desk(true).open('a');
    await alone.start(name);
    ok(await alone.takesTelling(at('22:00'), false));
    ok(!await alone.takesTelling(at('22:00'), false));
    await alone.end();
    equal(alone.state, null);
  });
});
