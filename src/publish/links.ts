// Which links a post keeps: http, https, mailto, places in the page and relative paths. Everything else becomes text.

/** True when a link's address may stand in a post. `href` is as markdown-it normalised it. */
export function linkAllowed(href: string): boolean {
  const bare = href.replace(/[\u0000-\u0020\u007F-\u00A0\u200B-\u200F\u2028\u2029\uFEFF]/g, '');
  if (bare === '') return false;
  if (/^(?:https?:\/\/|mailto:)/i.test(bare)) return true;
  // A colon before any slash, question mark or hash is a scheme; two slashes would go to another host.
  return !/^[^/?#]*:/.test(bare) && !/%3a/i.test(bare.split(/[/?#]/)[0] ?? '') && !/^[/\\]{2}/.test(bare);
}

/** True for an image inside the address itself; nothing else is shown, because a post fetches nothing. */
export function imageAllowed(source: string): boolean {
  return /^data:image\/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/]+=*$/i.test(source);
}
