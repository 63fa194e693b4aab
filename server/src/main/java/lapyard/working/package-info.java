/**
 * In: nothing. Out: the form in which every number carries its arithmetic.
 * Must not know what any number is about.
 */
package lapyard.working;
