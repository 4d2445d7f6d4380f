// The plan's facts: every key of the schema, schedules over midnight, clock changes, several nights and weeks.
import assert from 'node:assert/strict';
import { toDocumentRange } from '../../../src/note/mappedText.ts';
import { baseProtocol } from '../../../src/problems/examples.ts';
import { allDifferences, namedInstant, namedInstants, namedPhases, undeclaredDifferences, waterVolume } from '../../../src/protocol/derived.ts';
import { protocolDigest } from '../../../src/protocol/digest.ts';
import { readProtocol } from '../../../src/protocol/readProtocol.ts';
import { protocolSchema, schemaAt, type SchemaKey } from '../../../src/protocol/schema.ts';
import { local, phases, plan, quotedBlock, read } from './support.ts';

const schedule = (lines: string): string => plan({ schedule: `schedule:\n  ${lines.split('; ').join('\n  ')}` });

suite('protocol: the plan of an overnight run', () => {
  const { plan: night, problems } = read(baseProtocol);

  test('has no problem', () => assert.deepEqual(problems, []));

  test('tanks', () => {
    assert.deepEqual(night.tanks.map((tank) => [tank.id, tank.index, tank.role?.value, tank.label, tank.plants?.value, tank.animals?.value, tank.like?.value ?? null]), [
      ['mat', 0, 'treatment', 'floating-mat tank', 'water lettuce, 80 % cover', 'none', null],
      ['open', 1, 'control', 'open-surface tank', 'none', 'none', 'mat'],
    ]);
    for (const tank of night.tanks) {
      assert.deepEqual([tank.size?.length.value, tank.size?.width.value, tank.size?.height.value, tank.size?.height.unit.symbol], [50, 30, 32, 'cm']);
      assert.equal(waterVolume(tank)?.value, 42);
      assert.equal(waterVolume(tank)?.unit.symbol, 'L');
      assert.equal(waterVolume(tank)?.contributions, null);
    }
    const plants = night.tanks[1]!.plants!;
    assert.equal(baseProtocol.slice(plants.range.start, plants.range.end), 'none');
  });

  test('schedule, slots, sun and phases', () => {
    const { schedule: planned } = night;
    assert.ok(planned);
    assert.deepEqual([local(night, planned.start), local(night, planned.end)], ['2026-03-14T20:00+01:00', '2026-03-15T10:00+01:00']);
    assert.equal(planned.slots.length, 29);
    assert.deepEqual(planned.lightOff.map((each) => local(night, each)), ['2026-03-14T22:00+01:00']);
    assert.deepEqual(planned.lightOn.map((each) => local(night, each)), ['2026-03-15T09:30+01:00']);
    assert.deepEqual(night.sun.map((each) => each.date), ['2026-03-14', '2026-03-15']);
    const sunrise = local(night, namedInstant(night, 'sunrise'));
    // whole minutes, in the phases too
    assert.match(sunrise ?? '', /^2026-03-15T06:50\+/);
    assert.equal(namedInstant(night, 'sunrise')! % 60_000, 0);
    assert.equal(namedInstant(night, 'sunset'), null, 'the sun had set before the run');
    assert.deepEqual(phases(night), [
      'baseline 2026-03-14T20:00+01:00 2026-03-14T22:00+01:00', `dark 2026-03-14T22:00+01:00 ${sunrise}`, `recovery ${sunrise} 2026-03-15T10:00+01:00`,
    ]);
    for (const name of ['start', 'end', 'light-off', 'light-on', 'dawn']) assert.notEqual(namedInstant(night, name), null, name);
    assert.equal(namedInstant(night, 'noon'), null);
  });

  test('measures', () => {
    assert.deepEqual(night.measure.map((each) => [each.id, each.what?.value, each.unit?.symbol, each.with?.value, each.accuracy?.value, each.accuracy?.unit.kind, each.resolution?.value ?? null, each.in.map((where) => where.value), each.level?.value ?? null]), [
      ['DO', 'dissolved oxygen', 'mg/L', 'optical probe', 0.1, 'plain', 0.01, [], null],
      ['T', 'water temperature', 'degC', 'probe thermistor', 0.2, 'temperature-difference', 0.1, [], null],
      ['P', 'air pressure', 'hPa', 'barometer', 0.5, 'plain', null, ['room'], 'station'],
    ]);
  });

  test('conditions keep their way back to the note', () => {
    const accept = night.equalise[0]!.accept!;
    assert.equal(accept.text, 'abs(mat.T - open.T) <= 0.5 degC');
    const range = toDocumentRange(accept, { start: 4, end: 9 });
    assert.equal(baseProtocol.slice(range.start, range.end), 'mat.T');
    assert.equal(night.stopRules[0]!.when!.text, 'mat.DO < 3 mg/L');
    assert.equal(night.stopRules[0]!.do, 'Switch the air pump on and end the run');
  });

  test('what differs', () => {
    assert.deepEqual(undeclaredDifferences(night), []);
    assert.deepEqual(allDifferences(night).map((each) => each.key), ['plants']);
  });

  test('inside a quote all places still lead to the note', () => {
    const { block, note } = quotedBlock(baseProtocol);
    const { protocol, problems: found } = readProtocol(block);
    assert.deepEqual(found, []);
    const at = (range: { start: number; end: number }): string => note.slice(range.start, range.end);
    assert.equal(at(protocol!.tanks[1]!.idRange), 'open');
    assert.equal(at(protocol!.measure[1]!.what!.range), 'water temperature');
    assert.equal(at(toDocumentRange(protocol!.equalise[0]!.accept!, { start: 12, end: 18 })), 'open.T');
  });
});

