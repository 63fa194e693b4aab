import { h } from './make.js';

const KEYS = [
  ['In the yard', [
    ['arrow keys', 'to the next bed that way'], ['Page Up, Page Down', 'to the bed before or after'],
    ['Enter', 'take hold of the bed'], ['Shift Enter', 'take one more bed, or let go of it'], ['Ctrl A', 'take all beds'],
    ['Escape', 'put the course back, let go of the beds'],
    ['+ − 0', 'nearer, further, the whole yard'], ['Ctrl and arrow keys', 'look along'],
  ]],
  ['With a bed in hand', [
    ['arrow keys', 'move 100; with Shift 10; with Alt 1'], ['T, Shift T', 'turn 90° one way, the other way'],
    ['M', 'mirror'], ['Delete', 'delete'],
  ]],
  ['While drawing', [
    ['Enter', 'done'], ['Backspace', 'take the last point back'], ['Escape', 'leave it'], ['Shift', 'square to the house'],
  ]],
  ['With the pointer', [
    ['drag a bed', 'carry it; with Alt to the millimetre'], ['drag a wall', 'of the bed in hand: change its outline'],
    ['Shift and press', 'take one more bed'], ['Shift and drag', 'take all beds in a frame'], ['wheel, two fingers', 'nearer, further'],
  ]],
  ['Anywhere', [
    ['Ctrl Z, Ctrl Shift Z', 'undo, redo'], ['?', 'this list, from the yard'],
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
