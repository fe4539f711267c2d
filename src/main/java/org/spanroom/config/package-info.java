/** The run's configuration: YAML to records. */
@NullMarked
package org.spanroom.config;

import org.jspecify.annotations.NullMarked;
