/** Writes tables as Shapefile. */
@NullMarked
package org.spanroom.output.shapefile;

import org.jspecify.annotations.NullMarked;
