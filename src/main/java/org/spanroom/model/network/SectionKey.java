package org.spanroom.model.network;

/**
 * Which section a span belongs to: the spans of one bank between the same two vaults, whichever way each is drawn. A duct without a
 * recorded bank is a bank of its own, so that its spans are beside no other duct. This is the one rule of what is side by side.
 *
 * @param bankId the recorded bank, or empty
 * @param ductId the duct where no bank is recorded, else empty
 * @param vaultId the one of the two vaults whose id is smaller as text
 * @param otherVaultId the other vault; the same one where a span returns to its vault
 */
public record SectionKey(String bankId, String ductId, String vaultId, String otherVaultId)
        implements Comparable<SectionKey> {
    private static final String SEPARATOR = SpanName.SEPARATOR;

    /** Returns the section of a duct's span between two vaults, given in either order. */
    public static SectionKey of(String bankId, String ductId, String vaultId, String otherVaultId) {
        boolean hasBank = !bankId.isBlank();
        boolean forth = vaultId.compareTo(otherVaultId) <= 0;
        return new SectionKey(
                hasBank ? bankId : "",
                hasBank ? "" : ductId,
                forth ? vaultId : otherVaultId,
                forth ? otherVaultId : vaultId);
    }

    public static SectionKey of(Duct duct, Vault from, Vault to) {
        return of(duct.bankId(), duct.id(), from.id(), to.id());
    }

    public static SectionKey of(Span span) {
        return of(span.duct(), span.from(), span.to());
    }

    /** Returns whether a bank is recorded, so that other ducts may be beside. */
    public boolean hasBank() {
        return !bankId.isEmpty();
    }

    /**
     * Returns the section's name: bank and the two vaults, joined by {@code :}, or {@code :} and the duct instead of the bank. Two
     * sections never have the same name, since a {@code :} or {@code %} inside a part is written as in a URL, {@code %3A} or {@code %25}.
     */
    public String id() {
        return String.join(
                SEPARATOR,
                hasBank() ? SpanName.escaped(bankId) : SEPARATOR + SpanName.escaped(ductId),
                SpanName.escaped(vaultId),
                SpanName.escaped(otherVaultId));
    }

    /** Compares the names as texts. Mostly what they begin with decides, so that whole names need not be put together. */
    @Override
    public int compareTo(SectionKey other) {
        if (hasBank() == other.hasBank()) {
            String first = SpanName.escaped(hasBank() ? bankId : ductId);
            String otherFirst = SpanName.escaped(hasBank() ? other.bankId : other.ductId);
            if (!first.startsWith(otherFirst) && !otherFirst.startsWith(first)) {
                return first.compareTo(otherFirst);
            }
        }
        return id().compareTo(other.id());
    }
}
