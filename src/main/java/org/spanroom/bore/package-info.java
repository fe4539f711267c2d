/** The cross-section of a duct: fill, what can be recovered, what fits afterwards. */
@NullMarked
package org.spanroom.bore;

import org.jspecify.annotations.NullMarked;
