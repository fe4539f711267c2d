/** The columns of each table of results. */
@NullMarked
package org.spanroom.output.columns;

import org.jspecify.annotations.NullMarked;
