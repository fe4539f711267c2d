/** Scores, order and the reasons for them. */
@NullMarked
package org.spanroom.rank;

import org.jspecify.annotations.NullMarked;
