/** Photographs: taking them in, naming and measuring their colours, comparing two of them. */
package tenterbook.web.photo;
