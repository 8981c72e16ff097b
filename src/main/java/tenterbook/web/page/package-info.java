/** The pages, one class for each part of the studio's work, with the view records their templates show. */
package tenterbook.web.page;
