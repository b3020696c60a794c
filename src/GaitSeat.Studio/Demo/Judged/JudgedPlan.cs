using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The judged season of a season's definition: how many invented riders ride how often, and which faults are planted. Its clips are ridden, not drawn.</summary>
public sealed record JudgedPlan
{
    /// <summary>Riders, each with a build and a seat of her own.</summary>
    public required int Riders { get; init; }

    /// <summary>Clips of each rider, one a day.</summary>
    public required int ClipsEach { get; init; }

    /// <summary>Share of answers in which the judge says the opposite of what was planted, percent.</summary>
    public required double WrongAnswersPct { get; init; }

    public required IReadOnlyList<PlantedFault> Faults { get; init; }
}

/// <summary>A fault as it is planted: what it adds to the rider's own seat, drawn evenly between two numbers; null adds nothing.</summary>
public sealed record PlantedFault
{
    public required Fault Fault { get; init; }

    /// <summary>Share of the clips it is planted in, percent.</summary>
    public required double SharePct { get; init; }

    /// <summary>A fault before it in the list that it comes along with; null where it comes by itself.</summary>
    public Fault? With { get; init; }

    /// <summary>Share of the clips with that other fault it is planted in, percent.</summary>
    public double? ShareWithPct { get; init; }

    /// <summary>On <see cref="ClipScript.ThighSitDeg"/>, deg.</summary>
    public double[]? ThighSitDeg { get; init; }

    /// <summary>On <see cref="ClipScript.RiseCm"/>, cm.</summary>
    public double[]? RiseCm { get; init; }

    /// <summary>On <see cref="ClipScript.TrunkLeanDeg"/>, deg.</summary>
    public double[]? TrunkLeanDeg { get; init; }

    /// <summary>On <see cref="ClipScript.DriftSwingCm"/>, cm.</summary>
    public double[]? DriftSwingCm { get; init; }

    /// <summary>On <see cref="ClipScript.DriftOffsetCm"/>, cm.</summary>
    public double[]? DriftOffsetCm { get; init; }
}

/// <summary>A clip of the judged season.</summary>
/// <param name="Name">Without extension.</param>
/// <param name="Planted">Faults planted in it.</param>
/// <param name="Answers">What the judge says of each fault of the plan: what was planted, some answers turned over.</param>
/// <param name="Coat">Colour of the horse, a word.</param>
/// <param name="RiderSeed">The same in all clips of a rider, see <see cref="UndrawnClip.See"/>.</param>
public sealed record JudgedClip(
    string Name, string Rider, string Horse, DateOnly Date, string Coat, int RiderSeed, ClipScript Script, IReadOnlySet<Fault> Planted, IReadOnlyDictionary<Fault, bool> Answers);
