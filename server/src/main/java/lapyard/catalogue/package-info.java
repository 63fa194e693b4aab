/**
 * In: nothing. Out: what the merchant sells: sections and stock lengths, rolls, packs, prices.
 * Must not know gardens or beds.
 */
package lapyard.catalogue;
