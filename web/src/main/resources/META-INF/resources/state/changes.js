/** What a change did to the slip: each line before and after. */

/**
 * @param {object | null} before the slip as it stood, null where there was none
 * @param {object} after
 * @returns {{line: object, was: object | null, state: 'same'|'changed'|'new'|'gone'}[]} lines of `after` in their
 *     order, of a first look in that of `before`, then the lines that are gone
 */
export function compareSlips(before, after) {
  const lines = after?.lines ?? [];
  if (!before) return lines.map(line => ({ line, was: null, state: 'same' }));
  const old = new Map((before.lines ?? []).map(line => [line.item, line]));
  const compared = (after.savings ? lines : placedAs([...old.keys()], lines)).map(line => {
    const was = old.get(line.item) ?? null;
    old.delete(line.item);
    if (!was) return { line, was: null, state: 'new' };
    return sameLine(was, line) ? { line, was: null, state: 'same' } : { line, was, state: 'changed' };
  });
  return [...compared, ...[...old.values()].map(line => ({ line, was: null, state: 'gone' }))];
}

/** A first look knows no savings, by which lines are sorted: they stay where they were until the whole is there. */
function placedAs(items, lines) {
  const placeOf = ({ item }) => (items.includes(item) ? items.indexOf(item) : items.length);
  return [...lines].sort((a, b) => placeOf(a) - placeOf(b));
}

function sameLine(a, b) {
  const sameSaved = a.saved === b.saved || (b.saved ?? null) === null;
  return a.cost === b.cost && sameSaved && packsText(a) === packsText(b) && a.need === b.need;
}

/** `4 × 2400, 6 × 3000`; empty where nothing can be bought. */
export function packsText(line) {
  return (line.packs ?? []).map(pack => `${pack.count} × ${pack.called ?? pack.pack}`).join(', ');
}

/** Money as pence-exact sums of decimal strings. @returns {string | null} null where any is missing */
export function sumOf(amounts) {
  let pence = 0n;
  let decimals = 2;
  const parsed = [];
  for (const amount of amounts) {
    if (amount === null || amount === undefined || !/^-?\d+(\.\d+)?$/.test(String(amount))) return null;
    const [, fraction = ''] = String(amount).split('.');
    decimals = Math.max(decimals, fraction.length);
    parsed.push(String(amount));
  }
  for (const amount of parsed) {
    const minus = amount.startsWith('-');
    const [whole, fraction = ''] = amount.replace('-', '').split('.');
    const value = BigInt(whole + fraction.padEnd(decimals, '0'));
    pence += minus ? -value : value;
  }
  const minus = pence < 0n ? '-' : '';
  const digits = (pence < 0n ? -pence : pence).toString().padStart(decimals + 1, '0');
  return `${minus}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

/** What buying as one saves at least, deliveries among it. */
export function savedOf(slip) {
  return slip?.saved ?? '0.00';
}

/** What of it is no line of the order, in words: deliveries, and what is taken off as nobody has proved it. */
export function savedBeside(slip, money) {
  const of = item => slip?.savings?.find(saving => saving.item === item)?.saved ?? '0.00';
  const delivery = of('delivery');
  const unproved = of('unproved');
  return [
    Number(delivery) > 0 ? `${money(delivery)} of it on deliveries.` : Number(delivery) < 0 ? `Deliveries cost ${money(delivery.slice(1))} more, taken off.` : '',
    Number(unproved) < 0 ? `${money(unproved.slice(1))} is taken off, as cheaper ways to buy bed by bed are not ruled out.` : '',
  ].filter(Boolean).join(' ');
}

/** Making one takes longer than all that it writes. */
const formats = new Map();

function formatOf(currency) {
  if (!formats.has(currency)) formats.set(currency, new Intl.NumberFormat('en-GB', { style: 'currency', currency, currencyDisplay: 'narrowSymbol' }));
  return formats.get(currency);
}

/** `£897.70`; the plain number and code where the currency is unknown. */
export function money(amount, currency) {
  if (amount === null || amount === undefined) return 'no price';
  try {
    return formatOf(currency).format(Number(amount));
  } catch {
    return `${amount} ${currency ?? ''}`.trim();
  }
}

/** `£`: what stands before a field for money. */
export function moneySign(currency) {
  try {
    return formatOf(currency).formatToParts(0).find(part => part.type === 'currency').value;
  } catch {
    return currency ?? '';
  }
}

/** A sentence of the server, whose sums carry the currency's code (`GBP 36.00`), with its sums as `money` writes them. */
export function moneyIn(text, currency) {
  return currency ? text.replace(new RegExp(`\\b${currency} (-?\\d+(?:\\.\\d+)?)`, 'g'), (_, amount) => money(amount, currency)) : text;
}

/** When to order from a merchant, what its delivery lacks to be free, and what is in its prices. @param {object} order of the slip */
export function aboutOrder(order, currency) {
  const parts = [];
  if (order.leadDays) parts.push(`Order ${order.leadDays} ${order.leadDays === 1 ? 'day' : 'days'} ahead.`);
  if (order.shortOfFree) parts.push(`${money(order.shortOfFree, currency)} more in goods would come free.`);
  if (order.overLimit) parts.push(`Brought free: goods are over ${money(order.freeOver, currency)}.`);
  if (Number(order.tax)) parts.push(`${money(order.tax, currency)} of it is tax at ${Number(order.taxRate)} %.`);
  if (order.validUntil) parts.push(`Prices hold until ${order.validUntil}.`);
  return parts.join(' ');
}
