/** Which rows of the results a user wants to see: a condition on columns, and areas that spans touch. */
@org.jspecify.annotations.NullMarked
package org.spanroom.select;
