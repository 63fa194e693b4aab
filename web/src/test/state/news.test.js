import { News } from '../../main/resources/META-INF/resources/state/news.js';
import { equal, test } from '../trial.js';

const settled = async () => { for (let i = 0; i < 20; i++) await null; };

function newsOf(listen) {
  const seen = [];
  const waits = [];
  const news = new News({ listen, look: revision => seen.push(revision ?? 'look'), later: (run, ms) => waits.push({ run, ms }) });
  return { news, seen, waits };
}

test('what is told is looked for, and after a break it looks once and listens again', async () => {
  let breakOff;
  let times = 0;
  const { news, seen, waits } = newsOf(heard => {
    times++;
    heard(times);
    return new Promise(done => { breakOff = done; });
  });
  news.begin();
  equal(seen, [1]);
  breakOff();
  await settled();
  equal([waits[0].ms, times], [1000, 1]);
  waits[0].run();
  await settled();
  equal([seen, times], [[1, 'look', 2], 2]);
});

test('while nobody answers the tries come further apart', async () => {
  const { news, waits } = newsOf(async () => { throw new Error('away'); });
  news.begin();
  for (let i = 0; i < 6; i++) {
    await settled();
    waits[i].run();
  }
  equal(waits.slice(0, 6).map(wait => wait.ms), [1000, 2000, 4000, 8000, 15000, 15000]);
});

test('after the end nothing is looked for and nobody listens again', async () => {
  const { news, seen, waits } = newsOf((heard, signal) => new Promise((done, fail) => {
    signal.addEventListener('abort', () => { heard(9); fail(new Error('aborted')); });
  }));
  news.begin();
  news.end();
  await settled();
  equal([seen, waits], [[], []]);
});
