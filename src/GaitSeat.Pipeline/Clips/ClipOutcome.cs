using GaitSeat.Model;

namespace GaitSeat.Pipeline.Clips;

/// <summary>How a clip ended.</summary>
public enum ClipEnd
{
    /// <summary>Measured in this run; its rows are in the dataset.</summary>
    Measured,

    /// <summary>Its rows were there already under the same settings and models.</summary>
    AlreadyDone,

    /// <summary>Could not be measured; the reason is in the dataset.</summary>
    SetAside,

    /// <summary>The sheet says no consent: not processed, and nothing of it is kept.</summary>
    NoConsent,

    /// <summary>Could not be read this time (busy, no right, replaced, gone); nothing is recorded, and the next run tries again.</summary>
    PutOff,
}

/// <summary>What became of one clip.</summary>
/// <param name="Reason">Why it was set aside or put off; null otherwise.</param>
/// <param name="Detail">The same for people.</param>
/// <param name="Frames">Frames analysed.</param>
/// <param name="Pictures">Files made for it.</param>
public sealed record ClipOutcome(
    string ClipFile,
    ClipEnd End,
    string? Reason,
    string? Detail,
    int Frames,
    IReadOnlyList<Spell> Spells,
    IReadOnlyList<Stride> Strides,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<LeftOut> LeftOut,
    IReadOnlyList<string> Pictures)
{
    public static ClipOutcome Without(string clipFile, ClipEnd end, string? reason, string? detail) =>
        new(clipFile, end, reason, detail, 0, [], [], [], [], []);
}
