/** The archive for programs: JSON under {@code /api/}, described by {@code /api/openapi.json} (OpenAPI 3.1). */
package tenterbook.web.api;
