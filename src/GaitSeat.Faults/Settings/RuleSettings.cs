using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults;

/// <summary>
/// When a spell's strides become a finding. Lengths are held against the centimetre limit where the clip has a scale and against
/// the percent-of-leg limit where it has none; the defaults of the two match at a leg (thigh + shank) of 80 cm, between the
/// 78.3 cm of women and the 82.8 cm of men (sum of link means, ANSUR II 2012, Gordon et al. 2014), so 1 cm = 1.25 %.
/// </summary>
public sealed record RuleSettings
{
    /// <summary>Probability that the true value is past the limit from which a finding is made, 0.5..1. Default 0.8: four in five, common practice, no source.</summary>
    [Range(0.5, 1)]
    public double MinimumProbability { get; init; } = 0.8;

    /// <summary>Strides of a spell in which every measure of a rule must be there. Default 3: the least that shows a habit and has a spread; common practice, no source.</summary>
    [Range(1, 1000)]
    public int MinimumStrides { get; init; } = 3;

    public StirrupShortRule StirrupShort { get; init; } = new();

    public StirrupLongRule StirrupLong { get; init; } = new();

    public SmallRiseRule SmallRise { get; init; } = new();

    public ChairSeatRule ChairSeat { get; init; } = new();

    public ForkSeatRule ForkSeat { get; init; } = new();

    public PressingTheStirrupRule PressingTheStirrup { get; init; } = new();

    public ForcedHeelRule ForcedHeel { get; init; } = new();

    public SwingingLowerLegRule SwingingLowerLeg { get; init; } = new();

    public BusyHandsRule BusyHands { get; init; } = new();

    public BehindTheMovementRule BehindTheMovement { get; init; } = new();

    public AheadOfTheMovementRule AheadOfTheMovement { get; init; } = new();

    public HeavyLandingRule HeavyLanding { get; init; } = new();

    public IrregularRiseRule IrregularRise { get; init; } = new();
}
