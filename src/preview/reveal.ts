// A click on the line that a problem names, or Enter on it, brings that line into view in the editor and offers to go there. Only the
// preview's own script may speak to the editor: it does when the preview scrolls, so the problem is scrolled to the top; and on a
// double click, where that is switched on, so the click is handed to it as one, and the cursor goes to the line at once.
// Elsewhere the menu of the problem opens, with the command that puts the cursor there (src/editor/commands/goToProblem.ts).

/** Listens once for the whole page; what the preview draws later is covered. */
export function revealOnClick(): void {
  document.addEventListener('click', (event) => {
    const button = event.target instanceof Element ? event.target.closest('.evenwater-to-source') : null;
    const problem = button?.closest<HTMLElement>('[data-line]');
    if (!button || !problem) return;
    const top = problem.getBoundingClientRect().top + window.scrollY;
    handInDoubleClick(problem, top);
    window.scrollTo({ top: Math.ceil(top) });
    if (!doubleClicksGoThere()) openMenu(button);
  });
}

function handInDoubleClick(problem: HTMLElement, top: number): void {
  const asDoubleClick = new Event('dblclick', { bubbles: true });
  // A hair below its upper edge, so that the line is that of this element and not of the one above. The list keeps 2 px above its
  // first problem (src/render/style.ts): between two elements of one upper edge the preview finds no line.
  Object.defineProperty(asDoubleClick, 'pageY', { value: top + 0.01 });
  problem.dispatchEvent(asDoubleClick);
}

/** The setting `markdown.preview.doubleClickToSwitchToEditor`, as the preview hands it to its own script. */
function doubleClicksGoThere(): boolean {
  const settings = document.getElementById('vscode-markdown-preview-data')?.dataset['settings'];
  return settings !== undefined && /"doubleClickToSwitchToEditor":\s*true/.test(settings);
}

/** As a right click does, below the button. */
function openMenu(button: Element): void {
  const { left, bottom } = button.getBoundingClientRect();
  button.dispatchEvent(new MouseEvent('contextmenu', { bubbles: true, cancelable: true, clientX: left, clientY: bottom }));
}
