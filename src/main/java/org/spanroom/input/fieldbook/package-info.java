/** Reads what crews reported: close-out files, and the field book that keeps their facts. */
@NullMarked
package org.spanroom.input.fieldbook;

import org.jspecify.annotations.NullMarked;
