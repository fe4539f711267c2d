/** Permit zones, what they require, and where spans touch them. */
@NullMarked
package org.spanroom.model.permit;

import org.jspecify.annotations.NullMarked;
