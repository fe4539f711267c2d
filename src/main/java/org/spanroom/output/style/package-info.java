/** How layers look when a desktop GIS opens them: one palette, and from it styles in two languages. */
@NullMarked
package org.spanroom.output.style;

import org.jspecify.annotations.NullMarked;
