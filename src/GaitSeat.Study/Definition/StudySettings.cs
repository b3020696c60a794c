using System.ComponentModel.DataAnnotations;
using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Planning;

namespace GaitSeat.Study.Definition;

/// <summary>What is asked.</summary>
public enum StudyKind
{
    /// <summary>An outcome against the stirrup's length.</summary>
    DoseResponse,

    /// <summary>A change within a session.</summary>
    BeforeAfter,

    /// <summary>One way of measuring against another.</summary>
    Agreement,

    /// <summary>Sessions of one rider against each other.</summary>
    Reliability,

    /// <summary>How many riders and strides; needs no data.</summary>
    Planning,
}

/// <summary>How the stated error of each stride is carried.</summary>
public enum CarriedError
{
    /// <summary>
    /// Strides weigh by one over their stated variance, and the spread itself is found from the data. Right where stated errors hold parts that all strides of a clip share
    /// (scale, camera): the levels of sessions take those up, and the weights only say which strides to trust more.
    /// </summary>
    Weights,

    /// <summary>The stated variance is added to that of each stride, as errors of its own.</summary>
    KnownVariance,

    /// <summary>Not at all.</summary>
    None,
}

/// <summary>A question as its file states it, written before the data are looked at.</summary>
public sealed record StudySettings
{
    /// <summary>The question in plain words; it stands at the head of the report.</summary>
    public string Question { get; init; } = "";

    public StudyKind Kind { get; init; } = StudyKind.DoseResponse;

    /// <summary>Columns the question is asked of, or <c>every_measure</c>; p values of several, and of all questions of a file, are adjusted together (Benjamini–Hochberg).</summary>
    public string[] Outcomes { get; init; } = [];

    /// <summary>More outcomes, marked as exploratory: they are adjusted among themselves and prove nothing.</summary>
    public string[] Exploratory { get; init; } = [];

    /// <summary>Column of the exposure (dose–response).</summary>
    public string Exposure { get; init; } = "stirrup_length_index_pct";

    /// <summary>Columns adjusted for (dose–response).</summary>
    public string[] Adjustment { get; init; } = ["stride_duration_s"];

    /// <summary>Column that names the rider.</summary>
    public string Rider { get; init; } = "rider";

    /// <summary>Column that names the horse; not read where <c>dose.horse</c> is none.</summary>
    public string Horse { get; init; } = "horse";

    /// <summary>Column that names the session.</summary>
    public string Session { get; init; } = "session_date";

    /// <summary>Conditions a row must meet, such as <c>quality &gt;= 0.5</c>; each is counted in the report.</summary>
    public string[] Filters { get; init; } = ["gait = rising_trot"];

    /// <summary>
    /// What tells rows after the change (before/after): a condition such as <c>stirrup_hole &gt;= 7</c>, or <c>leather_cm rises</c> (or <c>falls</c>):
    /// within each session the rows at its smallest length are before and those at its largest after.
    /// </summary>
    public string After { get; init; } = "";

    /// <summary>A CSV beside the study file with more columns, such as a coach's values. Columns it shares with the strides (<c>clip_file</c>, <c>spell</c>, <c>stride</c>, <c>rider</c>, <c>session_date</c>) tell which strides a line belongs to.</summary>
    public string ValuesFile { get; init; } = "";

    /// <summary>Column of the second way of measuring (agreement); an outcome is the first.</summary>
    public string Comparator { get; init; } = "";

    /// <summary>Column whose rows are averaged to one pair (agreement), such as <c>clip_file</c> where the coach gave one value a clip; empty: every row is a pair.</summary>
    public string AverageOver { get; init; } = "";

    /// <summary>Error variance of the comparator over that of the outcome, for Deming's line; 1 where nothing is known.</summary>
    [Range(1e-6, 1e6)]
    public double ErrorVarianceRatio { get; init; } = 1;

    /// <summary>How each outcome's standard error (column <c>_se</c>) enters the model (dose–response).</summary>
    public CarriedError MeasurementError { get; init; } = CarriedError.Weights;

    /// <summary>The change of the exposure whose effect is given, in its unit. 2.5 cm is about a hole (common practice, no source).</summary>
    [Range(1e-6, 1000.0)]
    public double EffectStep { get; init; } = 2;

    /// <summary>More changes whose effect is given beside it, numbers in the same unit.</summary>
    public string[] OtherSteps { get; init; } = [];

    /// <summary>
    /// How the effect's interval is found (dose–response). Satterthwaite's is the one whose coverage is tried with few riders; a profile is that of maximum likelihood, which is too narrow with few.
    /// </summary>
    public IntervalMethod Interval { get; init; } = IntervalMethod.Satterthwaite;

    /// <summary>Standard deviation of the exposure's error, in its unit, for a sensitivity run; 0 leaves the run out.</summary>
    [Range(0.0, 1000.0)]
    public double ExposureErrorSd { get; init; }

    /// <summary>The exposure is measured once a session, so that its strides share one error; else every stride has its own.</summary>
    public bool ExposureMeasuredOncePerSession { get; init; } = true;

    public DoseSettings Dose { get; init; } = new();

    public BootstrapSettings Bootstrap { get; init; } = new();

    public SimexSettings Simex { get; init; } = new();

    /// <summary>Numbers of riders to try (planning).</summary>
    public string[] RiderCounts { get; init; } = ["10", "20", "40"];

    /// <summary>Numbers of strides at each length to try with each number of riders (planning); none: that of the plan.</summary>
    public string[] StrideCounts { get; init; } = [];

    /// <summary>The interval wanted is ± this, in the outcome's unit (planning); 0 where none is asked for.</summary>
    [Range(0.0, 1000.0)]
    public double WantedHalfWidth { get; init; }

    public SeasonPlanSettings Plan { get; init; } = new();

    public PowerSettings Power { get; init; } = new();
}
