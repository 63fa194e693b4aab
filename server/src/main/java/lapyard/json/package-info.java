/**
 * In: text. Out: gardens, and text again: the wire form, document versions, schema.
 * Must not know where documents are kept or who asks for them.
 */
package lapyard.json;