suite('protocol: keys', () => {
  test('each key of the schema is read', () => {
    const { plan: whole, problems } = read(plan({
      place: 'title: A title\nhypothesis: It falls.\nby: the author\nlanguage: nl\nlicence: CC BY 4.0\nplace: {name: Zwolle, latitude: 52.51 N, longitude: 6.09° E, elevation: 4 m, time zone: Europe/Amsterdam, daylight: no}',
      tanks: 'tanks:\n  mat:\n    role: treatment\n    group: mats\n    label: mat tank\n    size: 50 x 30 x 32 cm\n    water depth: 28 cm\n    running since: 2025-11-02\n    plants: lettuce\n    animals: none\n    equipment: sponge filter\n    salinity: 0.2 g/kg\n    facts: {plant-mass: 120 g, snails: 12}\n  open: {role: control, like: mat, facts: {plant-mass: 0 g}}\n  odd: {role: control, volume: 2500 mL}\ndiffers: [plant-mass]',
      measure: 'measure:\n  DO: {what: dissolved oxygen, unit: mg/L, with: probe, in: [mat, open], accuracy: 2 %, resolution: 0.01 mg/L, calibrated: 2026-03-14}\n  DO@titration: {with: Winkler kit, accuracy: 0.2 mg/L}\n  calmness: {what: behaviour, scale: [calm, restless, gasping]}\n  P: {what: air pressure, unit: hPa, in: room, level: sea}',
      more: 'events:\n  - {at: 23:00, what: fed, tanks: mat, id: feeding}\n  - {at: light-off + 90 min, what: looked}\nphases: {settling: 20:00..21:00, late: light-off + 3 h..end}\nlimits:\n  - {for: Corydoras, quantity: DO, at least: 4 mg/L, source: "a book, page 3"}\n  - {for: plants, quantity: DO, at most: 20 mg/L}\nequalise:\n  - step: Warm up\n    why: one rate\n    accept: mat.DO > 1 mg/L\n    done: 2026-03-13\nstop if:\n  - {when: "at(mat.DO, 22:00) < 3 mg/L", do: stop, outcome: none}\norder: [open, mat]\nseed: 007\npair within: 1 min\nrepeats: earlier.tank.md\naccepted: [below-resolution]\nsealed: 2026-03-14T19:00+01:00 sha256:abc',
    }));
    assert.deepEqual(problems.map((each) => each.code), []);
    assert.deepEqual([whole.title?.value, whole.hypothesis?.value, whole.by?.value, whole.language, whole.licence?.value], ['A title', 'It falls.', 'the author', 'nl', 'CC BY 4.0']);
    assert.deepEqual([whole.place.name?.value, whole.place.latitude?.value, whole.place.longitude?.value, whole.place.elevation?.value.value, whole.place.daylight], ['Zwolle', 52.51, 6.09, 4, false]);
    const [mat, open, odd] = whole.tanks;
    assert.deepEqual([mat!.group?.value, mat!.runningSince?.value, mat!.equipment?.value, mat!.salinity?.value.value, mat!.salinity?.value.unit.symbol], ['mats', '2025-11-02', 'sponge filter', 0.2, 'g/kg']);
    assert.deepEqual([...mat!.facts].map(([name, fact]) => [name, fact.value.value, fact.value.unit.symbol]), [['plant-mass', 120, 'g'], ['snails', 12, '1']]);
    assert.deepEqual([...open!.facts].map(([name, fact]) => [name, fact.value.value]), [['plant-mass', 0], ['snails', 12]]);
    assert.deepEqual([open!.group, open!.label, open!.role?.value, open!.salinity?.value.value], [null, 'open', 'control', 0.2]);
    assert.equal(waterVolume(odd!)?.value, 2.5);
    assert.deepEqual(whole.measure.map((each) => [each.id, each.what?.value, each.unit?.symbol ?? null, each.accuracy?.value ?? null, each.accuracy?.unit.symbol ?? null, each.scale]), [
      ['DO', 'dissolved oxygen', 'mg/L', 2, '%', null], ['DO@titration', 'dissolved oxygen', 'mg/L', 0.2, 'mg/L', null],
      ['calmness', whole.measure[2]!.what!.value, null, null, null, ['calm', 'restless', 'gasping']], ['P', 'air pressure', 'hPa', null, null, null],
    ]);
    assert.deepEqual(whole.events.map((each) => [each.id, local(whole, each.at), each.what, each.tanks.map((tank) => tank.value)]), [
      ['feeding', '2026-03-14T23:00+01:00', 'fed', ['mat']], [null, '2026-03-14T23:30+01:00', 'looked', []],
    ]);
    assert.equal(namedInstant(whole, 'feeding'), whole.events[0]!.at);
    assert.deepEqual(phases(whole), [
      'settling 2026-03-14T20:00+01:00 2026-03-14T21:00+01:00', 'late 2026-03-15T01:00+01:00 2026-03-15T10:00+01:00',
      'baseline 2026-03-14T20:00+01:00 2026-03-14T22:00+01:00', 'dark 2026-03-14T22:00+01:00 2026-03-15T09:30+01:00', 'recovery 2026-03-15T09:30+01:00 2026-03-15T10:00+01:00',
    ]);
    assert.deepEqual(whole.sun, [], 'no daylight, no sun times');
    assert.deepEqual(whole.limits.map((each) => [each.for, each.quantity?.value, each.atLeast?.value.value ?? null, each.atMost?.value.value ?? null, each.source]), [['Corydoras', 'DO', 4, null, 'a book, page 3'], ['plants', 'DO', null, 20, null]]);
    assert.deepEqual(whole.equalise.map((each) => [each.step, each.why, each.accept?.text, each.done?.value]), [['Warm up', 'one rate', 'mat.DO > 1 mg/L', '2026-03-13']]);
    assert.deepEqual(whole.stopRules.map((each) => [each.when?.text, each.do, each.outcome?.value]), [['at(mat.DO, 22:00) < 3 mg/L', 'stop', 'none']]);
    assert.deepEqual([whole.order.map((each) => each.value), whole.seed?.value, whole.pairWithin, whole.repeats?.value, whole.accepted.map((each) => each.value), whole.sealed?.value],
      [['open', 'mat'], '007', 60_000, 'earlier.tank.md', ['below-resolution'], '2026-03-14T19:00+01:00 sha256:abc']);
  });

  test('scalars stay text: nothing turns into a number, a date or nothing', () => {
    const { plan: odd } = read(plan({ more: 'title: 007\nquestion: yes\nhypothesis: null\nby: 2026-03-14\nseed: 1_000\nrepeats: 0x1F\nlicence: ~' }));
    assert.deepEqual([odd.title?.value, odd.question?.value, odd.hypothesis?.value, odd.by?.value, odd.seed?.value, odd.repeats?.value, odd.licence?.value], ['007', 'yes', 'null', '2026-03-14', '1_000', '0x1F', '~']);
  });

  test('texts over several lines, quoted and folded', () => {
    const { plan: long, problems } = read(plan({ more: 'question: Does a mat\n  lower the minimum?\nhypothesis: >\n  It falls: by half\n  a milligram.\nby: "the author: \\"me\\""\ntitle: \'keeper\'\'s night\'' }));
    assert.deepEqual(problems, []);
    assert.equal(long.question?.value, 'Does a mat lower the minimum?');
    assert.equal(long.hypothesis?.value, 'It falls: by half a milligram.');
    assert.equal(long.by?.value, 'the author: "me"');
    assert.equal(long.title?.value, "keeper's night");
  });

  test('a formula in quotation marks keeps its way back, escapes included', () => {
    const text = plan({ more: 'stop if:\n  - when: \'mat.DO < 3 mg/L\'\n  - when: "mat.T > \\"x\\" and mat.DO < 3"\n  - when: mat.DO\n      < 3 mg/L' });
    const { plan: rules } = read(text);
    const word = (index: number, part: string): string => {
      const when = rules.stopRules[index]!.when!;
      const start = when.text.indexOf(part);
      const range = toDocumentRange(when, { start, end: start + part.length });
      return text.slice(range.start, range.end);
    };
    assert.equal(word(0, 'mg/L'), 'mg/L');
    assert.equal(word(1, 'mat.DO'), 'mat.DO');
    assert.equal(word(2, 'mg/L'), 'mg/L');
  });

  test('flow maps over several lines', () => {
    const { plan: wide, problems } = read(plan({ measure: 'measure:\n  DO: {what: dissolved oxygen,\n       unit: mg/L, # as the probe shows it\n       with: probe}\n  T: {what: water temperature, unit: degC}' }));
    assert.deepEqual(problems, []);
    assert.deepEqual(wide.measure.map((each) => each.id), ['DO', 'T']);
    assert.equal(wide.measure[0]!.with?.value, 'probe');
  });

  test('sizes and coordinates in other shapes', () => {
    const { plan: other, problems } = read(plan({
      place: 'place: {latitude: 33.9 S, longitude: -18.4, time zone: Africa/Johannesburg}',
      tanks: 'tanks:\n  a: {role: treatment, size: 20 × 10 × 12 in, water depth: 10 in}\n  b: {role: control, size: 50x30x32 cm, water depth: 0.28 m}\n  c: {role: control, size: 500 mm x 30 cm x 0.32 m}',
    }));
    assert.deepEqual(problems.map((each) => each.code), []);
    assert.deepEqual([other.place.latitude?.value, other.place.longitude?.value], [-33.9, -18.4]);
    // 20 x 10 x 10 cubic inches of 16.387064 mL.
    assert.equal(waterVolume(other.tanks[0]!)?.value.toFixed(6), '32.774128');
    assert.equal(waterVolume(other.tanks[1]!)?.value, 42);
    assert.equal(other.tanks[2]!.size?.length.unit.symbol, 'mm');
    assert.equal(waterVolume(other.tanks[2]!), null);
  });

  test('what differs beyond what is meant to', () => {
    const { plan: unequal } = read(plan({ tanks: 'tanks:\n  mat: {role: treatment, plants: lettuce, equipment: sponge filter}\n  open: {role: control, plants: none, animals: snails, equipment: sponge filter}\ndiffers: [plants]' }));
    assert.deepEqual(undeclaredDifferences(unequal), [{ key: 'animals', texts: [{ tank: 'mat', text: null }, { tank: 'open', text: 'snails' }] }]);
  });

  test('a chain of like', () => {
    const { plan: chain, problems } = read(plan({ tanks: 'tanks:\n  a: {role: treatment, label: A, group: x, plants: moss, animals: snails}\n  b: {like: a, plants: none}\n  c: {role: control, like: b}' }));
    assert.deepEqual(problems, []);
    assert.deepEqual(chain.tanks.map((tank) => [tank.id, tank.role?.value ?? null, tank.label, tank.group?.value ?? null, tank.plants?.value, tank.animals?.value]), [
      ['a', 'treatment', 'A', 'x', 'moss', 'snails'], ['b', null, 'b', null, 'none', 'snails'], ['c', 'control', 'c', null, 'none', 'snails'],
    ]);
  });

  test('every key of the schema has a description and an example that is read without a problem', () => {
    const walk = (entry: SchemaKey, path: string[]): void => {
      for (const key of entry.keys ?? []) {
        assert.match(key.description, /^\S.*\.$/s, [...path, key.key].join(' > '));
        assert.notEqual(key.example, '');
        assert.equal(schemaAt([...path, key.key]), key);
        walk(key, [...path, key.key]);
      }
      if (entry.entry) walk(entry.entry, [...path, entry.entry.key]);
    };
    walk(protocolSchema, []);
    for (const key of protocolSchema.keys!) {
      const parts = { place: 'place', tanks: 'tanks', schedule: 'schedule', measure: 'measure' } as const;
      const line = `${key.key}: ${key.example}`.replace(': \n', ':\n');
      const { codes } = read(key.key in parts ? plan({ [key.key]: line }) : key.key === 'differs' ? plan({ tanks: 'tanks:\n  mat: {role: treatment, plants: x}\n  open: {role: control}', more: line }) : plan({ more: line }));
      assert.deepEqual(codes, key.key === 'sealed' ? [] : [], line);
    }
    for (const [path, name] of [[['tanks', 'TANK'], 'tanks'], [['measure', 'QUANTITY'], 'measure']] as const) {
      for (const key of schemaAt(path)!.keys!) {
        const example = key.key === 'like' ? 'open' : key.example;
        const own = key.key === 'level' || key.key === 'in' ? 'what: air pressure, unit: hPa, ' : key.key === 'what' || key.key === 'unit' ? '' : 'what: dissolved oxygen, unit: mg/L, ';
        const line = name === 'tanks' ? `tanks:\n  mat:\n    ${key.key}: ${example}\n  open: {role: control}`
          : `measure:\n  X:\n    ${own.split(', ').filter((part) => part !== '').join('\n    ')}${own === '' ? '' : '\n    '}${key.key}: ${key.example}${key.key === 'what' ? '\n    unit: mg/L' : key.key === 'unit' ? '\n    what: dissolved oxygen' : ''}`;
        assert.deepEqual(read(plan({ [name]: line })).codes, [], line);
      }
    }
  });
});

