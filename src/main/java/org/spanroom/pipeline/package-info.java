/** The run, read from top to bottom. */
@NullMarked
package org.spanroom.pipeline;

import org.jspecify.annotations.NullMarked;
