/**
 * In: a garden and what was computed of it. Out: pages of shapes: the plan and the sheets.
 * Must not know file formats, HTTP or how anything was computed.
 */
package lapyard.diagrams;
