/**
 * In: a bed. Out: its courses, pieces, fixings, notches, base, liner pieces and finish, each amount with its working.
 * Must not know prices, other beds or how timber is bought.
 */
package lapyard.construction;
