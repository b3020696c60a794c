using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The conditions of one clip of the wide set, as words; the numbers are drawn within them.</summary>
internal sealed record WideRow
{
    public required bool Core { get; init; }
    public required string Path { get; init; }
    public required string Camera { get; init; }
    public required string Roll { get; init; }
    public required string Size { get; init; }
    public required string Rate { get; init; }
    public required string Picture { get; init; }
    public required string Light { get; init; }
    public required string Blur { get; init; }
    public required string BitRate { get; init; }
    public required string Clothes { get; init; }
    public required string Horse { get; init; }
    public required string Occluder { get; init; }
    public required string Stirrup { get; init; }
    public required string Gait { get; init; }
    public required string Fault { get; init; }
    public required Facing Facing { get; init; }

    public int AdverseCount =>
        Worse(Roll, "level") + Worse(Light, "good") + Worse(Blur, "sharp") + Worse(BitRate, "good") + Worse(Clothes, "fitted") + Worse(Occluder, "none") + (Camera == "hand-held" ? 1 : 0);

    private static int Worse(string value, string plain) => value == plain ? 0 : 1;
}

/// <summary>Shares of each condition. They are the design of the set, not findings about the world.</summary>
internal static class WideDesign
{
    private const int MostAdverse = 3;

    public static IReadOnlyList<WideRow> Rows(SeededNoise noise, int count)
    {
        string[] Column(params (string, double)[] shares) => Spread(noise, count, shares);
        var path = Column(("around", 3), ("line-far", 1), ("circle-inside", 2));
        var widePath = Column(("around", 3), ("line-near", 2), ("turned", 3), ("circle-outside", 3), ("circle-inside", 1));
        var camera = Column(("pan", 8), ("static", 3), ("pan-zoom", 4), ("hand-held", 5));
        var roll = Column(("level", 8), ("rolled", 2));
        var coreSize = Column(("usual", 6), ("large", 4));
        var wideSize = Column(("small", 5), ("usual", 4), ("large", 1));
        var rate = Column(("25", 3), ("29.97", 5), ("30", 4), ("50", 1.8), ("60", 2.1), ("120", 0.7), ("variable", 2.4));
        var picture = Column(("1280x720", 7), ("1920x1080", 1), ("640x360", 1), ("720x1280", 1));
        var light = Column(("good", 15), ("dim", 3), ("low", 2));
        var blur = Column(("sharp", 15), ("blurred", 5));
        var bits = Column(("good", 14), ("low", 3), ("very-low", 3));
        var clothes = Column(("fitted", 11), ("loose-jacket", 3), ("dark-on-dark", 3), ("long-hair", 3));
        var horse = Column(("usual", 6), ("pony", 2), ("large", 2));
        var occluder = Column(("none", 15), ("posts", 2.5), ("helper-behind", 1.2), ("helper-in-front", 1.3));
        var stirrup = Column(("normal", 9), ("short", 5), ("long", 4), ("changed", 2));
        var gait = Column(("rising", 70), ("sitting", 6), ("walk", 5), ("canter", 5), ("halt", 3), ("mixed", 11));
        var fault = Column(("none", 16), ("double-bounce", 2), ("other-diagonal", 1.4), ("irregular-rise", 2));
        var facing = Column(("right", 1), ("left", 1));
        return [.. Enumerable.Range(0, count).Select(i => Lightened(i, new WideRow
        {
            Core = i % 2 == 0,
            Path = i % 2 == 0 ? path[i] : widePath[i],
            Camera = camera[i],
            Roll = roll[i],
            Size = i % 2 == 0 ? coreSize[i] : wideSize[i],
            Rate = rate[i],
            Picture = picture[i],
            Light = light[i],
            Blur = blur[i],
            BitRate = bits[i],
            Clothes = clothes[i],
            Horse = horse[i],
            Occluder = occluder[i],
            Stirrup = stirrup[i],
            Gait = stirrup[i] == "changed" ? "mixed" : gait[i],
            Fault = gait[i] == "rising" && stirrup[i] != "changed" ? fault[i] : "none",
            Facing = facing[i] == "right" ? Facing.Right : Facing.Left,
        }))];
    }

    // Adverse conditions are taken off, another one first for each clip, until few enough are left.
    private static WideRow Lightened(int index, WideRow row)
    {
        for (var i = index; row.AdverseCount > MostAdverse; i++)
        {
            row = (i % 7) switch
            {
                0 => row with { Roll = "level" },
                1 => row with { Light = "good" },
                2 => row with { Blur = "sharp" },
                3 => row with { BitRate = "good" },
                4 => row with { Clothes = "fitted" },
                5 => row with { Occluder = "none" },
                _ => row.Camera == "hand-held" ? row with { Camera = "pan" } : row,
            };
        }

        return row;
    }

    // Each value as often as its share says (largest remainders), in shuffled order.
    private static string[] Spread(SeededNoise noise, int count, (string Value, double Share)[] shares)
    {
        var total = shares.Sum(s => s.Share);
        var wanted = shares.Select(s => count * s.Share / total).ToArray();
        var got = wanted.Select(w => (int)w).ToArray();
        foreach (var i in Enumerable.Range(0, shares.Length).OrderByDescending(i => wanted[i] - got[i]).Take(count - got.Sum()).ToArray()) got[i]++;
        var column = shares.SelectMany((s, i) => Enumerable.Repeat(s.Value, got[i])).ToArray();
        for (var i = column.Length - 1; i > 0; i--)
        {
            var j = (int)(noise.Next() % (ulong)(i + 1));
            (column[i], column[j]) = (column[j], column[i]);
        }

        return column;
    }
}
