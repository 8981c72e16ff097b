/** What the pages and the API of every kind of record share: editing, drafts, history, the API and its description. */
package tenterbook.web.record;
