using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>One rider on one horse on one day.</summary>
public sealed record SessionKey(DateOnly Date, string Rider, string Horse);

/// <summary>What was found over the clips of one session under one pipeline hash and one model hash.</summary>
/// <param name="ClipKeys">The clips it was made from; when one of them is erased, this goes too.</param>
public sealed record SessionRecord(
    SessionKey Session, IReadOnlyList<string> ClipKeys, string PipelineHash, string ModelHash, string SoftwareVersion, IReadOnlyList<SessionFact> Facts);

/// <summary>What a fact of a session is about.</summary>
public enum SessionFactKind
{
    /// <summary>First is before, second after.</summary>
    StirrupChange,

    /// <summary>First is the left rein, second the right.</summary>
    ReinDifference,

    /// <summary>First is the rider's left side as the camera saw it, second the right.</summary>
    SideDifference,
}

/// <summary>Two means of one measure and their difference, second less first.</summary>
/// <param name="SideBiasStandardError">How large a difference the models' own habit on the two sides of a rider makes, one standard deviation.</param>
public sealed record SessionFact(
    SessionFactKind Kind,
    StrideMeasure Measure,
    Measured First,
    Measured Second,
    Measured Difference,
    double SideBiasStandardError,
    int StridesFirst,
    int StridesSecond,
    int ClipsFirst,
    int ClipsSecond)
{
    /// <summary>Null for a comparison of left and right.</summary>
    public SessionChangePlace? Change { get; init; }

    internal Measured WithBias => new(Difference.Value, Math.Sqrt(Difference.StandardError * Difference.StandardError + SideBiasStandardError * SideBiasStandardError));
}

/// <summary>Where in a session the leathers were changed.</summary>
/// <param name="Rein">Rein of the strides compared; null where the sheet does not say.</param>
/// <param name="ChanceProbability">How often a session without any change would show as much, 0..1.</param>
public sealed record SessionChangePlace(
    LengthChange Direction, string? Rein, Facing Facing, string ClipBefore, double BeforeEndSeconds, string ClipAfter, double AfterStartSeconds, double ChanceProbability);
