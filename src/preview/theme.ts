// The editor's theme as the preview tells it: by the classes of the body, which change without a new page.
import type { ChartTheme } from '../charts/types.ts';

export function currentTheme(): ChartTheme {
  const { classList } = document.body;
  if (classList.contains('vscode-high-contrast-light')) return 'high-contrast-light';
  if (classList.contains('vscode-high-contrast')) return 'high-contrast';
  return classList.contains('vscode-dark') ? 'dark' : 'light';
}

export function onThemeChange(act: () => void): void {
  let before = currentTheme();
  new MutationObserver(() => {
    const now = currentTheme();
    if (now === before) return;
    before = now;
    act();
  }).observe(document.body, { attributes: true, attributeFilter: ['class'] });
}
