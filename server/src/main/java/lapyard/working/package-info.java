/**
 * In: nothing. Out: the form in which every number carries its arithmetic.
 * It names every quantity; how one is worked out, and who buys it, it must not know.
 */
package lapyard.working;
