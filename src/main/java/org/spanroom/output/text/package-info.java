/** Writes tables as CSV and GeoJSON. */
@NullMarked
package org.spanroom.output.text;

import org.jspecify.annotations.NullMarked;
