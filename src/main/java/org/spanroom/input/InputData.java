package org.spanroom.input;

import java.util.List;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;
import org.spanroom.model.permit.Zone;

/**
 * All that was read.
 *
 * @param crs the reference system of the routes, in which results are written unless another is requested
 * @param records one for each file, routes first
 * @param fieldBook what crews reported, up to the day that counts
 */
public record InputData(
        List<Route> routes,
        List<Vault> vaults,
        List<Zone> zones,
        ReferenceSystem crs,
        List<InputRecord> records,
        FieldBook fieldBook) {
    public InputData {
        routes = List.copyOf(routes);
        vaults = List.copyOf(vaults);
        zones = List.copyOf(zones);
        records = List.copyOf(records);
    }

    /** Inputs of which crews reported nothing. */
    public InputData(
            List<Route> routes, List<Vault> vaults, List<Zone> zones, ReferenceSystem crs, List<InputRecord> records) {
        this(routes, vaults, zones, crs, records, FieldBook.EMPTY);
    }

    /** Returns the same inputs with some of the routes only. */
    public InputData withRoutes(List<Route> others) {
        return new InputData(others, vaults, zones, crs, records, fieldBook);
    }

    /** Returns the same inputs as the owner recorded them, without what crews reported. */
    public InputData withoutFieldBook() {
        return new InputData(routes, vaults, zones, crs, records, FieldBook.EMPTY);
    }

    /** Returns the records of the files of one layer, in the order in which they were read. */
    public List<InputRecord> records(String role) {
        return records.stream().filter(record -> record.role().equals(role)).toList();
    }

    /** Returns the words that findings use for the file that a route or a vault came from. */
    public String source(String role, int sequence) {
        String source = role;
        for (InputRecord record : records) {
            if (record.role().equals(role) && record.firstItem() <= sequence) {
                source = record.source();
            }
        }
        return source;
    }
}
