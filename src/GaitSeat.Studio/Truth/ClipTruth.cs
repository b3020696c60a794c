using System.Text.Json.Serialization;
using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>
/// What is truly in a made clip. Written beside it as <c>NAME.truth.json</c> (this record, snake_case) and <c>NAME.truth.csv</c> (<see cref="FrameRows"/>).
/// Frame i is at i / fps seconds, mid-exposure. Properties that only some files carry are null where missing.
/// </summary>
public sealed record ClipTruth
{
    public required string Clip { get; init; }

    public required int Width { get; init; }

    public required int Height { get; init; }

    public required double Fps { get; init; }

    /// <summary>Number of frames.</summary>
    public required int Frames { get; init; }

    public required double DurationS { get; init; }

    /// <summary><c>rising</c>, <c>sitting</c>, <c>walk</c>, <c>canter</c> or <c>halt</c>.</summary>
    public required string Gait { get; init; }

    /// <summary>Bare height, m.</summary>
    public required double StatureM { get; init; }

    /// <summary><c>left</c> or <c>right</c> of the picture.</summary>
    public required string Facing { get; init; }

    /// <summary><c>static</c> or <c>pan</c>.</summary>
    public required string Camera { get; init; }

    public required double YawNominalDeg { get; init; }

    public required double PxPerMMean { get; init; }

    public required double RiderPxHeightMean { get; init; }

    /// <summary>First frame with the whole rider in the picture; -1 where there is none.</summary>
    public required int FirstInFrame { get; init; }

    /// <summary>Last frame with the whole rider in the picture; -1 where there is none.</summary>
    public required int LastInFrame { get; init; }

    public double? YawMeanDeg { get; init; }

    public double? SpeedMS { get; init; }

    public double? StrideHzNominal { get; init; }

    public double? TrunkBounceExcursionCm { get; init; }

    public double? ThighLenM { get; init; }

    public double? ShankLenM { get; init; }

    /// <summary>Stirrup bar to tread, m.</summary>
    public double? LeatherM { get; init; }

    /// <summary>Every stride of the clip, also those where the rider is not in the picture (compare <see cref="FirstInFrame"/>).</summary>
    public required IReadOnlyList<StrideTruth> Strides { get; init; }

    [JsonIgnore]
    public IReadOnlyList<FrameTruth> FrameRows { get; init; } = [];

    /// <summary>The gait as the rest of the house names it.</summary>
    /// <exception cref="InvalidDataException">The file names a gait we do not know.</exception>
    [JsonIgnore]
    public Gait GaitTerm => GaitWords.Parse(Gait);

    [JsonIgnore]
    public Facing FacingTerm => Facing == "left" ? Model.Facing.Left : Model.Facing.Right;

    /// <summary>Strides with the whole rider in the picture from the first to the last instant.</summary>
    [JsonIgnore]
    public IEnumerable<StrideTruth> StridesInFrame =>
        Strides.Where(s => FirstInFrame >= 0 && s.SitS >= FirstInFrame / Fps && s.NextSitS <= LastInFrame / Fps);
}
