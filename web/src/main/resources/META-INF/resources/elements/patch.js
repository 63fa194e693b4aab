import { isDraft, keeping } from './keeping.js';

/**
 * Brings what stands on the page up to what is wanted without putting new nodes in place of old ones: a press, the
 * focus or a caret in the middle of it stays where it is. Children are matched by `data-key` or `id`, else by order.
 */

const handlers = new WeakMap();

/** Attributes that the reader changes by hand: not taken back. */
const OWN_OPEN = new Set(['DETAILS', 'DIALOG']);

/** Listens such that a later `patch` can put another handler in this one's place. */
export function on(element, type, handler) {
  let own = handlers.get(element);
  if (!own) handlers.set(element, own = new Map());
  if (!own.has(type)) element.addEventListener(type, event => own.get(type)?.call(element, event));
  own.set(type, handler);
}

/**
 * A node that stands there already and is given again stays itself; a fresh one lends its looks, handlers and children
 * to the old one that matches it, and is then gone: handlers read `event.target`, not the node they were made with.
 *
 * @param {Element} parent
 * @param {(Node | string | null | false | undefined)[]} wanted its children from now on
 */
export function patch(parent, wanted) { keeping(parent, () => bring(parent, wanted)); }

function bring(parent, wanted) {
  const fresh = wanted.flat(Infinity).filter(child => child !== null && child !== false && child !== undefined)
    .map(child => (child instanceof Node ? child : document.createTextNode(String(child))));
  const olds = [...parent.childNodes];
  const keyed = new Map(olds.filter(keyOf).map(old => [keyOf(old), old]));
  const loose = olds.filter(old => !keyOf(old));
  const kept = new Set();
  for (const child of fresh) if (child.parentNode === parent) kept.add(child);
  const next = fresh.map(child => {
    if (kept.has(child)) return child;
    const match = keyOf(child) ? keyed.get(keyOf(child)) : loose.find(old => !kept.has(old) && alike(old, child));
    if (!match || kept.has(match)) return child;
    kept.add(match);
    return adopted(match, child);
  });
  for (const old of olds) if (!next.includes(old)) old.remove();
  let at = parent.firstChild;
  for (const child of next) {
    if (child === at) at = at.nextSibling;
    else if (parent.moveBefore && child.parentNode === parent && parent.isConnected) parent.moveBefore(child, at);
    else parent.insertBefore(child, at);
  }
}

function keyOf(node) {
  const key = node.dataset?.key ?? node.id;
  return key ? `${node.nodeName} ${key}` : null;
}

const alike = (a, b) => a.nodeName === b.nodeName && (a.nodeType !== 1 || classOf(a) === classOf(b) || !a.nodeName.includes('-'));

const classOf = element => (element.getAttribute('class') ?? '').split(' ')[0];

/** @returns {Node} the old node as the fresh one is, or the fresh one where the old cannot become it */
function adopted(old, fresh) {
  if (old.nodeType !== 1) {
    if (old.data !== fresh.data) old.data = fresh.data;
    return old;
  }
  if (old.localName.includes('-')) {
    if (!old.takeOver) return fresh;
    takeHandlers(old, fresh);
    old.takeOver(fresh);
    return old;
  }
  takeHandlers(old, fresh);
  takeAttributes(old, fresh);
  bring(old, [...fresh.childNodes]);
  takeValue(old, fresh);
  return old;
}

function takeHandlers(old, fresh) {
  const own = handlers.get(fresh) ?? new Map();
  for (const type of handlers.get(old)?.keys() ?? []) if (!own.has(type)) handlers.get(old).set(type, null);
  for (const [type, handler] of own) on(old, type, handler);
}

function takeAttributes(old, fresh) {
  const kept = name => name === 'open' && OWN_OPEN.has(old.nodeName);
  for (const { name } of [...old.attributes]) if (!fresh.hasAttribute(name) && !kept(name)) old.removeAttribute(name);
  for (const { name, value } of fresh.attributes) {
    if (old.getAttribute(name) === value || kept(name)) continue;
    // the page's policy lets no style attribute be written, only the style itself be changed
    if (name === 'style') old.style.cssText = value;
    else old.setAttribute(name, value);
  }
}

function takeValue(old, fresh) {
  if (!['SELECT', 'TEXTAREA', 'INPUT'].includes(old.nodeName) || isDraft(old)) return;
  if (old.type === 'checkbox' || old.type === 'radio') old.checked = fresh.checked;
  else if (old.nodeName === 'SELECT' || old !== document.activeElement && old.value !== fresh.value) old.value = fresh.value;
}
