/** Long work that can be watched and stopped: one at a time, each with its progress and its outcome in sentences. */
package tenterbook.web.job;
