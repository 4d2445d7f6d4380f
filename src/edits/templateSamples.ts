// The notes of samples/templates: each template with every question skipped, on a day in spring.
import { newNote } from './newNote.ts';

/** The sample of a template. A test holds that the file in samples/templates is this text. */
export function templateSample(name: string): string {
  return newNote({ template: name }, {
    today: '2026-04-11', timeZone: 'Europe/Tallinn',
    lead: '*A template: tanks, dates and instruments are invented. `evenwater new` writes a note like this one with your own.*',
  });
}
