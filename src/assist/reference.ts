// One problem's section of the reference page.

/** The section under `### code` with a heading of the first level; null where there is none. */
export function sectionOf(reference: string, code: string): string | null {
  const start = reference.indexOf(`\n### ${code}\n`);
  if (start < 0) return null;
  const end = reference.indexOf('\n### ', start + 1);
  return `${reference.slice(start + 1, end < 0 ? reference.length : end).replace(/^###/, '#').trimEnd()}\n`;
}
