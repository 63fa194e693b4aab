/**
 * Findings in, sentences for a person out: the only package that words what {@code plan} found. Lengths come in the
 * garden's own measures. The sentences stand in {@code findings.properties} and {@code refusals.properties}; nothing here decides what is wrong.
 */
package lapyard.words;
