/** Reads Shapefiles: shapes, attribute tables, memo texts. */
@NullMarked
package org.spanroom.input.shapefile;

import org.jspecify.annotations.NullMarked;
