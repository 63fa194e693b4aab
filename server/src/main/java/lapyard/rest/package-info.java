/**
 * In: HTTP requests. Out: responses; it only translates.
 * Must not compute anything about a garden.
 */
package lapyard.rest;
