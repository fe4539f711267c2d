/** Lower bounds of the design problem: what no design can cost less than, whichever ways it takes. */
@NullMarked
package org.spanroom.program.bound;

import org.jspecify.annotations.NullMarked;
