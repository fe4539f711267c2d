/** Writes tables as GeoPackage. */
@NullMarked
package org.spanroom.output.geopackage;

import org.jspecify.annotations.NullMarked;
