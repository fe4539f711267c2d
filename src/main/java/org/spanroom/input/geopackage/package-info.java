/** Reads GeoPackages through SQLite. */
@NullMarked
package org.spanroom.input.geopackage;

import org.jspecify.annotations.NullMarked;
