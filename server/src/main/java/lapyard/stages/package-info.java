/**
 * In: tasks with their time, what they use, what they wait for, and when there is anyone to work. Out: when each begins,
 * with a proved bound on the end of the last.
 * Must not know beds, dates or people: it counts units of a clock and amounts of resources.
 */
package lapyard.stages;
