// The injected grammars: blocks and claims get their scopes, and the rest of the file keeps its own.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import * as oniguruma from 'vscode-oniguruma';
import * as textmate from 'vscode-textmate';

const require = createRequire(import.meta.url);
const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as { contributes: { grammars: { scopeName: string; path: string; injectTo?: string[] }[] } };

/** A Markdown grammar with the rules that matter for injection; the editor's own has the same scopes. */
const markdown = {
  scopeName: 'text.html.markdown',
  patterns: [{ include: '#fence' }, { include: '#heading' }, { include: '#paragraph' }],
  repository: {
    $self: {}, $base: {},
    heading: { match: '^#+ .*$', name: 'markup.heading.markdown', captures: { 0: { patterns: [{ include: '#inline' }] } } },
    fence: {
      begin: '(^|\\G)(\\s*)(`{3,}|~{3,})\\s*(?=([^`]*)?$)', end: '(^|\\G)(\\2|\\s{0,3})(\\3)\\s*$', name: 'markup.fenced_code.block.markdown',
    },
    paragraph: { begin: '(^|\\G)[ ]{0,3}(?=[^ \\t\\n])', while: '(^|\\G)(?=never)', name: 'meta.paragraph.markdown', patterns: [{ include: '#inline' }] },
    inline: { patterns: [{ match: '`[^`]*`', name: 'markup.inline.raw.string.markdown' }, { match: '\\\\[{}]', name: 'constant.character.escape.markdown' }] },
  },
} as unknown as textmate.IRawGrammar;

async function loadMarkdown(): Promise<textmate.IGrammar> {
  await oniguruma.loadWASM(readFileSync(path.join(path.dirname(require.resolve('vscode-oniguruma')), 'onig.wasm')));
  const files = new Map(manifest.contributes.grammars.map((grammar) => [grammar.scopeName, grammar]));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({ createOnigScanner: (sources) => new oniguruma.OnigScanner(sources), createOnigString: (text) => new oniguruma.OnigString(text) }),
    loadGrammar: (scope) => {
      if (scope === 'text.html.markdown') return Promise.resolve(markdown);
      if (scope === 'source.yaml') return Promise.resolve({ scopeName: scope, patterns: [{ match: ':', name: 'punctuation.yaml' }], repository: {} } as unknown as textmate.IRawGrammar);
      const file = files.get(scope);
      return Promise.resolve(file ? JSON.parse(readFileSync(file.path, 'utf8')) as textmate.IRawGrammar : null);
    },
    getInjections: (scope) => manifest.contributes.grammars.filter((grammar) => grammar.injectTo?.includes(scope)).map((grammar) => grammar.scopeName),
  });
  const grammar = await registry.loadGrammar('text.html.markdown');
  ok(grammar);
  return grammar;
}

