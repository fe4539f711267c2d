/** Hours, material and money of recovering a span, and of new build in its stead. */
@NullMarked
package org.spanroom.effort;

import org.jspecify.annotations.NullMarked;
