/** Hours, material and money of recovering a span, and of a new build instead. */
@NullMarked
package org.spanroom.effort;

import org.jspecify.annotations.NullMarked;
