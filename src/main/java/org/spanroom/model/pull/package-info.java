/** Forces and limits of pulling innerducts off their cables. */
@NullMarked
package org.spanroom.model.pull;

import org.jspecify.annotations.NullMarked;
