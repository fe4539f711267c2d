/** The report: one page that a browser shows without a network. What it holds is made here; how it looks is in the resources of this package. */
@NullMarked
package org.spanroom.output.report;

import org.jspecify.annotations.NullMarked;
