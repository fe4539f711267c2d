package org.spanroom.network;

import java.util.Map;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.SpanName;
import org.spanroom.parallel.ParallelRanges;

/** The spans of all chains, in the order of the chains, each under a name of its own. */
final class SpanTable extends SpanList {
    private final ChainSpans[] chains;
    private final int[] chainOf;
    private final int[] firstOf;
    private final Map<Integer, String> renamed;
    private final int[] vaultPlaces;

    private SpanTable(
            ChainSpans[] chains, int[] chainOf, int[] firstOf, Map<Integer, String> renamed, int[] vaultPlaces) {
        this.vaultPlaces = vaultPlaces;
        this.chains = chains;
        this.chainOf = chainOf;
        this.firstOf = firstOf;
        this.renamed = renamed;
    }

    /**
     * Returns the spans of chains; the caller must not keep the arrays.
     *
     * @param vaultPlaces the place of each vault, by its number, among those that count
     */
    static SpanTable of(ChainSpans[] chains, int[] vaultPlaces, ParallelRanges ranges) {
        int[] firstOf = new int[chains.length];
        int count = 0;
        for (int chain = 0; chain < chains.length; chain++) {
            firstOf[chain] = count;
            count = Math.addExact(count, chains[chain].size());
        }
        int[] chainOf = new int[count];
        for (int chain = 0; chain < chains.length; chain++) {
            int end = firstOf[chain] + chains[chain].size();
            for (int span = firstOf[chain]; span < end; span++) {
                chainOf[span] = chain;
            }
        }
        var plain = new SpanTable(chains, chainOf, firstOf, Map.of(), vaultPlaces);
        int[] hashes = new int[count];
        ranges.run(count, () -> (from, to) -> {
            for (int span = from; span < to; span++) {
                hashes[span] = plain.id(span).hashCode();
            }
        });
        return new SpanTable(chains, chainOf, firstOf, SpanIds.renamed(plain::id, hashes), vaultPlaces);
    }

    private ChainSpans chain(int number) {
        return chains[chainOf[number]];
    }

    private int at(int number) {
        return number - firstOf[chainOf[number]];
    }

    @Override
    public int size() {
        return chainOf.length;
    }

    @Override
    public Span get(int number) {
        Span span = chain(number).span(at(number));
        String name = renamed.isEmpty() ? null : renamed.get(number);
        return name == null ? span : span.withId(name);
    }

    @Override
    public String id(int number) {
        String name = renamed.isEmpty() ? null : renamed.get(number);
        return name == null ? chain(number).id(at(number)) : name;
    }

    @Override
    public Duct duct(int number) {
        return chain(number).duct(at(number));
    }

    @Override
    public int fromVault(int number) {
        return vaultPlaces[chain(number).fromVault(at(number))];
    }

    @Override
    public int toVault(int number) {
        return vaultPlaces[chain(number).toVault(at(number))];
    }

    @Override
    public SectionKey section(int number) {
        ChainSpans chain = chain(number);
        int at = at(number);
        return SectionKey.of(chain.duct(at), chain.from(at), chain.to(at));
    }

    @Override
    public double lengthM(int number) {
        return chain(number).lengthM(at(number));
    }

    /** Mostly the names of the ducts, which span names begin with, decide; only otherwise are whole names put together. */
    @Override
    public int compareIds(int number, int other) {
        String duct = SpanName.escaped(chain(number).ductName(at(number)));
        String otherDuct = SpanName.escaped(chain(other).ductName(at(other)));
        int compared = duct.compareTo(otherDuct);
        boolean oneBeginsOther = compared == 0 || duct.startsWith(otherDuct) || otherDuct.startsWith(duct);
        return oneBeginsOther ? super.compareIds(number, other) : compared;
    }

    @Override
    public boolean hasElevations() {
        for (ChainSpans chain : chains) {
            if (chain.hasElevations()) {
                return true;
            }
        }
        return false;
    }
}
