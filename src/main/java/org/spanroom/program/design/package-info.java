/** The design problem without its trade: which ways connections take, and what is recovered or built for them, at least total cost. */
@NullMarked
package org.spanroom.program.design;

import org.jspecify.annotations.NullMarked;
