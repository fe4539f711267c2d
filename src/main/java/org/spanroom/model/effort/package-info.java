/** Quantities, rates, hours, money and emissions of recovery and of new build. */
@NullMarked
package org.spanroom.model.effort;

import org.jspecify.annotations.NullMarked;
