// The prompt's text as the extension wants it, while the window may still show an older one: keys that are pressed before a
// change of ours arrives there are put behind it, so that fast fingers on a slow line lose no digit.

export class PromptText {
  /** What the window showed when it was last heard of. */
  #shown = '';
  #wanted = '';
  /** A text of ours that the window has not shown yet. */
  #sent: string | null = null;

  get wanted(): string {
    return this.#wanted;
  }

  /** The window shows this text now: a key, or what it was sent. Gives the text to be sent to it, null for none. */
  heard(text: string): string | null {
    if (this.#sent === null) {
      this.#wanted = text;
    } else if (text === this.#sent) {
      this.#sent = null;
    } else {
      this.#wanted = changed(this.#wanted, this.#shown, text);
    }
    this.#shown = text;
    return this.#send();
  }

  /** The text is to be another one. Gives the text to be sent to the window, null for none. */
  want(text: string): string | null {
    this.#wanted = text;
    return this.#send();
  }

  /** One text at a time is on its way; the next one follows when it was shown. */
  #send(): string | null {
    if (this.#sent !== null || this.#wanted === this.#shown) return null;
    this.#sent = this.#wanted;
    return this.#wanted;
  }
}

/** What happened from `before` to `after` at the end of the text, done to `text`. */
function changed(text: string, before: string, after: string): string {
  if (after.startsWith(before)) return text + after.slice(before.length);
  if (before.startsWith(after)) return text.slice(0, Math.max(0, text.length - (before.length - after.length)));
  return after;
}
