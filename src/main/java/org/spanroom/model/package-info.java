/** The records that cross a stage boundary, and the settings that stages are given. */
@NullMarked
package org.spanroom.model;

import org.jspecify.annotations.NullMarked;
