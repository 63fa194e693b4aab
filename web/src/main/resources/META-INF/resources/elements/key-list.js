import { h } from './make.js';

const KEYS = [
  ['In the yard', [
    ['arrow keys', 'to the next bed that way'], ['Page Up, Page Down', 'to the bed before or after'],
    ['Enter', 'take hold of the bed'], ['Escape', 'put the course back, let go of the bed'],
    ['+ − 0', 'nearer, further, the whole yard'], ['Ctrl and arrow keys', 'look along'],
  ]],
  ['With a bed in hand', [
    ['arrow keys', 'move 100; with Shift 10; with Alt 1'], ['T, Shift T', 'turn 90° one way, the other way'],
    ['M', 'mirror'], ['Delete', 'delete'],
  ]],
  ['Anywhere', [
    ['Ctrl Z, Ctrl Shift Z', 'undo, redo'], ['Alt while dragging', 'to the millimetre, nothing draws the bed'], ['?', 'this list, from the yard'],
  ]],
];

/** key-list: what the keyboard does. `show()` opens it. */
export class KeyList extends HTMLElement {
  show() {
    const dialog = h('dialog', { 'aria-labelledby': 'keys-title', onclose: () => this.replaceChildren() },
      h('h2', { id: 'keys-title' }, 'Keys'),
      ...KEYS.map(([where, keys]) => h('section', {}, h('h3', {}, where),
        h('dl', {}, keys.map(([key, does]) => h('div', {}, h('dt', {}, key), h('dd', {}, does)))))),
      h('button.main', { type: 'button', onclick: () => dialog.close() }, 'Close'));
    this.replaceChildren(dialog);
    dialog.showModal();
  }
}

customElements.define('key-list', KeyList);
