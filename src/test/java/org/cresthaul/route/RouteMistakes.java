package org.cresthaul.route;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.units.Mistake;

/** Mistakes people make in route files. The last cell: does the schema (shape) see it, or only the reader (sense)? */
public final class RouteMistakes {
    private RouteMistakes() {}

    public static final List<Mistake> ALL = Stream.of(
                    "not a collection        | /type | \"Feature\" | unknown-word | = | shape",
                    "no format               | /cresthaul | absent | missing | = | shape",
                    "a crs                   | /crs | {\"type\":\"name\"} | crs | = | shape",
                    "a crs on a geometry     | G/0/crs | {} | crs | = | shape",
                    "an unknown member       | /speed | 50 | unknown-key | = | shape",
                    "no features             | /features | [] | wrong-count | = | shape",
                    "a feature that is null  | /features/5 | null | wrong-type | = | shape",
                    "a feature of no kind    | P/5/hazard | absent | missing | /features/5/properties | shape",
                    "leg and hazard in one   | P/5/route | \"x\" | both-kinds | P/5/hazard | shape",
                    "an unknown hazard       | P/5/hazard | \"pothole\" | unknown-word | = | shape",
                    "a hazard on a line      | /features/5/geometry/type | \"LineString\" | unknown-word | = | shape",
                    "a leg on a polygon      | /features/0/geometry/type | \"Polygon\" | unknown-word | = | shape",
                    "a leg without a name    | P/0/route | \"\" | blank | = | shape",
                    "a leg without geometry  | /features/0/geometry | absent | missing | = | shape",
                    "an extra leg property   | P/0/lanes | 2 | unknown-key | = | shape",
                    "a line of one position  | C/0 | [[-93.1, 44.6]] | wrong-type | = | shape",
                    "a position of four      | C/0/1 | [-93.09, 44.6, 1, 2] | wrong-position | = | shape",
                    "a position of one       | C/0/1 | [-93.09] | wrong-position | = | shape",
                    "a position of texts     | C/0/1 | [\"-93.09\", \"44.6\"] | wrong-position | = | shape",
                    "longitude beyond 180    | C/0/1 | [-193.09, 44.6] | out-of-range | = | shape",
                    "latitude first          | C/0/1 | [44.6, -93.09] | out-of-range | = | shape",
                    "a jump of 200 km        | C/0/1 | [-95.6, 44.6] | position-far | = | sense",
                    "legs that do not meet   | C/1/0 | [-93.08, 44.603] | leg-gap | = | sense",
                    "a leg turned round      | C/1 | [[-93.08, 44.62], [-93.08, 44.6011]] | leg-gap | C/1/0 | sense",
                    "a leg without length    | C/1 | [[-93.08, 44.601], [-93.08, 44.601]] | no-length | = | sense",
                    "a hazard off the line   | C/5 | [-93.0795, 44.618] | off-route | = | sense",
                    "a hazard far away       | C/5 | [10, 20] | off-route | = | sense",
                    "an id twice             | P/5/id | \"H01\" | id-twice | = | sense",
                    "an id with a blank      | P/5/id | \"H 01\" | wrong-id | = | shape",
                    "an id like a formula    | P/5/id | \"=1+1\" | wrong-id | = | shape",
                    "a passage too many      | P/5/passage | 2 | no-such-passage | = | sense",
                    "a passage of text       | P/5/passage | \"2\" | wrong-number | = | shape",
                    "no name                 | P/5/name | absent | missing | = | shape",
                    "a profile without survey| P/3/survey | absent | missing | = | shape",
                    "a survey without source | P/3/survey/source | absent | missing | = | shape",
                    "accuracy in grade       | P/3/survey/accuracy | \"1 %\" | unit-unknown | = | shape",
                    "accuracy of nothing     | P/3/survey/accuracy | \"0 mm\" | out-of-range | = | sense",
                    "an empty profile        | P/3/profile | [] | wrong-count | = | shape",
                    "a line twice            | P/3/profile/1/line | \"left\" | line-twice | = | sense",
                    "a line of one point     | P/3/profile/0/points | [[\"0 m\",\"0 m\"]] | wrong-count | = | shape",
                    "a point of one number   | P/3/profile/0/points/1 | [\"0 m\"] | wrong-type | = | shape",
                    "a bare distance         | P/3/profile/0/points/1/0 | -1 | unit-missing | = | shape",
                    "a bare elevation        | P/3/profile/0/points/1/1 | \"0.3\" | unit-missing | = | shape",
                    "one distance twice      | P/3/profile/0/points/1/0 | \"-12 m\" | distance-twice | = | sense",
                    "distances that fall     | P/3/profile/0/points/1/0 | \"-13 m\" | distance-order | = | sense",
                    "a cliff                 | P/3/profile/0/points/3/1 | \"15 m\" | too-steep | P/3/profile/0/points/3 | sense",
                    "a point in the sky      | P/3/profile/0/points/0/1 | \"9001 m\" | out-of-range | = | sense",
                    "a profile elsewhere     | P/3/profile/1/points | [[\"5 m\",\"0 m\"],[\"9 m\",\"0 m\"]] | profile-misses-hazard | = | sense",
                    "an approach without unit| P/3/approachBefore/grade | \"1.5\" | unit-missing | = | shape",
                    "an approach of 60 %     | P/3/approachBefore/grade | \"60 %\" | out-of-range | = | sense",
                    "an approach and accuracy| P/3/approachAfter/accuracy | absent | missing | = | shape",
                    "an approach of nothing  | P/5/approachAfter | {\"grade\":\"1 %\",\"accuracy\":\"1 %\"} | approach-alone | = | shape",
                    "a short crossing number | P/3/crossingNumber | \"12345A\" | wrong-number | = | shape",
                    "tracks out of order     | P/3/tracks/1 | \"-1 m\" | order | = | sense",
                    "a track without unit    | P/3/tracks/1 | 4.3 | unit-missing | = | shape",
                    "a sign that is a number | P/3/signs/0 | 10 | wrong-type | = | shape",
                    "tracks in a dip         | P/5/tracks | [] | unknown-key | = | shape",
                    "a clearance on a crest  | P/5/clearance | \"4 m\" | unknown-key | = | shape",
                    "not said how measured   | P/4/measured | absent | missing | = | shape",
                    "measured by guess       | P/4/measured | \"guessed\" | unknown-word | = | shape",
                    "clearance, no extent    | P/4/extent | absent | missing | = | shape",
                    "extent, no clearance    | P/4/clearance | absent | extent-alone | P/4/extent | shape",
                    "extent backwards        | P/4/extent/1 | \"-4 m\" | order | P/4/extent | sense",
                    "extent of three         | P/4/extent/- | \"9 m\" | wrong-count | P/4/extent | shape",
                    "a clearance of an inch  | P/4/clearance | \"1 in\" | out-of-range | = | sense",
                    "a clearance of 99.99 m  | P/4/clearance | \"99.99 m\" | out-of-range | = | sense",
                    "surveyed, not how well  | P/4/measured | \"surveyed\" | missing | P/4/survey | shape",
                    "soffit, no profile      | P/2/profile | absent | soffit-without-profile | P/2/soffit | shape",
                    "soffit of another datum | P/2/soffit | [[\"-3 m\",\"98 m\"],[\"5 m\",\"98 m\"]] | other-datum | = | sense",
                    "soffit 50 m up          | P/2/soffit | [[\"-3 m\",\"150 m\"],[\"5 m\",\"150 m\"]] | other-datum | = | sense",
                    "a posted soffit         | P/2/measured | \"posted\" | posted-soffit | = | shape",
                    "soffit unsorted         | P/2/soffit/1/0 | \"-5 m\" | distance-order | = | sense")
            .map(row -> Mistake.of(row.replaceAll("\\b([PGC])/(\\d)", "/features/$2/$1")
                    .replace("/P", "/properties")
                    .replace("/G", "/geometry")
                    .replace("/C", "/geometry/coordinates")))
            .toList();
}
