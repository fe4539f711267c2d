/** Results: layers, CSV and the run's record. */
@NullMarked
package org.spanroom.output;

import org.jspecify.annotations.NullMarked;
