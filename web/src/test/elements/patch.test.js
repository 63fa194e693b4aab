import { h } from '../../main/resources/META-INF/resources/elements/make.js';
import { patch } from '../../main/resources/META-INF/resources/elements/patch.js';
import { equal, holds, test } from '../trial.js';

test('a button is the same one after patching, with its new words and its new handler alone', () => {
  const host = h('div');
  const pressed = [];
  patch(host, [h('ul', {}, h('li', {}, h('button', { 'data-key': 'a', onclick: () => pressed.push('old'), title: 'x' }, 'one')))]);
  const button = host.querySelector('button');
  patch(host, [h('ul', {}, h('li', {}, h('button', { 'data-key': 'a', onclick: () => pressed.push('new') }, 'two', h('b', {}, '!'))))]);
  holds(host.querySelector('button') === button, 'another button stands there');
  button.click();
  equal([pressed, button.textContent, button.hasAttribute('title')], [['new'], 'two!', false]);
  patch(host, [h('ul', {}, h('li', {}, h('button', { 'data-key': 'a' }, 'two')))]);
  button.click();
  equal(pressed, ['new']);
});

test('keyed children keep their node when others come, go or change places', () => {
  const host = h('div');
  const row = key => h('p', { 'data-key': key }, key);
  patch(host, ['a', 'b', 'c'].map(row));
  const [a, , c] = host.children;
  patch(host, ['c', 'x', 'a'].map(row));
  equal([...host.children].map(one => one.textContent), ['c', 'x', 'a']);
  holds(host.children[0] === c && host.children[2] === a, 'nodes were made anew');
});

test('the focus and what is being typed stay, other values follow', () => {
  const host = h('div');
  document.body.append(host);
  const fields = (value, box) => [h('input', { 'data-key': 'text', value }), h('input', { type: 'checkbox', checked: box, 'data-key': 'box' }),
    h('select', { 'data-key': 'pick' }, ['a', 'b'].map(one => h('option', { value: one, selected: one === value }, one)))];
  patch(host, fields('a', true));
  const [text, box, pick] = host.children;
  text.focus();
  text.value = 'half typed';
  box.click();
  patch(host, fields('b', true));
  holds(document.activeElement === text, 'the focus is lost');
  equal([text.value, box.checked, pick.value], ['half typed', true, 'b']);
  text.blur();
  patch(host, fields('b', true));
  equal(text.value, 'b');
  host.remove();
});

test('details that were opened by hand stay open', () => {
  const host = h('div');
  patch(host, [h('details', {}, h('summary', {}, 'more'))]);
  host.firstChild.open = true;
  patch(host, [h('details', {}, h('summary', {}, 'more still'))]);
  equal([host.firstChild.open, host.textContent], [true, 'more still']);
});

test('a node that stands there is kept as it is among fresh ones', () => {
  const host = h('div');
  const own = h('form', {}, h('input', { value: '1' }));
  patch(host, [h('p', {}, 'a'), own]);
  own.firstChild.value = '2';
  patch(host, [h('p', {}, 'b'), h('form', {}), own, false, null]);
  equal([host.textContent, host.children.length, host.lastChild === own, own.firstChild.value], ['b', 3, true, '2']);
});

test('a style follows without its attribute being written, which the page\'s policy would refuse', () => {
  const bar = width => {
    const one = h('span');
    one.style.width = width;
    return one;
  };
  const host = h('div');
  patch(host, [bar('10%')]);
  const kept = host.firstChild;
  kept.setAttribute = () => { throw new Error('the attribute is written'); };
  patch(host, [bar('25%')]);
  equal([kept.style.width, host.firstChild === kept], ['25%', true]);
});
