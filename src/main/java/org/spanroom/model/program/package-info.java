/** What the sections of a network offer to cables, and the ways that are found through them. */
@NullMarked
package org.spanroom.model.program;

import org.jspecify.annotations.NullMarked;
