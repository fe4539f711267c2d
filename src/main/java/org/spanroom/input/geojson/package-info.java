/** Reads GeoJSON (RFC 7946), as one text, one text a line, or a text sequence (RFC 8142). */
@NullMarked
package org.spanroom.input.geojson;

import org.jspecify.annotations.NullMarked;
