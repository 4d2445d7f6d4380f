// A click on the line that a problem names brings that line into view in the editor. Only the preview's own script may speak to the
// editor: it does when the preview scrolls, so the problem is scrolled to the top; and on a double click, where the author has
// switched that on, so the click is handed to it as one.

/** Listens once for the whole page; what the preview draws later is covered. */
export function revealOnClick(): void {
  document.addEventListener('click', (event) => {
    const problem = event.target instanceof Element ? event.target.closest('.evenwater-to-source')?.closest<HTMLElement>('[data-line]') : null;
    if (!problem) return;
    const top = problem.getBoundingClientRect().top + window.scrollY;
    const asDoubleClick = new Event('dblclick', { bubbles: true });
    // A hair below its upper edge, so that the line is that of this element and not of the one above.
    Object.defineProperty(asDoubleClick, 'pageY', { value: top + 0.01 });
    problem.dispatchEvent(asDoubleClick);
    window.scrollTo({ top: Math.ceil(top) });
  });
}
