/** Paper: labels and documents, the choices of a print, papers issued before and their verification. */
package tenterbook.web.print;
