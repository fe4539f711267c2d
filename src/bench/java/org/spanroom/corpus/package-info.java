/** What stages are measured on: spans drawn at random with known bends, and published packings. */
@NullMarked
package org.spanroom.corpus;

import org.jspecify.annotations.NullMarked;
