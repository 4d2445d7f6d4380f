// A click on the line that a problem names shows that line in the editor. Only the preview's own script may speak to the editor, and
// it does so on a double click, with the line of the element at that height: the click is handed to it as one.

/** Listens once for the whole page; what the preview draws later is covered. */
export function revealOnClick(): void {
  document.addEventListener('click', (event) => {
    const problem = event.target instanceof Element ? event.target.closest('.evenwater-to-source')?.closest<HTMLElement>('[data-line]') : null;
    if (!problem) return;
    const asDoubleClick = new Event('dblclick', { bubbles: true });
    // A hair below its upper edge, so that the line is that of this element and not of the one above.
    Object.defineProperty(asDoubleClick, 'pageY', { value: problem.getBoundingClientRect().top + window.scrollY + 0.01 });
    problem.dispatchEvent(asDoubleClick);
  });
}
