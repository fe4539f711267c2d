/** Proposes which fields of a layer hold which of our terms, by their names, their values and the layer beside it. */
@NullMarked
package org.spanroom.input.proposal;

import org.jspecify.annotations.NullMarked;
