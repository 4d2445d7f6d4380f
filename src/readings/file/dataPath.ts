// Paths of data files: inside the note's own folder tree, written with forward slashes.

/** The path in its plain form (`data/probe-a.csv`), or null when it leaves the note's folder or is no plain relative path. */
export function dataPath(text: string): string | null {
  const path = text.trim();
  if (path === '' || /[\u0000-\u001f\\:*?"<>|]/u.test(path) || path.startsWith('/') || path.startsWith('~')) return null;
  let decoded = path;
  try { decoded = decodeURIComponent(path); } catch { decoded = path; }
  if (/[\u0000\\]/u.test(decoded) || decoded.split('/').includes('..')) return null;
  const parts = path.split('/').filter((part) => part !== '' && part !== '.');
  return parts.length === 0 || parts.includes('..') ? null : parts.join('/');
}
