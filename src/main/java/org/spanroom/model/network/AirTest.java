package org.spanroom.model.network;

import java.util.Locale;

/** When and where the air of a vault is tested, in the order of the work. */
public enum AirTest {
    /** 29 CFR 1910.268(o)(2)(i); at each corner: UFC 3-560-01 (2006), table 11-1, step 7. */
    BEFORE_ENTRY,
    /** MIL-HDBK-1025/10, paragraph 8.5.2.4. */
    AFTER_PUMPING,
    /** UFC 3-560-01 (2006), table 11-1, step 7; again when its plug comes out: MIL-HDBK-1025/10, paragraph 8.5.2.4. */
    EACH_DUCT_MOUTH,
    /** For work of more than 15 minutes: UFC 3-560-01 (2006), table 11-1, step 8. */
    CONTINUOUSLY;

    /** Returns the word for it in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
