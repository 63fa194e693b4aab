import { Keeper } from '../../main/resources/META-INF/resources/state/keeper.js';
import { equal, storage, test } from '../trial.js';

const bed = (id, x) => ({ id, width: 2400, depth: 1200, at: [x, 0] });
const base = { name: 'Yard', beds: [bed('A', 0), bed('B', 5000)] };
const moved = (plan, id, x) => ({ ...plan, beds: plan.beds.map(one => (one.id === id ? bed(id, x) : one)) });

/** A store of one garden, as the server keeps it. */
class Shelf {
  constructor(plan) { this.plan = plan; this.revision = 1; this.saves = 0; this.away = false; }
  async save(_, plan, revision) {
    if (this.away) throw Object.assign(new Error('away'), { told: this.told });
    if (revision !== `"${this.revision}"`) throw Object.assign(new Error('stale'), { status: 412 });
    if (plan.name === '') throw Object.assign(new Error('The name is empty.'), { status: 400 });
    if (plan.beds.some(one => one.width === 0)) throw Object.assign(new Error('0 wide. Make it 500 mm wide.'), { status: 422, snags: [{ weight: 'STOP', where: 'bed A', text: '0 wide.' }] });
    this.saves++;
    this.plan = plan;
    return { revision: `"${++this.revision}"`, sheet: null };
  }
  async open() {
    if (this.away) throw new Error('away');
    return { plan: this.plan, revision: `"${this.revision}"` };
  }
  async newer(id, revision) { return revision === `"${this.revision}"` ? null : this.open(); }
  /** Somebody else saves. */
  other(plan) { this.plan = plan; this.revision++; }
}

function keeperOf(shelf, kept = storage()) {
  const waits = [];
  const keeper = new Keeper({ api: shelf, storage: kept, id: 'g', plan: shelf.plan, revision: '"1"', later: (run, ms) => waits.push({ run, ms }) });
  return { keeper, kept, waits };
}

const settled = async () => { for (let i = 0; i < 20; i++) await null; };

test('a plan is saved and nothing waits any more', async () => {
  const shelf = new Shelf(base);
  const { keeper, kept } = keeperOf(shelf);
  const plan = moved(base, 'A', 100);
  keeper.put(plan);
  equal(Keeper.waiting(kept, 'g').plan, plan, 'it waits in the browser at once');
  await settled();
  equal([keeper.standing, keeper.revision, Keeper.waiting(kept, 'g')], ['kept', '"2"', null]);
  equal(shelf.plan, plan);
});

test('of many plans in a row the store gets the first and the last', async () => {
  const shelf = new Shelf(base);
  const { keeper } = keeperOf(shelf);
  for (let x = 100; x <= 1000; x += 100) keeper.put(moved(base, 'A', x));
  await settled();
  equal([shelf.saves, shelf.plan.beds[0].at[0]], [2, 1000]);
});

test('while the server is away the plan waits, tries come further apart, and it goes when the server is back', async () => {
  const shelf = new Shelf(base);
  const { keeper, kept, waits } = keeperOf(shelf);
  shelf.away = true;
  keeper.put(moved(base, 'A', 100));
  await settled();
  equal([keeper.standing, waits.length], ['away', 1]);
  waits[0].run();
  await settled();
  equal(waits.map(wait => wait.ms), [1000, 2000]);
  equal(Keeper.waiting(kept, 'g').plan.beds[0].at[0], 100);
  equal(keeper.why, '');
  shelf.told = 'the disk is full: make room';
  keeper.again();
  await settled();
  equal([keeper.standing, keeper.why], ['away', 'the disk is full: make room'], 'what may be sent again is no reason to undo');
  shelf.away = false;
  keeper.again();
  await settled();
  equal([keeper.standing, shelf.plan.beds[0].at[0]], ['kept', 100]);
});

test('what waited before a reload is saved after it, on the revision it was made from', async () => {
  const shelf = new Shelf(base);
  const first = keeperOf(shelf);
  shelf.away = true;
  first.keeper.put(moved(base, 'A', 300));
  await settled();
  shelf.away = false;
  const waiting = Keeper.waiting(first.kept, 'g');
  const again = new Keeper({ api: shelf, storage: first.kept, id: 'g', plan: waiting.base, revision: waiting.revision });
  again.put(waiting.plan);
  await settled();
  equal([again.standing, shelf.plan.beds[0].at[0]], ['kept', 300]);
});

test('two tabs without a server keep what each of them changed, and a third opens with both', async () => {
  const shelf = new Shelf(base);
  shelf.away = true;
  const one = keeperOf(shelf);
  const two = keeperOf(shelf, one.kept);
  one.keeper.put(moved(base, 'A', 300));
  two.keeper.put(moved(base, 'B', 7000));
  await settled();
  const waiting = Keeper.waiting(one.kept, 'g');
  equal(waiting.plan.beds.map(bed => bed.at[0]), [300, 7000]);
  const third = new Keeper({ api: shelf, storage: one.kept, id: 'g', plan: waiting.base, revision: waiting.revision, tabs: waiting.tabs });
  third.put(waiting.plan);
  await settled();
  equal(Keeper.waiting(one.kept, 'g').tabs.length, 1, 'told once');
  shelf.away = false;
  two.keeper.again();
  await settled();
  equal(Keeper.waiting(one.kept, 'g').plan.beds.map(bed => bed.at[0]), [300, 7000], 'what one tab has saved is not taken from another');
  one.keeper.again();
  third.again();
  await settled();
  equal([shelf.plan.beds.map(bed => bed.at[0]), Keeper.waiting(one.kept, 'g')], [[300, 7000], null]);
});

