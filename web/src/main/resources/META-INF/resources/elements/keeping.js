/**
 * What somebody is in the middle of stays when the page is drawn anew: the focus with its caret, what was typed and not
 * yet handed on, and how far a table was scrolled. Where a new node takes an old one's place, it takes these over.
 */

/** Fields that were typed into, and elements that were scrolled; those that are gone drop out as they are met. */
const typed = new Set();
const scrolled = new Set();

/** What is being drawn anew. */
let whole = null;

addEventListener('input', event => typed.add(event.target), true);
addEventListener('scroll', event => { if (event.target instanceof Element) scrolled.add(event.target); }, true);
for (const type of ['submit', 'reset']) addEventListener(type, event => { for (const field of event.target.elements) typed.delete(field); }, true);

/** Whether a field holds what nobody has yet: an entry of a form before it is sent, one that is wrong, one that is being typed. */
export function isDraft(field) {
  if (!typed.has(field)) return false;
  if (field.form?.isConnected) return true;
  return !field.matches('select, [type="checkbox"], [type="radio"]') && (field === document.activeElement || field.hasAttribute('aria-invalid'));
}

/**
 * Runs `change`, which may draw anew whatever is in `root`, and hands the focus, the caret, drafts and scrolled tables on
 * to what stands there afterwards. Where the focused control is gone, the focus stays in its place of the page.
 */
export function keeping(root, change) {
  // what is drawn anew as a part of it is looked after with the whole
  if (whole?.contains(root)) return change();
  const active = root.isConnected && root.contains(document.activeElement) ? document.activeElement : null;
  const within = set => [...set].filter(one => one.isConnected ? root.contains(one) : set.delete(one) && false);
  const held = [...new Set([...(active ? [active] : []), ...within(typed).filter(isDraft), ...within(scrolled)])].map(one => stateOf(root, one));
  const place = active?.closest('[data-place]');
  const outer = whole;
  whole = root;
  try {
    change();
  } finally {
    whole = outer;
  }
  for (const state of held) restore(root, state);
  if (active && document.activeElement === document.body && place?.isConnected) place.focus({ preventScroll: true });
  return undefined;
}

function stateOf(root, node) {
  const { dataset: { key }, id, localName } = node;
  const state = { node, key, id, localName, at: key || id ? -1 : [...root.querySelectorAll(localName)].indexOf(node), text: node.matches('button, a, summary') ? node.textContent : null, focused: node === document.activeElement, left: node.scrollLeft, top: node.scrollTop };
  if (!node.matches('input, textarea, select')) return state;
  // what is no text has no caret
  const caret = node.selectionStart ?? null;
  return { ...state, draft: isDraft(node) ? { value: node.value, checked: node.checked } : null, caret: caret === null ? null : [caret, node.selectionEnd, node.selectionDirection] };
}

function restore(root, { node, key, id, localName, at, text, focused, left, top, draft, caret }) {
  if (node.isConnected && (!focused || document.activeElement === node)) return;
  const one = node.isConnected ? node : (key && root.querySelector(`[data-key="${CSS.escape(key)}"]`)) || (id && root.querySelector(`#${CSS.escape(id)}`))
    || !key && [...root.querySelectorAll(localName)].find((other, i) => (text === null ? i === at : other.textContent === text));
  if (!one) return;
  if (draft && one !== node) {
    Object.assign(one, draft.checked === undefined ? { value: draft.value } : draft);
    one.dispatchEvent(new Event('input', { bubbles: true }));
  }
  if (focused && (document.activeElement === document.body || !document.activeElement)) one.focus({ preventScroll: true });
  if (caret && one.setSelectionRange && one.selectionStart !== null) one.setSelectionRange(...caret);
  if (one.scrollLeft !== left) one.scrollLeft = left;
  if (one.scrollTop !== top) one.scrollTop = top;
}
