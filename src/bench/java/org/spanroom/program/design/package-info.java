/** Measures the search for designs on invented cities. */
@NullMarked
package org.spanroom.program.design;

import org.jspecify.annotations.NullMarked;