test('what an older page let wait is not lost', () => {
  const kept = storage();
  kept.setItem('lapyard.waiting.g', JSON.stringify({ plan: moved(base, 'A', 300), base, revision: '"1"' }));
  equal(Keeper.waiting(kept, 'g'), { plan: moved(base, 'A', 300), base, revision: '"1"', tabs: ['one'] });
});

test('someone else on another bed: both changes stand, and the page is told', async () => {
  const shelf = new Shelf(base);
  const { keeper } = keeperOf(shelf);
  let taken = null;
  keeper.addEventListener('merged', event => { taken = event.detail; });
  shelf.other(moved(base, 'B', 7000));
  keeper.put(moved(base, 'A', 100));
  await settled();
  equal(keeper.standing, 'kept');
  equal(shelf.plan.beds.map(one => one.at[0]), [100, 7000]);
  equal(taken, shelf.plan);
});

test('someone else on the same bed: both are shown and nothing is saved until one is chosen', async () => {
  for (const [whose, x] of [['mine', 100], ['theirs', 900]]) {
    const shelf = new Shelf(base);
    const { keeper, kept } = keeperOf(shelf);
    shelf.other(moved(base, 'A', 900));
    keeper.put(moved(base, 'A', 100));
    await settled();
    equal([keeper.standing, keeper.clash.clashes.length, shelf.plan.beds[0].at[0]], ['clash', 1, 900]);
    equal(Keeper.waiting(kept, 'g').plan.beds[0].at[0], 100, 'mine still waits');
    keeper.settle(whose);
    await settled();
    equal([keeper.standing, shelf.plan.beds[0].at[0], Keeper.waiting(kept, 'g')], ['kept', x, null], whose);
  }
});

test('an answer that was lost on its way is no clash: the store already holds this plan', async () => {
  const shelf = new Shelf(base);
  const { keeper } = keeperOf(shelf);
  const plan = moved(base, 'A', 100);
  shelf.other(plan);
  keeper.put(plan);
  await settled();
  equal([keeper.standing, shelf.plan], ['kept', plan]);
});

test('a plan the store refuses is kept in the browser with the reason, and a better one is saved', async () => {
  const shelf = new Shelf(base);
  const { keeper, kept } = keeperOf(shelf);
  keeper.put({ ...base, beds: [{ ...bed('A', 0), width: 0 }] });
  await settled();
  equal([keeper.standing, keeper.snags[0].text, keeper.why, shelf.revision], ['refused', '0 wide.', '0 wide. Make it 500 mm wide.', 1]);
  equal(Keeper.waiting(kept, 'g').plan.beds[0].width, 0);
  keeper.put({ ...base, name: '' });
  await settled();
  equal([keeper.standing, keeper.why], ['refused', 'The name is empty. Undo the last change, or copy the garden.']);
  keeper.put(base);
  await settled();
  equal([keeper.standing, keeper.snags], ['kept', []]);
});

test('news from someone else is taken in only while nothing of ours waits', async () => {
  const shelf = new Shelf(base);
  const { keeper } = keeperOf(shelf);
  equal(await keeper.lookForNews(), false);
  shelf.other(moved(base, 'B', 8000));
  equal(await keeper.lookForNews(), true);
  equal(keeper.revision, '"2"');
});

test('a browser without room says so and still saves', async () => {
  const shelf = new Shelf(base);
  const { keeper } = keeperOf(shelf, storage(10));
  keeper.put(moved(base, 'A', 100));
  equal(keeper.storageFull, true);
  await settled();
  equal(shelf.plan.beds[0].at[0], 100);
});

test('what is heard while a plan is on its way is taken in once that is kept', async () => {
  const shelf = new Shelf(base);
  const { keeper } = keeperOf(shelf);
  let merged = null;
  keeper.addEventListener('merged', event => { merged = event.detail; });
  const save = shelf.save.bind(shelf);
  shelf.save = async (...args) => {
    const revision = await save(...args);
    shelf.other(moved(shelf.plan, 'B', 7000)); // kept and told of before our own answer is here
    equal(await keeper.lookForNews(3), false);
    return revision;
  };
  keeper.put(moved(base, 'A', 100));
  await settled();
  equal([keeper.revision, merged.beds[1].at[0], merged.beds[0].at[0]], ['"3"', 7000, 100]);
});

test('hearing of the revision one has asks the store for nothing', async () => {
  const shelf = new Shelf(base);
  const { keeper } = keeperOf(shelf);
  let asked = 0;
  shelf.newer = async () => { asked++; return null; };
  equal(await keeper.lookForNews(1), false);
  equal(asked, 0);
  await keeper.lookForNews(2);
  equal(asked, 1);
});
