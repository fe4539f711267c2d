/** The calendar of a program: which crew does which span in which shifts, and what its year plan could not keep. */
@NullMarked
package org.spanroom.program.calendar;

import org.jspecify.annotations.NullMarked;
