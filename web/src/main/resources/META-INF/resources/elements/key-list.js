import { h } from './make.js';

const KEYS = [
  ['In the yard', [
    ['arrow keys', 'to the next bed that way'], ['Page Up, Page Down', 'to the bed before or after'],
    ['Enter', 'take hold of the bed'], ['Shift Enter', 'take one more bed, or let go of it'], ['Ctrl A', 'take all beds'],
    ['B', 'add a bed, where the pointer is'], ['Ctrl V', 'paste beds, where the pointer is'],
    ['Escape', 'put the course back, let go of what is in hand'],
    ['+ − 0', 'nearer, further, the whole yard'], ['Ctrl and arrow keys', 'look along'], ['menu key', 'what can be done here'],
  ]],
  ['With something in hand', [
    ['arrow keys', 'move 100; with Shift 10; with Alt 1'], ['T, Shift T', 'turn 90° one way, the other way'],
    ['M', 'mirror'], ['D', 'duplicate'], ['Ctrl C, Ctrl X', 'copy, cut'], ['Delete', 'delete'],
  ]],
  ['While drawing', [
    ['Enter', 'done'], ['Backspace', 'delete the last point'], ['Escape', 'cancel'], ['Shift', 'square to the house'], ['Alt', 'to the millimetre'],
  ]],
  ['With the pointer', [
    ['drag a bed', 'carry it; with Alt to the millimetre'], ['drag a wall', 'of the bed in hand: change its outline'],
    ['drag the ring behind a bed', 'turn it; with Alt by tenths'], ['press, then drag', 'a path, a gate, a tap, a tree: move it'],
    ['drag a corner', 'of the yard, while Ground is open; of a path in hand'],
    ['Shift and press', 'take one more bed'], ['Shift and drag', 'take all beds that a frame touches'],
    ['wheel, two fingers', 'nearer, further'], ['middle button', 'look along'], ['right button', 'what can be done here'],
    ['one finger', 'look along; drag a bed once it was taken by a tap'],
  ]],
  ['In the tally', [['press a piece', 'cut, or not yet'], ['hold a piece, or S', 'spoiled']]],
  ['Anywhere', [
    ['Ctrl Z, Ctrl Shift Z', 'undo, redo'], ['?', 'this list, from the yard'],
  ]],
];

/** key-list: what the keyboard and the pointer do. `show()` opens it. */
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