suite('protocol: schedules', () => {
  test('a clock time alone as end is the first after the start', () => {
    const { plan: short } = read(schedule('start: 2026-03-14 20:00; end: 22:00'));
    assert.equal(local(short, short.schedule!.end), '2026-03-14T22:00+01:00');
    const { plan: whole } = read(schedule('start: 2026-03-14 20:00; end: 20:00'));
    assert.equal(local(whole, whole.schedule!.end), '2026-03-15T20:00+01:00');
    const { plan: counted } = read(schedule('start: 2026-03-14 20:00; end: start + 14 h'));
    assert.equal(local(counted, counted.schedule!.end), '2026-03-15T10:00+01:00');
  });

  test('denser stretches are joined with the rest', () => {
    const { plan: dense, problems } = read(schedule('start: 2026-03-14 20:00; light off: 22:00; end: 2026-03-15 00:00; every: [1 h, 10 min from light-off to light-off + 30 min]'));
    assert.deepEqual(problems, []);
    assert.deepEqual(dense.schedule!.slots.map((each) => local(dense, each)?.slice(11, 16)), ['20:00', '21:00', '22:00', '22:10', '22:20', '22:30', '23:00', '00:00']);
    assert.equal(dense.schedule!.sampling.length, 2);
  });

  test('the night in which clocks go forward is an hour shorter', () => {
    const { plan: spring, problems } = read(schedule('start: 2026-03-28 20:00; light off: 22:00; light on: 08:00; end: 2026-03-29 08:00; every: 30 min'));
    assert.deepEqual(problems, []);
    assert.equal(spring.schedule!.slots.length, 23);
    assert.deepEqual(spring.schedule!.slots.slice(11, 15).map((each) => local(spring, each)), ['2026-03-29T01:30+01:00', '2026-03-29T03:00+02:00', '2026-03-29T03:30+02:00', '2026-03-29T04:00+02:00']);
    assert.deepEqual(spring.schedule!.lightOn.map((each) => local(spring, each)), ['2026-03-29T08:00+02:00']);
  });

  test('a time in the skipped hour, and one in the repeated hour, need an offset', () => {
    const { plan: given, codes } = read(schedule('start: 2026-10-25 02:30+01:00; end: 2026-10-25 04:00; every: 30 min'));
    assert.deepEqual(codes, []);
    assert.equal(local(given, given.schedule!.start), '2026-10-25T02:30+01:00');
    assert.deepEqual(read(schedule('start: 2026-03-28 20:00; end: 2026-03-29 02:15; every: 1 h')).codes, ['plan-time-skipped']);
    const { plan: doubtful, codes: asked } = read(schedule('start: 2026-10-24 20:00; end: 2026-10-25 02:15; every: 1 h'));
    assert.deepEqual(asked, ['plan-time-repeated']);
    assert.equal(local(doubtful, doubtful.schedule!.end), '2026-10-25T02:15+02:00', 'read as the earlier one until the author says');
  });

  test('several nights', () => {
    const { plan: nights, problems } = read(plan({ place: 'place: {time zone: Europe/Amsterdam}', schedule: 'schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 09:30, end: 2026-03-17 08:00, every: 1 h}', more: 'events:\n  - {at: light-off-2, what: fed, id: meal}\nphases: {second: light-off-2..light-off-2 + 2 h}' }));
    assert.deepEqual(problems, []);
    assert.deepEqual(phases(nights), [
      'second 2026-03-15T22:00+01:00 2026-03-16T00:00+01:00',
      'baseline 2026-03-14T20:00+01:00 2026-03-14T22:00+01:00',
      'dark-1 2026-03-14T22:00+01:00 2026-03-15T09:30+01:00', 'recovery-1 2026-03-15T09:30+01:00 2026-03-15T22:00+01:00',
      'dark-2 2026-03-15T22:00+01:00 2026-03-16T09:30+01:00', 'recovery-2 2026-03-16T09:30+01:00 2026-03-16T22:00+01:00',
      'dark-3 2026-03-16T22:00+01:00 2026-03-17T08:00+01:00',
    ]);
    assert.equal(namedInstant(nights, 'light-off'), null);
    assert.equal(namedInstants(nights, 'light-off').length, 3);
    assert.equal(namedInstant(nights, 'light-off-2'), nights.events[0]!.at);
    assert.deepEqual(namedPhases(nights, 'dark').map((phase) => phase.id), ['dark-1', 'dark-2', 'dark-3']);
    assert.deepEqual(namedPhases(nights, 'baseline').map((phase) => phase.id), ['baseline']);
  });

  test('dated lights stand once', () => {
    const { plan: once } = read(plan({ place: 'place: {time zone: Europe/Amsterdam}', schedule: 'schedule: {start: 2026-03-14 20:00, light off: 2026-03-15 22:00, light on: 2026-03-16 09:30, end: 2026-03-18 10:00, every: 1 h}' }));
    assert.deepEqual(phases(once), ['baseline 2026-03-14T20:00+01:00 2026-03-15T22:00+01:00', 'dark 2026-03-15T22:00+01:00 2026-03-16T09:30+01:00', 'recovery 2026-03-16T09:30+01:00 2026-03-18T10:00+01:00']);
  });

  test('a run that starts with the lights already off starts in the dark', () => {
    const { plan: dark } = read(plan({ place: 'place: {time zone: Europe/Amsterdam}', schedule: 'schedule: {start: 2026-03-14 23:00, light off: 22:00, light on: 09:30, end: 2026-03-15 10:00, every: 1 h}' }));
    assert.deepEqual(dark.schedule!.lightOff.map((each) => local(dark, each)), ['2026-03-14T22:00+01:00']);
    assert.equal(local(dark, namedInstant(dark, 'light-off')), '2026-03-14T22:00+01:00');
    assert.deepEqual(phases(dark), ['dark 2026-03-14T23:00+01:00 2026-03-15T09:30+01:00', 'recovery 2026-03-15T09:30+01:00 2026-03-15T10:00+01:00']);
    const { plan: morning } = read(plan({ place: 'place: {time zone: Europe/Amsterdam}', schedule: 'schedule: {start: 2026-03-15 10:00, light off: 22:00, light on: 09:30, end: 2026-03-15 18:00, every: 1 h}' }));
    assert.deepEqual(phases(morning), [], 'a run by day has no dark phase');
    assert.deepEqual(morning.schedule!.lightOff.map((each) => local(morning, each)), ['2026-03-15T22:00+01:00']);
  });

  test('no lights off, no dark phase; no daylight or no coordinates, lights end the night', () => {
    assert.deepEqual(phases(read(schedule('start: 2026-03-14 20:00; end: 2026-03-15 10:00; every: 1 h')).plan), []);
    const dim = read(plan({ place: 'place: {latitude: 52.51, longitude: 6.09, time zone: Europe/Amsterdam, daylight: no}' })).plan;
    assert.equal(local(dim, dim.phases.find((phase) => phase.id === 'dark')?.window.to), '2026-03-15T09:30+01:00');
  });

  test('polar day: the night ends with the lights; polar night: with the run', () => {
    const place = 'place: {latitude: 69.65, longitude: 18.96, time zone: Europe/Oslo}';
    const summer = read(plan({ place, schedule: 'schedule: {start: 2026-06-20 20:00, light off: 22:00, light on: 08:00, end: 2026-06-21 10:00, every: 1 h}' })).plan;
    assert.equal(local(summer, summer.phases.find((phase) => phase.id === 'dark')?.window.to), '2026-06-21T08:00+02:00');
    const winter = read(plan({ place, schedule: 'schedule: {start: 2026-12-20 20:00, light off: 22:00, end: 2026-12-21 10:00, every: 1 h}' })).plan;
    assert.equal(local(winter, winter.phases.find((phase) => phase.id === 'dark')?.window.to), '2026-12-21T10:00+01:00');
    assert.deepEqual(namedInstants(winter, 'sunrise'), []);
  });

  test('a run over weeks keeps its clock time when clocks change', () => {
    const { plan: weeks, problems } = read(schedule('start: 2026-03-20 09:00; end: 2026-04-10 09:00; every: 1 d'));
    assert.deepEqual(problems, []);
    const times = weeks.schedule!.slots.map((each) => local(weeks, each));
    assert.equal(times.length, 22);
    assert.deepEqual([times[0], times[8], times[9], times[21]], ['2026-03-20T09:00+01:00', '2026-03-28T09:00+01:00', '2026-03-29T09:00+02:00', '2026-04-10T09:00+02:00']);
    const { plan: elapsed } = read(schedule('start: 2026-03-20 09:00; end: 2026-04-10 09:00; every: 24 h'));
    assert.equal(local(elapsed, elapsed.schedule!.slots.at(-1)), '2026-04-09T10:00+02:00');
    const { plan: two } = read(schedule('start: 2026-03-20 09:00; end: start + 2 weeks; every: 1 week'));
    assert.deepEqual(two.schedule!.slots.map((each) => local(two, each)), ['2026-03-20T09:00+01:00', '2026-03-27T09:00+01:00', '2026-04-03T09:00+02:00']);
  });

  test('phases between dates hold whole days', () => {
    const { plan: dated, problems } = read(plan({ schedule: 'schedule: {start: 2026-03-20 09:00, end: 2026-04-10 09:00, every: 1 d}', more: 'phases: {first-week: 2026-03-20..2026-03-26, easter: 2026-04-05}' }));
    assert.deepEqual(problems, []);
    assert.deepEqual(phases(dated).slice(0, 2), ['first-week 2026-03-20T00:00+01:00 2026-03-26T23:59:59+01:00', 'easter 2026-04-05T00:00+02:00 2026-04-05T23:59:59+02:00']);
  });

  test('without an end no slots are planned', () => {
    const { plan: open, problems } = read(schedule('start: 2026-03-14 20:00; light off: 22:00; every: 30 min'));
    assert.deepEqual(problems, []);
    assert.deepEqual(open.schedule!.slots, []);
    assert.deepEqual(open.phases.map((phase) => phase.id), ['baseline', 'dark']);
  });
});

