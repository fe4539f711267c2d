package org.spanroom.input;

import java.util.Map;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.Rejections;
import org.spanroom.input.layer.SourceFeature;

/** Converts each feature of a layer, and counts what it could use. */
interface FeatureReader {
    void accept(SourceFeature feature);

    /** To be called when the layer has been read. */
    void close(LayerHeader header, long features);

    /** Returns the mapped fields that the layer does not have, each with a term that it is mapped to; none where nothing could be used. */
    Map<String, String> absentFields(LayerHeader header);

    /** Returns how many features had at least a part taken. */
    long used();

    /** Returns which features were of no use, by reason. */
    Rejections rejections();

    /** Returns what was seen of the layer's ordinates. */
    OrdinateSuspicion suspicion();
}
