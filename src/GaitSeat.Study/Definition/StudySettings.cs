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

/// <summary>A study as its file states it, written before the data are looked at.</summary>
public sealed record StudySettings
{
    /// <summary>The question in plain words; it stands at the head of the report.</summary>
    public string Question { get; init; } = "";

    public StudyKind Kind { get; init; } = StudyKind.DoseResponse;

    /// <summary>Columns the question is asked of; p values of several are adjusted together (Benjamini–Hochberg).</summary>
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

    /// <summary>The condition that tells rows after the change (before/after), such as <c>stirrup_hole &gt;= 7</c>.</summary>
    public string After { get; init; } = "";

    /// <summary>Column of the second way of measuring (agreement); an outcome is the first.</summary>
    public string Comparator { get; init; } = "";

    /// <summary>Error variance of the comparator over that of the outcome, for Deming's line; 1 where nothing is known.</summary>
    [Range(1e-6, 1e6)]
    public double ErrorVarianceRatio { get; init; } = 1;

    /// <summary>Each outcome's known standard error (column <c>_se</c>) enters the model (dose–response).</summary>
    public bool CarryMeasurementError { get; init; } = true;

    /// <summary>The change of the exposure whose effect is given, in its unit. 2.5 cm is about a hole (common practice, no source).</summary>
    [Range(1e-6, 1000.0)]
    public double EffectStep { get; init; } = 2;

    /// <summary>How the effect's interval is found (dose–response).</summary>
    public IntervalMethod Interval { get; init; } = IntervalMethod.Profile;

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

    public SeasonPlanSettings Plan { get; init; } = new();

    public PowerSettings Power { get; init; } = new();
}
