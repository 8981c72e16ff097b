/** The studio: its particulars, the people it deals with, erasing a person, long work. */
package tenterbook.web.studio;
