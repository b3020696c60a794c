using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>In what circumstances a stretch of a clip was filmed, from the truth.</summary>
/// <param name="TurnDeg">Mean turn, deg, with the sign of <see cref="Sightings.KnownTurnDeg"/>; NaN where the truth has no places in space.</param>
/// <param name="YawDeg">Mean size of the yaw, deg.</param>
/// <param name="RiderPx">Mean height of the rider, px of the clip.</param>
/// <param name="Groups">Group by kind: <c>yaw</c> is <c>15-25</c>, <c>camera</c> is <c>pan</c>...</param>
public sealed record Circumstances(double TurnDeg, double YawDeg, double RiderPx, IReadOnlyDictionary<string, string> Groups)
{
    /// <summary>The kinds told from the frames; those a clip names of itself come after.</summary>
    public const string Yaw = "yaw", RiderHeight = "rider_px", Rate = "fps", Camera = "camera", Facing = "facing";

    private const double SideOnMostDeg = 15, SideOnLeastPx = 200;

    /// <summary>What a clip says as a whole and its frames say better.</summary>
    private static readonly string[] SaidAlready = ["rate", "size"];

    private static readonly (double Below, string Name)[] YawBands = [(15, "0-15"), (25, "15-25"), (40, "25-40"), (double.MaxValue, "40 and more")];
    private static readonly (double Below, string Name)[] HeightBands = [(150, "0-150"), (200, "150-200"), (300, "200-300"), (double.MaxValue, "300 and more")];

    /// <summary>The stricter column of the goals: side-on within 15 deg and a rider of 200 px and more.</summary>
    public bool IsSideOn => IsSideOnAt(YawDeg, RiderPx);

    public static bool IsSideOnAt(double yawDeg, double riderPx) => Math.Abs(yawDeg) <= SideOnMostDeg && riderPx >= SideOnLeastPx;

    public static Circumstances Of(ClipTruth truth, double startSeconds, double endSeconds)
    {
        ArgumentNullException.ThrowIfNull(truth);
        var rows = truth.FrameRows.Where(r => r.TimeSeconds >= startSeconds && r.TimeSeconds <= endSeconds).ToArray();
        var known = rows.Length > 0;
        var yaw = known ? rows.Average(r => Math.Abs(r.YawDeg)) : Math.Abs(truth.YawNominalDeg);
        var height = known ? rows.Average(r => r.RiderPxHeight) : truth.RiderPxHeightMean;
        var facing = known ? rows.GroupBy(r => r.Facing ?? truth.FacingTerm).MaxBy(g => g.Count())!.Key : truth.FacingTerm;
        var groups = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            [Yaw] = YawBands.First(b => yaw <= b.Below).Name,
            [RiderHeight] = HeightBands.First(b => height < b.Below).Name,
            [Rate] = truth.Conditions.GetValueOrDefault("rate") ?? FormattableString.Invariant($"{truth.Fps:0.##}"),
            [Camera] = truth.Conditions.GetValueOrDefault(Camera) ?? truth.Camera,
            [Facing] = facing.ToTerm() ?? "unknown",
        };
        foreach (var (kind, value) in truth.Conditions.Where(c => !SaidAlready.Contains(c.Key))) groups.TryAdd(kind, value);
        return new(known ? rows.Average(r => TrueTurn.Of(r, truth.FacingTerm)) : double.NaN, yaw, height, groups);
    }
}
