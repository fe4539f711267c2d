/** The invented demo city, at any size. */
@NullMarked
package org.spanroom.sample;

import org.jspecify.annotations.NullMarked;
