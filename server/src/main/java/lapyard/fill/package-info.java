/**
 * In: a bed and its inner outline. Out: soil by layers, settled and loose, mulch, weights, barrows, with workings.
 * Must not know bags, prices or other beds.
 */
package lapyard.fill;
