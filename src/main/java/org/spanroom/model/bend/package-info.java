/** Bends of a span, and the settings of finding them. */
@NullMarked
package org.spanroom.model.bend;

import org.jspecify.annotations.NullMarked;
