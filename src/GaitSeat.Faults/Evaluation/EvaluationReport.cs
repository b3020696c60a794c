using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Evaluation;

/// <summary>How well one way of judging does on riders it did not learn from.</summary>
/// <param name="PrecisionAtBudget">Share with the fault among the spells that fit the review budget.</param>
/// <param name="Brier">Mean squared error of the probability.</param>
public sealed record Performance(string Name, Interval AveragePrecision, Interval RocArea, double PrecisionAtBudget, double Brier, double ExpectedCalibrationError);

/// <summary>The same for a part of the spells.</summary>
/// <param name="By">What the spells were parted by, such as <c>rider</c>.</param>
/// <param name="AveragePrecision">NaN where no spell of the part has the fault.</param>
public sealed record Slice(string By, string Value, int Spells, int Positives, double AveragePrecision, double Brier);

/// <param name="AveragePrecisionLost">Fall of average precision when the family's features are dealt anew among the held-out spells.</param>
public sealed record Importance(string Family, double AveragePrecisionLost);

/// <param name="AveragePrecision">On the riders held out.</param>
public sealed record LearningPoint(int Riders, int Spells, double AveragePrecision);

/// <summary>A spell on which model and coach are far apart.</summary>
public sealed record Mistake(SpellKey Spell, string ClipFile, double StartSeconds, double EndSeconds, double Said, bool WasThere);

/// <summary>What held-out riders tell of a fault's model.</summary>
/// <param name="Budget">Spells that fit the review budget.</param>
/// <param name="Compared">The nested choice first, then each trainer, then the rules, then the model in use where there is one.</param>
/// <param name="GainOverInUse">Average precision of the nested choice less that of what is in use, on the same spells.</param>
/// <param name="InUse">Name of what is in use: rules, or a model's hash.</param>
/// <param name="MissingPct">Share of spells without a value, for each family that is ever missing.</param>
public sealed record EvaluationReport(
    Fault Fault,
    int Spells,
    int Positives,
    int Riders,
    int Budget,
    IReadOnlyList<Performance> Compared,
    string InUse,
    Interval GainOverInUse,
    IReadOnlyList<TrainerKind> ChosenInFolds,
    IReadOnlyList<CurvePoint> Curve,
    IReadOnlyList<CalibrationBin> Calibration,
    IReadOnlyList<Slice> Slices,
    IReadOnlyList<LearningPoint> Learning,
    IReadOnlyList<Importance> Importances,
    IReadOnlyList<Mistake> Worst,
    IReadOnlyDictionary<string, double> MissingPct)
{
    public double Prevalence => Positives / (double)Spells;
}