suite('protocol: digest', () => {
  const digest = (text: string): string => protocolDigest(read(text).plan);
  const base = digest(baseProtocol);

  test('is the same however the block is laid out', () => {
    assert.match(base, /^[0-9a-f]{64}$/);
    assert.equal(digest(baseProtocol.replace('  name: Zwolle\n  latitude: 52.51', '  latitude: 52.510\n  # the attic\n  name: "Zwolle"')), base);
    assert.equal(digest(baseProtocol.replace('    why', '    why').replace('light off: 22:00', 'light off: 2026-03-14 22:00')), base);
    assert.equal(digest(`${baseProtocol}title: A title\nby: the author\naccepted: [below-resolution]\nsealed: 2026-03-14T19:00+01:00 sha256:${base}\n`), base);
  });

  test('changes with every planned fact', () => {
    for (const [from, to] of [['22:00', '22:30'], ['30 min', '20 min'], ['28 cm', '27 cm'], ['mg/L, with', 'ug/L, with'], ['0.5 degC', '0.6 degC'], ['80 % cover', '70 % cover'], ['3 mg/L', '2 mg/L'], ['4 m\n', '5 m\n']] as const) {
      assert.ok(baseProtocol.includes(from));
      assert.notEqual(digest(baseProtocol.replace(from, to)), base, from);
    }
  });
});
