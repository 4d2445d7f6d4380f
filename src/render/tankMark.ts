// The small sign of a tank: its point shape in its colour, the same in charts, tables and the plan card.
import type { Tank } from '../protocol/types.ts';
import { tankColour, tankShape } from '../charts/theme.ts';
import { element, type Html } from './html.ts';

const paths: Readonly<Record<string, string>> = {
  circle: 'M5,1.2A3.8,3.8 0 1,1 4.99,1.2Z', square: 'M1.6,1.6H8.4V8.4H1.6Z', 'triangle-up': 'M5,1L9,8.6H1Z', diamond: 'M5,0.6L8.8,5L5,9.4L1.2,5Z',
  'triangle-down': 'M5,9L9,1.4H1Z', 'triangle-right': 'M9,5L1.4,1V9Z', 'triangle-left': 'M1,5L8.6,1V9Z',
};

export function tankMark(tank: Pick<Tank, 'index'> | null): Html {
  const index = tank?.index ?? null;
  return element('svg', { class: 'evenwater-tank-mark', viewBox: '0 0 10 10', width: 10, height: 10, 'aria-hidden': 'true', focusable: 'false' },
    element('path', { d: paths[tankShape(index)] ?? paths['circle']!, fill: `var(--evenwater-${tankColour(index)}, currentColor)` }));
}
