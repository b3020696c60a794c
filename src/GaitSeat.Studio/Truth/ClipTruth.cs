using System.Text.Json.Serialization;
using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>
/// What is truly in a made clip. Written beside it as <c>NAME.truth.json</c> (this record, snake_case) and <c>NAME.truth.csv</c> (<see cref="FrameRows"/>).
/// Frame i is mid-exposure at the time in its row; where the rate does not vary that is i / fps. Properties that only some files carry are null where missing.
/// </summary>
public sealed record ClipTruth
{
    private readonly IReadOnlyList<TruthSpell>? _spells;

    public required string Clip { get; init; }

    public required int Width { get; init; }

    public required int Height { get; init; }

    public required double Fps { get; init; }

    /// <summary>Number of frames.</summary>
    public required int Frames { get; init; }

    public required double DurationS { get; init; }

    /// <summary><c>rising</c>, <c>sitting</c>, <c>walk</c>, <c>canter</c> or <c>halt</c>; of a clip of several gaits <c>rising</c> where it has any, else the longest. See <see cref="Spells"/>.</summary>
    public required string Gait { get; init; }

    /// <summary>Bare height, m.</summary>
    public required double StatureM { get; init; }

    /// <summary><c>left</c> or <c>right</c> of the picture; on a circle seen from outside that of most frames, see <see cref="FrameTruth.Facing"/>.</summary>
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

    /// <summary>
    /// What makes this clip what it is, as words: <c>camera=pan-zoom</c>, <c>light=low</c>, <c>clothes=loose-jacket</c>, <c>horse=pony</c>, <c>occluder=posts</c>,
    /// <c>path=circle</c>, <c>stirrup=changed</c>, <c>fault=double-bounce</c>... Every made clip of the wide set carries each key; empty in older files.
    /// </summary>
    public IReadOnlyDictionary<string, string> Conditions { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Gaits over time; one spell of the clip's gait where the file does not tell.</summary>
    public IReadOnlyList<TruthSpell> Spells
    {
        get => _spells ?? [new TruthSpell(0, DurationS, Gait)];
        init => _spells = value;
    }

    /// <summary>When the leathers are made shorter or longer, s; none in most clips.</summary>
    public IReadOnlyList<double> StirrupChanges { get; init; } = [];

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
        Strides.Where(s => FirstInFrame >= 0 && s.SitS >= SecondsOf(FirstInFrame) && s.NextSitS <= SecondsOf(LastInFrame) && IsFullIn(s));

    private double SecondsOf(int frame) => frame < FrameRows.Count ? FrameRows[frame].TimeSeconds : frame / Fps;

    // A horse on a circle past a standing camera can leave the picture and come back.
    private bool IsFullIn(StrideTruth stride) =>
        FrameRows.All(r => r.RiderFullInFrame || r.TimeSeconds < stride.SitS || r.TimeSeconds > stride.NextSitS);
}
