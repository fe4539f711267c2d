/** Measures the lower bound of the design problem on drawn networks. */
@NullMarked
package org.spanroom.program.bound;

import org.jspecify.annotations.NullMarked;
