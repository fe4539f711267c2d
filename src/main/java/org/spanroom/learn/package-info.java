/** Learns from reports of the field: rates, friction, chances of contents, and totals to date. Pure functions. */
@NullMarked
package org.spanroom.learn;

import org.jspecify.annotations.NullMarked;
