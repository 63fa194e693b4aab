import { Gardens, setState, stateOf } from '../../main/resources/META-INF/resources/state/gardens.js';
import { equal, test } from '../trial.js';

const last = { list: async () => [{ id: 'k', name: 'Kept' }] };
const page = (ids, total, next) => ({ gardens: ids.map(id => ({ id, name: id })), total, next });
const ids = gardens => gardens.rows.map(({ id }) => id).join('');

test('a page of gardens is followed by the page after it', async () => {
  const gardens = new Gardens({ gardens: async () => page(['a', 'b'], 3, '/next'), pageAfter: async next => page([next === '/next' ? 'c' : 'x'], 3) }, last);
  await gardens.ask();
  await gardens.more();
  await gardens.more();
  equal([ids(gardens), gardens.total], ['abc', 3]);
});

test('of two askings the last one counts, whichever is answered first', async () => {
  const ends = {};
  const gardens = new Gardens({ gardens: ({ find }) => new Promise(end => { ends[find] = end; }) }, last);
  const first = gardens.ask({ find: 'y' });
  const second = gardens.ask({ find: 'yard' });
  equal(gardens.looking, true);
  ends.yard(page(['n'], 1));
  await second;
  ends.y(page(['o'], 1));
  await first;
  equal([ids(gardens), gardens.asked.find, gardens.looking], ['n', 'yard', false]);
});

test('without signal those that were open last are shown, and a refusal is told', async () => {
  let problem = new Error('away');
  const gardens = new Gardens({ gardens: async () => { throw problem; } }, last);
  await gardens.ask();
  equal([ids(gardens), gardens.wrong], ['k', problem]);
  problem = Object.assign(new Error('no'), { status: 401 });
  await gardens.ask();
  equal([ids(gardens), gardens.wrong.status], ['', 401]);
});

test('a state stands in the document unless it is the first', () => {
  equal(setState('quoted')({ name: 'A' }), { name: 'A', state: 'quoted' });
  equal(setState('pencilled')({ name: 'A', state: 'quoted' }), { name: 'A' });
  equal(stateOf({}), 'pencilled');
});
