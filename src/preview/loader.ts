// Runs in every Markdown preview: fetches the chart code when, and only when, a chart is there. At most 10 kB built.
// The preview's content policy lets scripts run by nonce; the chart code gets this script's own.
const own = document.currentScript as HTMLScriptElement | null;

function fetchWhenNeeded(): boolean {
  if (!own || !document.querySelector('.evenwater-chart')) return false;
  const script = document.createElement('script');
  script.nonce = own.nonce;
  script.src = new URL('chart.js', own.src).href;
  document.head.append(script);
  return true;
}

const again = () => { if (fetchWhenNeeded()) window.removeEventListener('vscode.markdown.updateContent', again); };
window.addEventListener('vscode.markdown.updateContent', again);
if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', again, { once: true });
else again();
