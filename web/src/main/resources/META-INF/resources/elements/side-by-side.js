import { measured } from '../geometry/measure.js';
import { money, moneyIn } from '../state/changes.js';
import { hours } from '../state/weekends.js';
import { h } from './make.js';

const MOST = 8;

/** A garden as it stands beside a changed copy. @param {object} tried what the server answered, or `{problem}` @param {'metric'|'imperial'} units */
export function sideBySide(tried, currency, units) {
  if (tried.problem) return h('p.wrong', { role: 'alert' }, tried.problem);
  const row = (name, say) => {
    const was = say(tried.before);
    const is = say(tried.after);
    return h(`tr${was === is ? '' : '.changed'}`, {}, h('th', { scope: 'row' }, name), h('td', {}, was), h('td', {}, is));
  };
  const list = (title, texts) => (texts.length ? h('details', {}, h('summary', {}, `${title}: ${texts.length}`),
    h('ul', {}, texts.slice(0, MOST).map(text => h('li', {}, text)), texts.length > MOST ? h('li', {}, `and ${texts.length - MOST} more`) : null)) : null);
  const told = finding => `${finding.place}: ${moneyIn(finding.text, currency)}`;
  return h('div.beside', { 'data-key': 'beside' },
    h('table', {}, h('thead', {}, h('tr', {}, h('td', {}), h('th', { scope: 'col' }, 'as it stands'), h('th', { scope: 'col' }, 'tried'))), h('tbody', {},
      row('Money', one => `${one.atLeast ? 'at least ' : ''}${money(one.money, currency)}`), row('Boards', one => String(one.boards)),
      row('Timber', one => measured(one.mass, 'kg', units, 0)), row('Soil', one => measured(one.soil, 'm3', units, 3)), row('Work', one => hours(one.hours)),
      row('Planted by', one => one.end), row('Snags', one => String(one.snags)))),
    tried.touched.length ? h('p.wrong', { role: 'alert' }, `Already cut, done or bought: ${tried.touched.map(told).join('; ')}`) : null,
    list('Tasks on another day', tried.moved.map(task => (task.isDay < 0 ? `${task.called} falls away` : task.wasDay < 0 ? `${task.called} is new` : `${task.called}: day ${task.wasDay + 1} to ${task.isDay + 1}`))),
    list('Snags that go', tried.gone.map(told)), list('Snags that come', tried.come.map(told)));
}
