// Draws the charts of a preview and keeps them: each into a shadow root that survives updates of the text around it,
// drawn again only when its specification or the theme has changed.
import { ChartBox } from './chartBox.ts';
import { currentTheme, onThemeChange } from './theme.ts';

const boxes = new WeakMap<HTMLElement, ChartBox>();

/** Brings every placeholder of the page up to date. */
function drawAll(): void {
  const theme = currentTheme();
  for (const element of document.querySelectorAll<HTMLElement>('.evenwater-chart')) {
    let box = boxes.get(element);
    if (!box) boxes.set(element, box = new ChartBox(element));
    void box.show(theme);
  }
}

window.addEventListener('vscode.markdown.updateContent', drawAll);
onThemeChange(drawAll);
drawAll();
