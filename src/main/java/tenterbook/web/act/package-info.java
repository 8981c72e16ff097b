/** Acts on pieces: their forms, what is shown after them, and the same for programs. */
@NullMarked
package tenterbook.web.act;

import org.jspecify.annotations.NullMarked;
