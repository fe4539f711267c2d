/** Which vaults to open first, to learn what is in ducts whose contents are not recorded. */
@NullMarked
package org.spanroom.model.survey;

import org.jspecify.annotations.NullMarked;