suite('grammar', () => {
  let grammar: textmate.IGrammar;
  suiteSetup(async () => { grammar = await loadMarkdown(); });

  /** Every token of the text: its characters and its innermost scope of ours (or the innermost of all). */
  function tokens(text: string): { text: string; scopes: string[] }[] {
    let state = textmate.INITIAL;
    return text.split('\n').flatMap((line) => {
      const read = grammar.tokenizeLine(line, state);
      state = read.ruleStack;
      return read.tokens.map((token) => ({ text: line.slice(token.startIndex, token.endIndex), scopes: token.scopes }));
    });
  }
  const scopesOf = (text: string, part: string): string[] => {
    const found = tokens(text).find((token) => token.text.trim() === part);
    ok(found, `no token ${JSON.stringify(part)} among ${JSON.stringify(tokens(text).map((token) => token.text))}`);
    return found.scopes;
  };
  const has = (text: string, part: string, scope: string) => ok(scopesOf(text, part).some((each) => each.startsWith(scope)), `${part}: ${scopesOf(text, part).join(' ')}`);

  test('a value claim: braces, number, formula', () => {
    const line = 'It lost {0.24 mg/L = fall(mat.DO, light-off..22:30)} at once.';
    has(line, '{', 'punctuation.definition.claim.begin');
    has(line, '0.24', 'constant.numeric.claim');
    has(line, '=', 'keyword.operator.claim');
    has(line, 'fall', 'support.function');
    has(line, 'mat', 'variable.other.object');
    has(line, 'light-off', 'constant.language');
    has(line, '22:30', 'constant.other.instant');
    has(line, '}', 'punctuation.definition.claim.end');
    deepEqual(scopesOf(line, 'at once.'), ['text.html.markdown', 'meta.paragraph.markdown']);
  });

  test('an unfilled claim, a condition, a stated value', () => {
    has('Now {? = last(mat.DO)}.', '?', 'keyword.other.unfilled');
    has('So {it fell faster if mat.DO < 3 mg/L}.', 'if', 'keyword.control.claim');
    has('So {it fell faster if mat.DO < 3 mg/L}.', 'mg/L', 'keyword.other.unit');
    has('Feeding {twice a day = stated "log; }"}.', '"log; }"', 'string.quoted.double');
  });

  test('claims in headings; no claims in code, after a backslash, or without a spaced separator', () => {
    has('## Fell by {0.24 mg/L = x}', '0.24', 'constant.numeric.claim');
    for (const line of ['`{1 = x}` here', '\\{1 = x} here', 'a {b=c} d', 'a {word} d']) {
      ok(tokens(line).every((token) => !token.scopes.some((scope) => scope.includes('claim'))), line);
    }
  });

  test('a plan is YAML, readings have their own cells, and the fence closes all', () => {
    const plan = '```protocol\ntanks:\n```\nafter {1 = x}';
    ok(tokens(plan).some((token) => token.text.includes('tanks') && token.scopes.includes('meta.embedded.block.yaml')));
    has(plan, '1', 'constant.numeric.claim');
    const readings = '```readings night\ntime  mat.DO  room.P[hPa]\n20:00  8.28->8.26  (4.90)  ; out\n# day\n20:30  7.3?  -\n```\nafter';
    has(readings, 'night', 'entity.name.block');
    has(readings, 'time', 'keyword.other.time');
    has(readings, 'hPa', 'keyword.other.unit');
    has(readings, '20:00', 'constant.other.instant');
    has(readings, '->', 'keyword.operator.correction');
    has(readings, '8.26', 'constant.numeric');
    has(readings, '4.90', 'markup.strikethrough');
    has(readings, '; out', 'comment.line.semicolon');
    has(readings, '# day', 'comment.line.number-sign');
    has(readings, '?', 'keyword.operator.doubtful');
    has(readings, '-', 'constant.language.missing');
    deepEqual(scopesOf(readings, 'after'), ['text.html.markdown', 'meta.paragraph.markdown']);
  });

  test('named results, and readings in a file', () => {
    const values = '~~~values\nfirst-loss = percent-fall(mat.DO)\n~~~';
    has(values, 'first-loss', 'variable.other.definition');
    has(values, 'percent-fall', 'support.function');
    const german = '~~~values\nhöchster-süd = max(süd.DO)\n~~~';
    has(german, 'höchster-süd', 'variable.other.definition');
    has(german, 'süd', 'variable.other.object');
    const file = '```readings\nfrom: probe.csv\nsha256: ab\n```';
    ok(tokens(file).some((token) => token.text.includes('sha256') && token.scopes.includes('meta.embedded.block.yaml')));
  });

  test('other fences are left alone', () => {
    for (const fence of ['```js\nfirst = second\n```', '```protocols\na: b\n```', '```\nreadings\n```']) {
      ok(tokens(fence).every((token) => !token.scopes.some((scope) => /evenwater|embedded/.test(scope))), fence);
    }
    equal(tokens('```js\n{1 = x}\n```').some((token) => token.scopes.some((scope) => scope.includes('claim'))), false);
  });
});
