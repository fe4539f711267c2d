/** The forces of pulling an innerduct off a live cable, from either end, and the limits that they meet. */
@NullMarked
package org.spanroom.pull;

import org.jspecify.annotations.NullMarked;
