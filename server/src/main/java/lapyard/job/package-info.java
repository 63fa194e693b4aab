/**
 * In: a garden. Out: its job sheet. The one place where the capabilities meet.
 * Must not know JSON, files, databases or HTTP.
 */
package lapyard.job;
