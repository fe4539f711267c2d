/** What is wrong with the data, as data; and the one exception for input that cannot be used at all. */
@NullMarked
package org.spanroom.finding;

import org.jspecify.annotations.NullMarked;
