/** What reports from the field say of rates, friction, chances and totals. */
@NullMarked
package org.spanroom.model.learn;

import org.jspecify.annotations.NullMarked;
