/** The way through: paths, corridors, and connections that share what is recovered or built. */
@NullMarked
package org.spanroom.program;

import org.jspecify.annotations.NullMarked;
