import { h } from './make.js';

/** Menus that open from a button or at a place on the screen: arrow keys, Escape, a press elsewhere closes them. */

let open = null;

/** Closes the menu that is open. @param {boolean} back whether the focus goes back to where it was */
function closeMenu(back = false) {
  const was = open;
  open = null;
  if (!was) return;
  was.ended.abort();
  was.list.remove();
  was.button?.setAttribute('aria-expanded', 'false');
  if (back) was.before?.focus({ preventScroll: true });
}

/**
 * @param {({text: string, key: string, act: () => void, hint?: string, off?: boolean} | null)[]} items null is a line between
 * @param {{button?: HTMLElement, at?: [number, number], label: string}} where under a button or at a place, pixels of the screen
 */
export function openMenu(items, { button = null, at = null, label }) {
  const again = button && open?.button === button;
  closeMenu();
  if (again) return;
  const ended = new AbortController();
  const list = h('div.menu', { role: 'menu', 'aria-label': label, tabindex: -1 }, items.map(item => (item === null ? h('hr', { role: 'separator' })
    : h('button', { type: 'button', role: 'menuitem', tabindex: -1, 'data-key': item.key, 'aria-disabled': item.off ? 'true' : null, onclick: () => {
      if (item.off) return;
      closeMenu(true);
      item.act();
    } }, h('span', {}, item.text), item.hint ? h('kbd', {}, item.hint) : null))));
  document.body.append(list);
  open = { list, button, ended, before: document.activeElement };
  button?.setAttribute('aria-expanded', 'true');
  put(list, button?.getBoundingClientRect() ?? { left: at[0], right: at[0], top: at[1], bottom: at[1] });
  list.querySelector('[role="menuitem"]')?.focus({ preventScroll: true });
  const { signal } = ended;
  list.addEventListener('keydown', event => key(event, list), { signal });
  addEventListener('pointerdown', event => { if (!list.contains(event.target) && !button?.contains(event.target)) closeMenu(); }, { signal, capture: true });
  addEventListener('blur', () => closeMenu(), { signal });
  addEventListener('resize', () => closeMenu(), { signal });
}

function put(list, box) {
  const { offsetWidth: wide, offsetHeight: high } = list;
  const left = Math.max(6, Math.min(box.left, innerWidth - wide - 6));
  const below = box.bottom + 4 + high <= innerHeight - 6;
  list.style.left = `${left}px`;
  list.style.top = `${Math.max(6, below ? box.bottom + 4 : box.top - high - 4)}px`;
}

function key(event, list) {
  const items = [...list.querySelectorAll('[role="menuitem"]')];
  const here = items.indexOf(document.activeElement);
  const to = { ArrowDown: here + 1, ArrowUp: here - 1, Home: 0, End: items.length - 1 }[event.key];
  if (to !== undefined) items.at(to % items.length).focus();
  else if (event.key === 'Escape' || event.key === 'Tab') closeMenu(true);
  else return;
  event.preventDefault();
  event.stopPropagation();
}
