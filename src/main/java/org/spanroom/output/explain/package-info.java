/** The calculation of one span, built once and rendered as text, JSON and SVG. */
@NullMarked
package org.spanroom.output.explain;

import org.jspecify.annotations.NullMarked;
