package org.spanroom.network;

import java.util.List;
import java.util.Map;
import org.spanroom.model.Line;
import org.spanroom.model.Prefetch;
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
                hashes[span] = plain.nameHash(span);
            }
        });
        return new SpanTable(chains, chainOf, firstOf, SpanIds.renamed(plain::id, hashes), vaultPlaces);
    }

    /** Returns a number that is the same for equal names, from their parts, whose hashes Java keeps. */
    private int nameHash(int number) {
        ChainSpans chain = chain(number);
        int at = at(number);
        int hash = mixed(chain.ductName(at).hashCode());
        hash = mixed(hash ^ chain.from(at).id().hashCode());
        return mixed(hash ^ chain.to(at).id().hashCode());
    }

    /** Spreads numbers that are near each other, as those of names with counters are (the finalizer of MurmurHash3, from memory). */
    private static int mixed(int value) {
        int h = value * 0x9E3779B9;
        h = (h ^ h >>> 16) * 0x85EBCA6B;
        h = (h ^ h >>> 13) * 0xC2B2AE35;
        return h ^ h >>> 16;
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
    public void prefetch(int[] numbers) {
        int sum = 0;
        for (int number : numbers) {
            sum += chain(number).size();
        }
        for (int number : numbers) {
            sum += chain(number).touch(at(number));
        }
        Prefetch.read(sum);
    }

    @Override
    public double lengthM(int number) {
        return chain(number).lengthM(at(number));
    }

    @Override
    public double drawnLengthM(int number) {
        return chain(number).drawnLengthM(at(number));
    }

    @Override
    public Line lonLat(int number) {
        return chain(number).lonLat(at(number));
    }

    @Override
    public String fromId(int number) {
        return chain(number).from(at(number)).id();
    }

    @Override
    public String toId(int number) {
        return chain(number).to(at(number)).id();
    }

    @Override
    public List<String> routeIds(int number) {
        return chain(number).routeIds(at(number));
    }

    @Override
    public long leadingOfId(int number) {
        return SpanName.leading(chain(number).ductName(at(number)));
    }

    /** The names of the ducts, which span names begin with, decide where they differ; only otherwise are whole names put together. */
    @Override
    public int compareIds(int number, int other) {
        String duct = SpanName.escaped(chain(number).ductName(at(number)));
        String otherDuct = SpanName.escaped(chain(other).ductName(at(other)));
        if (duct.equals(otherDuct)) {
            return super.compareIds(number, other);
        }
        if (otherDuct.startsWith(duct)) {
            return Character.compare(SpanName.AFTER_PART, otherDuct.charAt(duct.length()));
        }
        return duct.startsWith(otherDuct)
                ? Character.compare(duct.charAt(otherDuct.length()), SpanName.AFTER_PART)
                : duct.compareTo(otherDuct);
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
