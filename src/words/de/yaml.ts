// Why a line of a plan or of a block's options cannot be read, by the reader's code.
import type { YamlReason } from '../en/yaml.ts';

const table: Readonly<Record<YamlReason, string>> = {
  marker: 'ein Plan ist ein Stück ohne --- oder ... zwischen seinen Zeilen',
  'no-key': 'es hat keinen Schlüssel und gehört zu keinem Wert darüber',
  'too-deep': 'die Klammern sind zu tief verschachtelt',
  TAB_AS_INDENT: 'es ist mit Tabulator eingerückt',
  BAD_INDENT: 'es steht unter keiner der Zeilen darüber',
  MISSING_CHAR: 'ein Doppelpunkt, ein Komma oder ein schließendes Zeichen fehlt',
  BLOCK_AS_IMPLICIT_KEY: 'in der Zeile steht ein zweiter Doppelpunkt',
  BLOCK_IN_FLOW: 'Zeilen mit Strichen oder Schlüsseln können nicht in Klammern stehen',
  MULTILINE_IMPLICIT_KEY: 'der Zeile darüber fehlt ein Doppelpunkt',
  MULTIPLE_DOCS: 'ein Plan ist ein Stück ohne --- oder ... zwischen seinen Zeilen',
  BAD_DQ_ESCAPE: 'ein Rückstrich in Anführungszeichen braucht einen zweiten',
  UNEXPECTED_TOKEN: 'nach dem Ende des Werts folgt noch etwas',
  BAD_SCALAR_START: 'ein Wert kann so nicht beginnen, außer in Anführungszeichen',
  BAD_ALIAS: 'Anker und Verweise (& und *) gibt es in Plänen nicht',
  BAD_DIRECTIVE: 'Zeilen, die mit % beginnen, gibt es in Plänen nicht',
  NON_STRING_KEY: 'der Schlüssel ist kein einfacher Text',
  'open-bracket': 'eine Klammer, die hier beginnt, wird nicht geschlossen',
  'no-options': 'er sollte Zeilen der Form „Angabe: Wert“ enthalten',
};

export const yamlReasons: Readonly<Record<string, string>> = table;
