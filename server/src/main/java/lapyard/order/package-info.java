/**
 * In: needs, bed by bed and for the whole garden, and what the merchant sells. Out: packs, lines, one slip.
 * Must not know beds or how a need came about.
 */
package lapyard.order;
