/** The permit zones that a span touches, meters inside each, and what that means for recovering and for a new build. */
@NullMarked
package org.spanroom.permit;

import org.jspecify.annotations.NullMarked;
