/** Room in a cross-section: packings, choices of innerducts to pull, positions. */
@NullMarked
package org.spanroom.model.bore;

import org.jspecify.annotations.NullMarked;
