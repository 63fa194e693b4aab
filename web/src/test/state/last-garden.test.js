import { LastGardens } from '../../main/resources/META-INF/resources/state/last-garden.js';
import { equal, test } from '../trial.js';

function memory() {
  const kept = new Map();
  const cache = {
    async delete(key) { kept.delete(key); }, async put(key, answer) { kept.set(key, answer); },
    async keys() { return [...kept.keys()]; }, async match(key) { return kept.get(key)?.clone(); },
  };
  return { open: async () => cache };
}

test('the gardens that were open last are kept with their job sheets, the latest first', async () => {
  const last = new LastGardens(memory());
  for (const id of ['a', 'b', 'c', 'd', 'e', 'f', 'b']) await last.keep({ id, plan: { name: id.toUpperCase() }, revision: '"1"', sheet: { slip: 1 } });
  equal((await last.list()).map(({ name }) => name), ['B', 'F', 'E', 'D', 'C']);
  equal((await last.of('b')).sheet, { slip: 1 });
  equal(await last.of('a'), null);
});

test('where a browser keeps nothing there is nothing', async () => {
  const last = new LastGardens(undefined);
  await last.keep({ id: 'a', plan: {} });
  equal([await last.list(), await last.of('a')], [[], null]);
});
