/** Work on several threads whose result does not depend on them. */
@NullMarked
package org.spanroom.parallel;

import org.jspecify.annotations.NullMarked;
