/** Assessments, verdicts, scores, ranks, and how certain they are. */
@NullMarked
package org.spanroom.model.rank;

import org.jspecify.annotations.NullMarked;
