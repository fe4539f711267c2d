/**
 * What libraries keep in files of their own: native libraries and the EPSG dataset, unpacked into directories that belong to this run and
 * are removed when it ends.
 */
@org.jspecify.annotations.NullMarked
package org.spanroom.unpack;
