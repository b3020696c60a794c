using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults.Evaluation;

/// <summary>What a model card shows.</summary>
public sealed record EvaluationSettings
{
    /// <summary>Share of spells a coach has time for, percent: where precision at the budget is read. Default 10: half an hour for some forty of four hundred clips; common practice, no source.</summary>
    [Range(0.1, 100)]
    public double BudgetPct { get; init; } = 10;

    /// <summary>Worst mistakes listed, spells. Default 10: what a reader looks through; common practice, no source.</summary>
    [Range(0, 1000)]
    public int Mistakes { get; init; } = 10;

    /// <summary>Least spells of a part that is shown by itself, spells. Default 10: fewer say nothing; common practice, no source.</summary>
    [Range(1, 100000)]
    public int SliceSpells { get; init; } = 10;

    /// <summary>Rider's height in the picture below which a clip counts as far away, px. Only parts the card's slices. Common practice, no source.</summary>
    [Range(1, 10000)]
    public double FarRiderPx { get; init; } = 250;

    /// <summary>Turn out of the picture plane above which a clip counts as turned, deg. Only parts the card's slices. Default 15: up to there errors are stated as side-on (docs/accuracy.md).</summary>
    [Range(0, 90)]
    public double TurnedDeg { get; init; } = 15;
}
