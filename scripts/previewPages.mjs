// The preview's content as a page of its own in the colours of the editor's four themes, for axe: charts stand as their sized places.
import fs from 'node:fs/promises';
import path from 'node:path';
import createMarkdown from 'markdown-it';
import { register } from 'tsx/esm/api';
import { root } from './install.mjs';

register();
const { evenwaterMarkdown } = await import('../src/render/plugin.ts');
const { readNoteFile } = await import('../src/cli/noteFiles.ts');

/** The editor's colours of its own themes (Dark Modern, Light Modern, and the two of high contrast): ground and text; and the contrast that is asked for. */
export const previewThemes = {
  dark: { classes: 'vscode-dark', ground: '#1F1F1F', text: '#CCCCCC', contrast: 4.5 },
  light: { classes: 'vscode-light', ground: '#FFFFFF', text: '#3B3B3B', contrast: 4.5 },
  'high contrast': { classes: 'vscode-high-contrast', ground: '#000000', text: '#FFFFFF', contrast: 7 },
  'high contrast light': { classes: 'vscode-high-contrast vscode-high-contrast-light', ground: '#FFFFFF', text: '#292929', contrast: 7 },
};

/** The page of a note in a theme. */
export async function previewPage(name, { classes, ground, text }) {
  const { note } = await readNoteFile(path.join(root, name));
  const body = evenwaterMarkdown(createMarkdown({ html: false }), { noteFor: () => note, target: 'preview' }).render(note.text);
  const style = await fs.readFile(path.join(root, 'media/preview.css'), 'utf8');
  return `<!doctype html><html lang="en" style="--vscode-editor-background:${ground};--vscode-editor-foreground:${text}"><head><meta charset="utf-8"><title>${path.basename(name)}</title>
<style>body{background:${ground};color:${text};font:14px/1.6 sans-serif;padding:0 26px}a{color:inherit}${style}</style></head><body class="vscode-body ${classes}"><main>${body}</main></body></html>`;
}
