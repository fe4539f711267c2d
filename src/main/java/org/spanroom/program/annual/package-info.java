/** The year problem without its trade: which tasks are done in which year, within limits, and what no plan can be worth more than. */
@NullMarked
package org.spanroom.program.annual;

import org.jspecify.annotations.NullMarked;
