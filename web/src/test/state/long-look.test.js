import { lookFor } from '../../main/resources/META-INF/resources/state/commands.js';
import { countedIn, LongLook, unproved } from '../../main/resources/META-INF/resources/state/long-look.js';
import { equal, test } from '../trial.js';

const search = (of, proven, cost, lowerBound, unit = null) => ({ of, proven, cost, lowerBound, unit });

test('what is proved needs no longer look', () => {
  const searches = [search('Timber 100x200', false, 2271.6, 2270.4), search('Bearers 50x75', true, 10, 10), search('Liner', false, 279, 270)];
  equal(unproved({ searches }), [{ of: 'Timber 100x200', best: '2271.6', bound: '2270.4' }, { of: 'Liner', best: '279', bound: '270' }]);
  equal(unproved(null), []);
});

test('what has no price is counted in boards or metres', () => {
  const searches = [search('Timber oak', false, 12, 11, 'boards'), search('Timber pine', false, 9, 8), search('Liner', false, 6, 5, 'm')];
  equal(['Timber oak', 'Timber pine', 'Liner'].map(of => countedIn({ searches }, of)), ['boards', null, 'm']);
  equal(countedIn(null, 'Liner'), null);
});

test('let go before the server has answered, it is stopped as soon as it has', async () => {
  const api = server(1000);
  const look = new LongLook(api, async () => {});
  const begun = look.begin({ name: 'x' });
  look.forget();
  await begun;
  equal([look.standing, api.heard[1]], ['none', ['stop', 's']]);
});

test('the search is a field of the plan, and short is the usual', () => {
  const plan = { name: 'x' };
  equal(lookFor('long')(plan), { name: 'x', search: 'long' });
  equal(lookFor('short')({ name: 'x', search: 'long' }), { name: 'x' });
  equal(lookFor('short')(plan) === plan, true);
});

/** A server whose solve goes on for a while and ends sooner where it is told to stop. */
function server(rounds) {
  const heard = [];
  let stopped = false;
  const told = () => ({ id: 's', state: stopped ? 'stopped' : rounds-- > 0 ? 'running' : 'done', seconds: 1, progress: [{ of: 'Liner', best: 279, bound: 270 }] });
  return {
    heard,
    beginSolve: async (kind, problem) => { heard.push([kind, problem]); return { ...told(), state: 'waiting' }; },
    solve: async () => { const now = told(); return now.state === 'running' ? now : { ...now, result: { total: '9.00' } }; },
    stopSolve: async id => { heard.push(['stop', id]); stopped = true; },
  };
}

test('a longer look asks for the plan with a long search and tells how far it is', async () => {
  const api = server(2);
  const look = new LongLook(api, async () => {});
  const standings = [];
  look.addEventListener('change', () => standings.push([look.standing, look.progress.length]));
  await look.begin({ name: 'x' });
  equal(api.heard, [['garden', { name: 'x', search: 'long' }]]);
  equal(standings, [['looking', 0], ['looking', 1], ['looking', 1], ['ended', 1]]);
  equal([look.result.total, look.stopped], ['9.00', false]);
  look.forget();
  equal([look.standing, look.result], ['none', null]);
});

test('what was asked for is known apart from what it took', async () => {
  const look = new LongLook(server(1), async () => {}, 'sizes', 5);
  await look.begin({ name: 'x' });
  equal([look.asked, look.seconds], [5, 1]);
  await look.begin({ name: 'x' }, 60);
  equal(look.asked, 60);
});

test('told to stop it ends with what was found by then', async () => {
  const api = server(1000);
  let look;
  look = new LongLook(api, async () => { await look.stop(); });
  await look.begin({ name: 'x' });
  equal([look.standing, look.stopped, look.result.total, api.heard[1]], ['ended', true, '9.00', ['stop', 's']]);
});

test('let go while it looks, it is stopped and says nothing more', async () => {
  const api = server(1000);
  let look;
  look = new LongLook(api, async () => { look.forget(); });
  await look.begin({ name: 'x' });
  equal([look.standing, api.heard.length], ['none', 2]);
});

test('a server that is away is told of', async () => {
  const look = new LongLook({ beginSolve: async () => { throw new Error('The server does not answer.'); } });
  await look.begin({});
  equal([look.standing, look.problem], ['failed', 'The server does not answer.']);
});
