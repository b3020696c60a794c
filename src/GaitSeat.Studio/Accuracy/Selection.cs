using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>What counts in one column of the goals, over many clips.</summary>
/// <param name="clips">All clips.</param>
/// <param name="counts">Which circumstances count.</param>
/// <param name="frameCounts">The same for time by gait.</param>
public sealed class Selection(IReadOnlyList<ClipErrors> clips, Func<Circumstances, bool> counts, Func<GaitTime, bool> frameCounts)
{
    /// <summary>Everything not set aside.</summary>
    public static Selection All(IReadOnlyList<ClipErrors> clips) => new(clips, _ => true, _ => true);

    /// <summary>Side-on within 15 deg and a rider of 200 px and more.</summary>
    public static Selection SideOn(IReadOnlyList<ClipErrors> clips) => new(clips, c => c.IsSideOn, g => g.SideOn);

    /// <summary>Errors of one measure, without the rows that say of themselves they are not to be trusted.</summary>
    public IEnumerable<MeasureError> Errors(StrideMeasure measure) => Rows(measure).Where(e => e.Trusted);

    /// <summary>Errors of the rows that are not to be trusted.</summary>
    public IEnumerable<MeasureError> Untrusted(StrideMeasure measure) => Rows(measure).Where(e => !e.Trusted);

    public int Found => clips.Sum(c => c.Found.Count(f => counts(f.Circumstances)));

    public int Invented => clips.Sum(c => c.Invented.Count(i => counts(i.Circumstances)));

    /// <summary>True strides missed without a word.</summary>
    public int MissedSilently => Missed.Count(m => m.Why is null);

    /// <summary>True strides left out under a named reason.</summary>
    public int SetAside => Missed.Count(m => m.Why is not null);

    public double Precision => Ratio(Found, Found + Invented);

    /// <summary>Of the true strides that were not set aside under a reason.</summary>
    public double Recall => Ratio(Found, Found + MissedSilently);

    /// <summary>Of all true strides with the whole rider in the picture.</summary>
    public double RecallOfAll => Ratio(Found, Found + MissedSilently + SetAside);

    /// <summary>Of the time that was called a gait, what was called the right one.</summary>
    public double GaitRight => Seconds(g => g.Called == g.True) / Seconds(g => g.Called is { } called && called != Gait.Unknown);

    public double SecondsNotRising => Seconds(g => g.True != Gait.RisingTrot);

    /// <summary>Measured strides where the horse was not in rising trot.</summary>
    public int FalseTrotStrides => clips.Sum(c => c.Invented.Count(i => counts(i.Circumstances) && i.TrueGait is { } gait && gait != Gait.RisingTrot));

    public double FalseTrotStridesPerMinute => SecondsNotRising > 0 ? FalseTrotStrides / (SecondsNotRising / 60) : double.NaN;

    private IEnumerable<MissedStride> Missed => clips.SelectMany(c => c.Missed).Where(m => counts(m.Circumstances));

    private IEnumerable<MeasureError> Rows(StrideMeasure measure) => clips.SelectMany(c => c.Errors).Where(e => e.Measure == measure && counts(e.Circumstances));

    private double Seconds(Func<GaitTime, bool> which) => clips.SelectMany(c => c.Gaits).Where(g => frameCounts(g) && which(g)).Sum(g => g.Seconds);

    private static double Ratio(int part, int whole) => whole == 0 ? double.NaN : part / (double)whole;
}
