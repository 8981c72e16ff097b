/**
 * Forms: what a person typed, read into records and back, with every problem noted beside its field and nothing lost.
 * Start at {@link tenterbook.web.form.Form}.
 */
package tenterbook.web.form;
