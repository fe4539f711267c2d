/** Spans drawn at random with known bends, and how well the finder reads them. */
@NullMarked
package org.spanroom.corpus;

import org.jspecify.annotations.NullMarked;
