// Writes the notes of samples/templates: what `evenwater new` makes of each template when every question is skipped.
// Run with: npx tsx scripts/templates.ts
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { templates } from '../src/edits/newNoteTemplates.ts';
import { templateSample } from '../src/edits/templateSamples.ts';

const folder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../samples/templates');
mkdirSync(folder, { recursive: true });
for (const template of templates) writeFileSync(path.join(folder, `${template.name}.tank.md`), templateSample(template.name));
