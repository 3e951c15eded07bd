// The page's only script, and the page does without it: focusing a stage, and numbers on or off, keep
// the place on the page instead of loading it anew; single keys reach what the strip offers (1 to 9,
// 0, n); Escape and a press elsewhere close the contents. Keys act only outside fields.

/** The view that is in place, without its anchor. */
let shown = location.pathname + location.search;

/** Loads a view of this sheet and puts it in place without moving what is being read. */
async function showView(/** @type {string} */ address, /** @type {boolean} */ isNew) {
  const response = await fetch(address, { headers: { accept: 'text/html' } }).catch(() => null);
  if (!response?.ok) {
    location.assign(address); // the browser tells what is wrong better than this script could
    return;
  }
  const next = new DOMParser().parseFromString(await response.text(), 'text/html');
  const [here, there] = [document.querySelector('.page'), next.querySelector('.page')];
  if (!here || !there) {
    location.assign(address);
    return;
  }
  const anchor = firstInView();
  const focused = document.activeElement?.closest('[data-key]')?.getAttribute('data-key') ?? null;
  here.replaceWith(there);
  document.title = next.title;
  if (isNew) history.pushState(null, '', address);
  shown = location.pathname + location.search;
  const again = anchor && document.getElementById(anchor.id);
  if (again) scrollBy({ top: again.getBoundingClientRect().top - anchor.top, behavior: 'instant' });
  if (focused !== null) {
    const key = there.querySelector(`[data-key="${focused}"]`);
    if (key instanceof HTMLElement) key.focus({ preventScroll: true });
  }
}

/** The first row or section below the strip, and where it stands. */
function firstInView() {
  const strip = document.querySelector('.strip')?.getBoundingClientRect().bottom ?? 0;
  for (const element of document.querySelectorAll('.sheet [id]')) {
    const { top, bottom } = element.getBoundingClientRect();
    if (bottom > strip && top < innerHeight) return { id: element.id, top };
  }
  return null;
}

document.addEventListener('click', (event) => {
  const target = event.target instanceof Element ? event.target : null;
  const panel = document.querySelector('details.panel[open]');
  if (panel && (!target || !panel.contains(target) || target.closest('a')))
    panel.removeAttribute('open');
  const link = target?.closest('a[data-key]');
  const isPlain = event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey;
  if (!(link instanceof HTMLAnchorElement) || !isPlain || event.altKey) return;
  event.preventDefault();
  void showView(link.href, true);
});

document.addEventListener('keydown', (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
  const target = event.target instanceof Element ? event.target : document.body;
  if (target.closest('input, textarea, select, [contenteditable]')) return;
  if (event.key === 'Escape')
    document.querySelector('details.panel[open]')?.removeAttribute('open');
  const isSwitch = event.key === ' ' && target.matches('[role=switch]');
  const link = isSwitch ? target : document.querySelector(`a[data-key="${CSS.escape(event.key)}"]`);
  if (!(link instanceof HTMLElement)) return;
  event.preventDefault();
  link.click();
});

addEventListener('popstate', () => {
  const now = location.pathname + location.search;
  // A step between anchors of the same view is the browser's own.
  if (now !== shown && document.querySelector('.page')) void showView(location.href, false);
});
