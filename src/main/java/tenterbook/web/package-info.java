/**
 * What a person sees: routes, forms, pages and live progress, on the loopback address alone.
 *
 * <p>A handler parses, calls a room and renders a view record; templates in {@code web/pages} show and choose, and do not
 * compute. Start at {@link tenterbook.web.server.Server}.
 */
package tenterbook.web;
