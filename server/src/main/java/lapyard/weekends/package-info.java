/**
 * In: beds and paths as they are built, the saw's days, and who comes when. Out: tasks with their hours, days with their
 * tasks, and what does not fit.
 * Must not know prices, JSON or drawings; the order of tasks is found by {@code stages}.
 */
package lapyard.weekends;
