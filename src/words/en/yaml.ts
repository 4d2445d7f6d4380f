// Why a line of a plan or of a block's options cannot be read, by the reader's code.
const table = {
  marker: 'a plan is one piece without --- or ... between its lines',
  'no-key': 'it has no key and belongs to no value above it',
  'too-deep': 'its brackets are nested too deeply',
  TAB_AS_INDENT: 'it is indented with a tab',
  BAD_INDENT: 'it stands in no column of the lines above',
  MISSING_CHAR: 'a colon, comma or closing mark is missing',
  BLOCK_AS_IMPLICIT_KEY: 'there is a second colon on the line',
  BLOCK_IN_FLOW: 'lines with dashes or keys cannot stand inside brackets',
  MULTILINE_IMPLICIT_KEY: 'the line above it lacks a colon',
  MULTIPLE_DOCS: 'a plan is one piece without --- or ... between its lines',
  BAD_DQ_ESCAPE: 'a backslash in quotation marks needs a second one',
  UNEXPECTED_TOKEN: 'something follows where the value has ended',
  BAD_SCALAR_START: 'a value cannot start with this letter unless it stands in quotation marks',
  BAD_ALIAS: 'anchors and aliases (& and *) are not used in plans',
  BAD_DIRECTIVE: 'lines that start with % are not used in plans',
  NON_STRING_KEY: 'its key is no plain text',
  'open-bracket': 'a bracket that opens here is not closed',
  'no-options': 'it should hold lines of the form “option: value”',
} as const;

export type YamlReason = keyof typeof table;
export const yamlReasons: Readonly<Record<string, string>> = table;
