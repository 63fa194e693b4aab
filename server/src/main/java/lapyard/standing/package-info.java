/**
 * In: a bed as built on paper, what it stands on, and loads. Out: whether its walls and its floor would hold, each with
 * its working, as an estimate. Must not know the order, the saw or the yard.
 */
package lapyard.standing;
