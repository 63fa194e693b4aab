/**
 * In: what is bought, with weights and sizes, and the way from the road into the yard. Out: drops, trips, lifts, barrow
 * runs, places for bags. Must not know how the order was chosen or how beds are built.
 */
package lapyard.loadin;
