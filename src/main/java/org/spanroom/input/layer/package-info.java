/** A layer as any format gives it: a header, then features one by one. */
@NullMarked
package org.spanroom.input.layer;

import org.jspecify.annotations.NullMarked;
