// Runs in every Markdown preview: fetches the chart code when, and only when, a chart is there. At most 10 kB built.
// Shows the line of a problem in the editor, too.
// The preview's content policy lets scripts run by nonce; the chart code gets this script's own.
import { revealOnClick } from './reveal.ts';

const own = document.currentScript as HTMLScriptElement | null;

function fetchChartCode(script: HTMLScriptElement): boolean {
  if (!document.querySelector('.evenwater-chart')) return false;
  const charts = document.createElement('script');
  charts.nonce = script.nonce;
  charts.src = new URL('chart.js', script.src).href;
  document.head.append(charts);
  return true;
}

// The page's first content arrives before or after this script, and without an event: watch for it.
if (own && !fetchChartCode(own)) {
  const watch = new MutationObserver(() => { if (fetchChartCode(own)) watch.disconnect(); });
  watch.observe(document.documentElement, { childList: true, subtree: true });
}

revealOnClick();
