// Open data: tables that read back, metadata that official schemas and validators accept, nothing that a spreadsheet runs.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import Papa from 'papaparse';
import { readNote } from '../../../src/experiment/readNote.ts';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { csvText, safeText } from '../../../src/publish/data/csv.ts';
import { licenceOf } from '../../../src/publish/data/descriptors.ts';
import { publishData } from '../../../src/publish/data/dataPackage.ts';
import { protocolJsonSchema } from '../../../src/publish/data/protocolJson.ts';
import { noteText } from '../charts/handmade.ts';
import { samplePostText } from './samplePost.ts';

const options = { stem: 'night', toolVersion: '1.2.3', published: '2026-04-13T10:00:00+03:00' };
const root = new URL('../../../', import.meta.url);
const notes: [string, string][] = [['the test note', samplePostText], ...['overnight-oxygen', 'heater-failure', 'naechtlicher-ausstroemer'].map((name): [string, string] => [name, readFileSync(new URL(`samples/${name}.tank.md`, root), 'utf8')])];

interface Field { name: string; type: string; unitUcum?: string }
interface Descriptor { resources: { path: string; bytes: number; hash: string; schema: { fields: Field[] } }[] }

const packageOf = async (text: string): Promise<Map<string, Buffer>> =>
  new Map((await publishData(readNote(text, new Map()), options))!.map((file) => [file.path.replace(/^night-data\//, ''), Buffer.from(file.content as Uint8Array)]));
const json = <T>(files: Map<string, Buffer>, path: string): T => JSON.parse(files.get(path)!.toString('utf8')) as T;

suite('publish: open data', () => {
  test('times read off a fitted night carry half their interval, in hours', async () => {
    const text = exampleNote.replace('first-loss = ', 'balance = balance-point(mat.DO)\nlong = time-to(mat.DO, 5.5 mg/L)\nfirst = first-below(mat.DO, 6 mg/L)\nfirst-loss = ');
    const { data } = Papa.parse<Record<string, string>>((await packageOf(text)).get('results.csv')!.toString('utf8').trimEnd(), { header: true });
    const half = (name: string): number => Number(data.find((row) => row['name'] === name)!['half_width_95']);
    assert.ok(half('balance') > 0.2 && half('balance') < 1, String(half('balance')));
    assert.ok(half('long') > 1 && half('long') < 2, String(half('long')));
    assert.equal(data.find((row) => row['name'] === 'first')!['half_width_95'], '');
  });

  for (const [name, text] of notes) {
    test(`${name}: the descriptor satisfies the official schema, sizes and hashes agree, every cell has its field's type`, async () => {
      const files = await packageOf(text);
      const { $schema: _draft, ...schema } = JSON.parse(readFileSync(new URL('test/fixtures/schemas/tabular-data-package.json', root), 'utf8')) as Record<string, unknown>;
      const check = new Ajv({ strict: false, allErrors: true, validateFormats: false }).compile(schema);
      const descriptor = json<Descriptor>(files, 'datapackage.json');
      assert.ok(check(descriptor), JSON.stringify(check.errors?.slice(0, 3)));
      for (const resource of descriptor.resources) {
        const bytes = files.get(resource.path)!;
        assert.equal(resource.bytes, bytes.length);
        assert.equal(resource.hash, `sha256:${createHash('sha256').update(bytes).digest('hex')}`);
        const [head, ...rows] = Papa.parse<string[]>(bytes.toString('utf8').trimEnd()).data;
        assert.deepEqual(head, resource.schema.fields.map((field) => field.name));
        assert.ok(rows.length > 0 || resource.path === 'results.csv');
        for (const row of rows) {
          assert.equal(row.length, head!.length);
          resource.schema.fields.forEach((field, index) => {
            const cell = row[index]!;
            if (field.type === 'number' && cell !== '') assert.match(cell, /^-?\d+(?:\.\d+)?(?:e-?\d+)?$/, `${field.name}: ${cell}`);
            if (field.type === 'datetime' && cell !== '') assert.match(cell, /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:Z|[+-]\d\d:\d\d)$/);
            if (field.type === 'boolean') assert.match(cell, /^(?:yes|no)$/);
            if (field.type === 'string') assert.doesNotMatch(cell, /^[=+@\t\r]|^-(?!\d)/, `${field.name}: ${cell}`);
          });
        }
      }
    });

    test(`${name}: the crate passes the validator of the RO-Crate library, and ties every file to the run that made it`, async () => {
      const files = await packageOf(text);
      const require = createRequire(import.meta.url);
      const context = readFileSync(require.resolve('ro-crate/lib/context.json'), 'utf8');
      // The validator looks the context up; it gets the copy that its own package carries.
      const before = globalThis.fetch;
      globalThis.fetch = (() => Promise.resolve(new Response(context, { status: 200 }))) as typeof fetch;
      const { Validator } = require('ro-crate/lib/validator.js') as { Validator: new () => { parseJSON(text: string): void; validate(): Promise<void>; crate: { resolveContext(): Promise<void> }; results: { status: string; message: string }[] } };
      try {
        const validator = new Validator();
        validator.parseJSON(files.get('ro-crate-metadata.json')!.toString('utf8'));
        await validator.crate.resolveContext();
        await validator.validate();
        assert.deepEqual(validator.results.filter((each) => each.status === 'error'), []);
        assert.ok(validator.results.filter((each) => each.status === 'success').length >= 6, JSON.stringify(validator.results));
      } finally {
        globalThis.fetch = before;
      }
      const graph = json<{ '@graph': Record<string, unknown>[] }>(files, 'ro-crate-metadata.json')['@graph'];
      const byId = new Map(graph.map((each) => [each['@id'] as string, each]));
      assert.equal(byId.size, graph.length);
      const parts = (byId.get('./')!['hasPart'] as { '@id': string }[]).map((each) => decodeURIComponent(each['@id']));
      assert.deepEqual([...parts].sort(), [...files.keys()].filter((path) => path !== 'ro-crate-metadata.json').sort());
      for (const path of parts) assert.equal(byId.get(path.split('/').map(encodeURIComponent).join('/'))!['sha256'], createHash('sha256').update(files.get(path)!).digest('hex'));
      const every = (value: unknown): string[] => (Array.isArray(value) ? value.flatMap(every) : value !== null && typeof value === 'object'
        ? ['@id' in value && Object.keys(value).length === 1 ? [String((value as { '@id': string })['@id'])] : Object.values(value).flatMap(every)].flat() : []);
      for (const id of graph.flatMap((each) => Object.values(each).flatMap(every))) assert.ok(byId.has(id) || id.startsWith('https://w3id.org/ro/crate/'), id);
      assert.equal(byId.get('#evenwater')!['softwareVersion'], '1.2.3');
    });

    test(`${name}: the plan satisfies the schema made from the one schema`, async () => {
      const files = await packageOf(text);
      const check = new Ajv({ strict: false, allErrors: true }).compile(protocolJsonSchema() as object);
      const plan = json<Record<string, unknown>>(files, 'protocol.json');
      assert.ok(check(plan), JSON.stringify(check.errors?.slice(0, 3)));
      assert.equal(check({ ...plan, qestion: 'x' }), false);
    });
  }

  test('CSVW names every column once with its type and, where it has one, its UCUM unit', async () => {
    const files = await packageOf(samplePostText);
    const metadata = json<{ '@context': unknown[]; tables: { url: string; tableSchema: { primaryKey: string[]; columns: Record<string, unknown>[] } }[] }>(files, 'csv-metadata.json');
    assert.equal(metadata['@context'][0], 'http://www.w3.org/ns/csvw');
    for (const table of metadata.tables) {
      const [head] = Papa.parse<string[]>(files.get(table.url)!.toString('utf8')).data;
      assert.deepEqual(table.tableSchema.columns.map((column) => column['titles']), head);
      const names = table.tableSchema.columns.map((column) => column['name'] as string);
      assert.equal(new Set(names).size, names.length);
      for (const name of names) assert.match(name, /^(?:[A-Za-z0-9_.]|%[0-9A-F]{2})+$/);
      for (const key of table.tableSchema.primaryKey) assert.ok(names.includes(key));
    }
    const wide = metadata.tables.find((table) => table.url === 'readings-wide.csv')!.tableSchema.columns;
    assert.deepEqual(wide.filter((column) => column['schema:unitCode']).map((column) => [column['name'], column['schema:unitCode']]), [['mat.DO', 'mg/L'], ['open.DO', 'mg/L'], ['mat.T', 'Cel'], ['open.T', 'Cel']]);
  });

  test('corrections keep their first value; left-out, doubtful and missing readings are all there', async () => {
    const files = await packageOf(samplePostText);
    const { data } = Papa.parse<Record<string, string>>(files.get('readings-long.csv')!.toString('utf8').trimEnd(), { header: true });
    const with_ = (flag: string): Record<string, string>[] => data.filter((row) => row['flags']!.split(' ').includes(flag));
    for (const row of with_('corrected')) { assert.notEqual(row['first_value'], ''); assert.match(row['corrections']!, / -> /); assert.notEqual(row['first_value'], row['value']); }
    for (const row of with_('left-out')) { assert.equal(row['used'], 'no'); assert.notEqual(row['value'], ''); }
    for (const row of with_('not-taken')) assert.deepEqual([row['value'], row['used'], row['as_written']], ['', 'no', '\'-']);
    assert.ok(with_('corrected').length > 0 && with_('left-out').length > 0 && with_('not-taken').length > 0);
    const note = readNote(samplePostText, new Map());
    assert.equal(data.length, [...note.dataset.series.values()].reduce((sum, series) => sum + series.times.length, 0));
  });

  test('text that a spreadsheet would run gets an apostrophe; numbers stay numbers', () => {
    for (const text of ['=1+1', '+cmd', '-2+3', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1', '-', '=HYPERLINK("x")']) assert.ok(safeText(text).startsWith('\''), JSON.stringify(text));
    for (const text of ['-0.3', '+0.24', '1e-3', 'a=b', 'calm', '<0.05', '']) assert.equal(safeText(text), text);
    assert.equal(csvText(['a', 'b'], [['x,"y"', -0.1 - 0.2], ['=1\n2', null], [' a', 0]]), 'a,b\r\n"x,""y""",-0.3\r\n"\'=1\n2",\r\n" a",0\r\n');
  });

  test('a remark, an instrument and a label that look like formulas are harmless in every table', async () => {
    const text = noteText('').replace('with: optical probe', 'with: "=cmd()"').replace(/label: floating-mat tank/, 'label: "@mat"').replace(/^(20:00.*)$/m, '$1 ; =1+1');
    const files = await packageOf(text);
    for (const [path, bytes] of files) if (path.endsWith('.csv')) for (const row of Papa.parse<string[]>(bytes.toString('utf8')).data) for (const cell of row) assert.doesNotMatch(cell, /^[=@]/, path);
  });

  test('known licences get their address; a package needs a time of publishing', async () => {
    const licence = (words: string): unknown => licenceOf(readNote(noteText('').replace('by: A keeper', `by: A keeper\nlicence: ${words}`), new Map()));
    assert.deepEqual(licence('CC BY 4.0'), { title: 'CC BY 4.0', name: 'CC-BY-4.0', url: 'https://creativecommons.org/licenses/by/4.0/' });
    assert.deepEqual(licence('ask me'), { title: 'ask me', name: 'ask-me', url: null });
    assert.equal(await publishData(readNote(samplePostText, new Map()), { stem: 'night', toolVersion: '1.2.3' }), null);
  });

  test('equal notes give equal bytes', async () => {
    assert.deepEqual(await packageOf(samplePostText), await packageOf(samplePostText));
  });
});
