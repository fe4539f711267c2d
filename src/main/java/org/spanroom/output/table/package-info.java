/** Tables of results as columns and rows, independent of any file format. */
@NullMarked
package org.spanroom.output.table;

import org.jspecify.annotations.NullMarked;
