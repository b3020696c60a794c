namespace GaitSeat.Model;

/// <summary>A continuous stretch of one gait with the rider in view.</summary>
/// <param name="Number">1-based within the clip.</param>
/// <param name="Confidence">0..1, how surely the gait is what it is called.</param>
/// <param name="BounceHz">Main frequency of the trunk's vertical motion; NaN where none was found.</param>
/// <param name="BounceCm">Peak-to-peak vertical motion of the trunk, cm (NaN without scale).</param>
/// <param name="BouncePctLeg">The same over leg length.</param>
/// <param name="StridesKept">Strides measured in this spell.</param>
/// <param name="StridesDropped">Strides cut but left out.</param>
/// <param name="DriftCreepCmPerStride">Slope of the tread's forward position at the sits, cm per stride.</param>
/// <param name="RegularityCvPct">Coefficient of variation of stride duration, percent; NaN below 3 strides.</param>
public sealed record Spell(
    int Number,
    Gait Gait,
    Facing Facing,
    double StartSeconds,
    double EndSeconds,
    double Confidence,
    double BounceHz,
    double BounceCm,
    double BouncePctLeg,
    int StridesKept,
    int StridesDropped,
    Measured DriftCreepCmPerStride,
    double RegularityCvPct);

/// <summary>One stride of rising trot, sit instant to sit instant.</summary>
/// <param name="SpellNumber">The spell it belongs to.</param>
/// <param name="Number">1-based within the spell, counting dropped strides too.</param>
/// <param name="Confidence">0..1, how sure its boundaries are.</param>
/// <param name="Quality"><c>good</c>, or the named reasons for care joined by <c>+</c>, such as <c>scale_uncertain</c>.</param>
public sealed record Stride(
    int SpellNumber,
    int Number,
    Facing Facing,
    double StartSeconds,
    double TopSeconds,
    double EndSeconds,
    double Confidence,
    string Quality,
    MeasureSet Measures)
{
    /// <summary>A word of <see cref="Quality"/> that begins so says that the row is not to be trusted, and why: its standard errors do not hold.</summary>
    public const string UntrustedPrefix = "untrusted_";

    /// <summary>Whether the row's values and standard errors stand.</summary>
    public bool IsTrusted => !Quality.Split('+').Any(word => word.StartsWith(UntrustedPrefix, StringComparison.Ordinal));
}

/// <summary>
/// The smoothed signals of a clip, one entry a frame, NaN where nothing is known. For plots, overlays and the tracks table.
/// Lengths are in percent of leg length so that they exist without a scale.
/// </summary>
public sealed record MotionTrace
{
    public required double[] TimeSeconds { get; init; }

    /// <summary>Seat height over the trunk anchor, + up, percent of leg length; zero at the sits.</summary>
    public required double[] SeatPctLeg { get; init; }

    /// <summary>Vertical motion of the trunk, + up, camera motion removed, percent of leg length.</summary>
    public required double[] BouncePctLeg { get; init; }

    /// <summary>Forward position of the tread in the trunk frame, percent of leg length, mean taken off.</summary>
    public required double[] TreadForwardPctLeg { get; init; }

    public required double[] ThighAngleDeg { get; init; }

    /// <summary>Smoothed body points in analysis pixels, by <see cref="BodyPoint"/>.</summary>
    public required PointTrack[] Points { get; init; }
}

/// <summary>What the maths made of one clip's sightings.</summary>
public sealed record ClipMotion(
    IReadOnlyList<Spell> Spells,
    IReadOnlyList<Stride> Strides,
    IReadOnlyList<LeftOut> LeftOut,
    MotionTrace Trace)
{
    /// <summary>Changes of stirrup length within the clip, in order of time.</summary>
    public IReadOnlyList<StirrupShift> Changes { get; init; } = [];

    /// <summary>No spell, no stride, no frame: a clip that could not be measured.</summary>
    public static ClipMotion Nothing { get; } = new([], [], [], new MotionTrace
    {
        TimeSeconds = [],
        SeatPctLeg = [],
        BouncePctLeg = [],
        TreadForwardPctLeg = [],
        ThighAngleDeg = [],
        Points = [.. Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(0))],
    });
}
