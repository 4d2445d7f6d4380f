// German is a whole second language of the editor: the same strings as English, with the same places, none left in English.
import { deepEqual, ok } from 'node:assert/strict';
import { readFileSync } from 'node:fs';

const read = (file: string): Record<string, string> => JSON.parse(readFileSync(file, 'utf8')) as Record<string, string>;

/** Strings that German writes as English does: names, and places with nothing but marks between them. */
const alike = new Set(['configuration.title', 'Plan: {0}', '{0} in {1}']);

const places = (text: string): string[] => (text.match(/\{\d+\}/g) ?? []).sort();
const links = (text: string): string[] => text.match(/\]\([^)]*\)/g) ?? [];
const codes = (text: string): string[] => (text.match(/`[^`]*`/g) ?? []).filter((each) => !/formula/.test(each));

for (const [file, german] of [['package.nls.json', 'package.nls.de.json'], ['l10n/bundle.l10n.json', 'l10n/bundle.l10n.de.json']] as const) {
  suite(german, () => {
    const english = read(file);
    const words = read(german);

    test('has the strings of the English file and no other', () => {
      deepEqual(Object.keys(words).sort(), Object.keys(english).sort());
    });

    test('keeps places, links and code', () => {
      for (const [key, text] of Object.entries(english)) {
        deepEqual(places(words[key]!), places(text), key);
        deepEqual(links(words[key]!), links(text), key);
        for (const code of codes(text)) ok(words[key]!.includes(code), `${key}: ${code}`);
        deepEqual(/\s$/.test(words[key]!), /\s$/.test(text), `${key}: white space at the end`);
      }
    });

    test('leaves nothing empty and nothing in English', () => {
      for (const [key, text] of Object.entries(english)) {
        ok(words[key]!.trim() !== '', key);
        const hasWords = /\p{L}{2}/u.test(text.replace(/\{\d+\}/g, ''));
        if (hasWords && !alike.has(key)) ok(words[key] !== text, `${key} is not translated`);
        ok(!/\b(?:the|and|of|is|are|with|not|to)\b/.test(words[key]!.replace(/`[^`]*`|\([^)]*\)|evenwater check/g, '')), `${key}: ${words[key]}`);
        ok(!/\b(?:Sie|Ihr|Ihre|Ihnen|du|dein)\b/.test(words[key]!), `${key} addresses somebody: ${words[key]}`);
        ok(!/“[^“„]*”|"[^"{]*"(?![^`]*`)/.test(words[key]!.replace(/`[^`]*`/g, '')), `${key}: quotation marks`);
      }
    });
  });
}
