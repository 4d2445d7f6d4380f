// Lint rules. The import order of the rooms (DEVELOPERS.md) is held here: a room may import only rooms above it.
import tseslint from 'typescript-eslint';

/** The rooms of src in the order of imports. A room may import itself and every room before it. */
export const rooms = [
  'problems', 'words', 'time', 'quantities', 'sky', 'water', 'statistics', 'note', 'protocol', 'readings', 'dataset',
  'analysis', 'formula', 'claims', 'design', 'experiment', 'edits', 'assist', 'writing', 'charts', 'render', 'publish',
];
/** The shells: each may import every pure room, never one another. */
export const shells = ['editor', 'preview', 'cli'];

const restrictions = (forbiddenRooms, packages) => ({
  'no-restricted-imports': ['error', {
    paths: packages.filter((name) => !name.includes('*')).map((name) => ({ name, message: `Only the room made for it may import ${name}.` })),
    patterns: [
      ...(forbiddenRooms.length ? [{ regex: `^\\.\\.?/(?:.*/)?(?:${forbiddenRooms.join('|')})/`, message: 'Imports go up the table of rooms only (DEVELOPERS.md).' }] : []),
      ...packages.filter((name) => name.includes('*')).map((name) => ({ group: [name], message: `Only the room made for it may import ${name}.` })),
    ],
  }],
});

export default tseslint.config(
  { ignores: ['dist/**', 'out/**', 'workbench/**', 'node_modules/**', 'media/**'] },
  ...tseslint.configs.recommended,
  {
    files: ['src/**/*.ts', 'test/**/*.ts'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-empty': ['error', { allowEmptyCatch: false }],
      'no-eval': 'error',
      'no-new-func': 'error',
    },
  },
  ...rooms.map((room, index) => ({
    files: [`src/${room}/**/*.ts`],
    rules: restrictions([...rooms.slice(index + 1), ...shells], ['vscode', 'node:*']),
  })),
  { files: ['src/editor/**/*.ts'], rules: restrictions(['preview', 'cli'], ['node:*']) },
  { files: ['src/preview/**/*.ts'], rules: restrictions(['editor', 'cli'], ['vscode', 'node:*']) },
  { files: ['src/cli/**/*.ts'], rules: restrictions(['editor', 'preview'], ['vscode']) },
  { files: ['test/**/*.ts'], rules: { '@typescript-eslint/no-unused-expressions': 'off' } },
);
