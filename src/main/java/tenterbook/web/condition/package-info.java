/** The condition of a piece: its examinations, by page, on paper and over HTTP. */
package tenterbook.web.condition;
