/** Maps the fields of a layer and the rows of a contents table to our terms. */
@NullMarked
package org.spanroom.input.fields;

import org.jspecify.annotations.NullMarked;
