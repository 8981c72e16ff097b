/**
 * The whole program over real HTTP and a real folder: what a browser, a script or another program sends, and what comes
 * back and stays.
 *
 * <p>Requests go out through a plain socket, so that a test can send what an HTTP client of a library would refuse to.
 * Start at {@link tenterbook.scenario.Scenario}.
 */
package tenterbook.scenario;
