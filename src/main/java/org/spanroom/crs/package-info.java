/** Coordinate reference systems: the one place that knows GeoTools. */
@NullMarked
package org.spanroom.crs;

import org.jspecify.annotations.NullMarked;
