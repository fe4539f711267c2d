/** Plans which few vaults to open, to learn most about ducts whose contents are not recorded. */
@NullMarked
package org.spanroom.survey;

import org.jspecify.annotations.NullMarked;
