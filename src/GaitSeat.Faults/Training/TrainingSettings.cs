using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults.Training;

/// <summary>How fault models are trained, compared and judged.</summary>
public sealed record TrainingSettings
{
    /// <summary>Seed of the folds, the trainers and the bootstraps. Any whole number; the same gives the same model, byte for byte.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 20260601;

    /// <summary>Groups of riders that are each held out once, folds. Default 5: common practice, no source.</summary>
    [Range(2, 20)]
    public int OuterFolds { get; init; } = 5;

    /// <summary>Groups of riders within the training riders, by which trainer and calibration are chosen, folds. Default 3: common practice, no source.</summary>
    [Range(2, 20)]
    public int InnerFolds { get; init; } = 3;

    /// <summary>Spells judged to show the fault below which nothing is trained, spells. Default 20: with 20 positives an area of 0.75 has a standard error of 0.06 to 0.08 (Hanley and McNeil 1982), fewer say nothing.</summary>
    [Range(2, 100000)]
    public int MinimumPositives { get; init; } = 20;

    /// <summary>Spells judged not to show it below which nothing is trained, spells. As for the positives.</summary>
    [Range(2, 100000)]
    public int MinimumNegatives { get; init; } = 20;

    /// <summary>Riders with each answer below which nothing is trained, riders. Default 5: each fold needs one to hold out; our own choice, no source.</summary>
    [Range(2, 10000)]
    public int MinimumRidersEach { get; init; } = 5;

    /// <summary>Spells above which trainers are compared on a part of the riders, spells; the one chosen is always trained on all. Default 4000: past it the order of the trainers hardly changes while the time grows; from our own trials, no source.</summary>
    [Range(100, 10000000)]
    public int ComparisonSpells { get; init; } = 4000;

    /// <summary>Largest weight of the rarer answer, times. Default 10: beyond it a handful of spells would rule the model; common practice, no source.</summary>
    [Range(1, 1000)]
    public double LargestClassWeight { get; init; } = 10;

    /// <summary>Trees of a boosted model, trees. Default 60: small data; common practice, no source.</summary>
    [Range(1, 5000)]
    public int Trees { get; init; } = 60;

    /// <summary>Leaves of a tree, leaves. Default 8: interactions of up to three measures; common practice, no source.</summary>
    [Range(2, 1024)]
    public int Leaves { get; init; } = 8;

    /// <summary>Least spells in a leaf, spells. Default 8: small data; common practice, no source.</summary>
    [Range(1, 10000)]
    public int LeafSpells { get; init; } = 8;

    /// <summary>Step of the boosting, 0..1. Default 0.1: common practice, no source.</summary>
    [Range(0.001, 1)]
    public double LearningRate { get; init; } = 0.1;

    /// <summary>Penalty on squared and on absolute weights of the logistic regression. Default 1: the library's.</summary>
    [Range(0, 1000)]
    public double Penalty { get; init; } = 1;

    /// <summary>Passes of the stochastic trainer over the spells, passes. Default 20: the library's default for it.</summary>
    [Range(1, 1000)]
    public int StochasticPasses { get; init; } = 20;

    /// <summary>Rounds of a bootstrap over riders, rounds. Default 1000: enough for a 95 % percentile interval (Efron and Tibshirani 1993, from memory).</summary>
    [Range(100, 100000)]
    public int BootstrapRounds { get; init; } = 1000;

    /// <summary>Confidence of intervals and of a replacement, 0..1. Default 0.95: common practice, no source.</summary>
    [Range(0.5, 0.999)]
    public double Confidence { get; init; } = 0.95;
}
