/** Bends found from the drawn line. */
@NullMarked
package org.spanroom.bend;

import org.jspecify.annotations.NullMarked;
