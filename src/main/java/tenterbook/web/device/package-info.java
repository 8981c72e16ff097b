/**
 * Phones and other devices of the local network: opening it, pairing a device and revoking it, who is let in and to what, and the
 * pages a phone begins with. Start at {@link tenterbook.web.device.StudioNetwork} and {@link tenterbook.web.device.NetworkGuard}.
 */
package tenterbook.web.device;
