/**
 * In: a command line. Out: files, exit codes, or a running server.
 * Must not compute anything about a garden.
 */
package lapyard.cli;
