// The tooltip of a chart: text only, in the chart's own box.
type Handler = (handler: unknown, event: MouseEvent, item: unknown, value: unknown) => void;

/** A tooltip handler that writes text into a root; never HTML. */
export function showTooltip(root: ShadowRoot): Handler {
  return (_handler, event, _item, value) => {
    const before = root.querySelector<HTMLElement>('.tip');
    if (value === null || value === undefined || value === '') {
      before?.remove();
      return;
    }
    const tip = before ?? document.createElement('div');
    tip.className = 'tip';
    tip.textContent = asText(value);
    const box = (root.host as HTMLElement).getBoundingClientRect();
    tip.style.left = `${Math.min(event.clientX - box.left + 12, Math.max(0, box.width - 160))}px`;
    tip.style.top = `${event.clientY - box.top + 12}px`;
    if (!before) root.append(tip);
  };
}

function asText(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  return Object.entries(value).map(([name, each]) => `${name}: ${String(each)}`).join('\n');
}
