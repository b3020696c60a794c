namespace GaitSeat.Store;

/// <summary>The columns of a session sheet and the bounds of their numbers.</summary>
internal static class SheetColumns
{
    internal const string ClipFile = "clip_file";
    internal const string SessionDate = "session_date";
    internal const string Season = "season";
    internal const string Rider = "rider";
    internal const string Horse = "horse";
    internal const string Stature = "rider_stature_cm";
    internal const string Thigh = "thigh_cm";
    internal const string LowerLeg = "lower_leg_cm";
    internal const string Hole = "stirrup_hole";
    internal const string Leather = "leather_cm";
    internal const string Rein = "rein";
    internal const string Consent = "consent";
    internal const string Note = "note";

    /// <summary>Columns of the template, in order. <see cref="Season"/> is known too, but rarely needed.</summary>
    internal static IReadOnlyList<string> Template { get; } =
        [ClipFile, SessionDate, Rider, Horse, Stature, Thigh, LowerLeg, Hole, Leather, Rein, Consent, Note];

    internal static IReadOnlySet<string> Known { get; } = new HashSet<string>([.. Template, Season], StringComparer.Ordinal);

    internal static IReadOnlyList<string> Required { get; } = [ClipFile, Consent];

    /// <summary>
    /// Bounds that catch a wrong unit (inches, metres) or a slip of the hand; wide enough for children and the very tall.
    /// Common sense, no source.
    /// </summary>
    internal static IReadOnlyDictionary<string, (double Least, double Most)> Bounds { get; } = new Dictionary<string, (double, double)>
    {
        [Stature] = (90, 220),
        [Thigh] = (20, 60),
        [LowerLeg] = (20, 60),
        [Hole] = (0, 30),
        [Leather] = (20, 100),
    };
}
