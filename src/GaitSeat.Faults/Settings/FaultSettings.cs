using GaitSeat.Faults.Drift;
using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Queue;
using GaitSeat.Faults.Training;

namespace GaitSeat.Faults;

/// <summary>How fault models learn from verdicts, when they flag, what the queue puts first, and when the world counts as moved. The limits of the rules stand in <see cref="RuleSettings"/>.</summary>
public sealed record FaultSettings
{
    /// <summary>How features are made of spells. A model speaks only of features made as those it learnt from.</summary>
    public FeatureSettings Features { get; init; } = new();

    /// <summary>How models are trained, compared and put in use.</summary>
    public TrainingSettings Training { get; init; } = new();

    /// <summary>What a model card shows.</summary>
    public EvaluationSettings Evaluation { get; init; } = new();

    /// <summary>When a spell is flagged, and what is said of it.</summary>
    public FlagSettings Flags { get; init; } = new();

    /// <summary>How the coach's time is spent.</summary>
    public QueueSettings Queue { get; init; } = new();

    /// <summary>When the world counts as moved away from the training spells.</summary>
    public DriftSettings Drift { get; init; } = new();
}
