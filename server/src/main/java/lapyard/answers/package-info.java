/**
 * In: a garden's text and what is asked of it. Out: job sheets, parts, prints, checks and solves as bytes, each made once,
 * in turn, and only while somebody waits for it. Must not know HTTP or where gardens are kept.
 */
package lapyard.answers;
