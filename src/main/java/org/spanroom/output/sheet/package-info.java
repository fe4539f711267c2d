/** The crew's sheets: pages to print of sections and ducts, and the close-out file of their blanks. */
@NullMarked
package org.spanroom.output.sheet;

import org.jspecify.annotations.NullMarked;
