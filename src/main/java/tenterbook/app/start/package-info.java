/** How a serving program begins and ends: its port, what is loaded ahead, and the signal to stop. It knows no archive. */
package tenterbook.app.start;
