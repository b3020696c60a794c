namespace GaitSeat.Faults.Training;

/// <summary>The trainers that are compared, simplest first: of equals the first is taken.</summary>
public enum TrainerKind
{
    /// <summary>Logistic regression, quasi-Newton (L-BFGS).</summary>
    LogisticRegression,

    /// <summary>Logistic regression, stochastic dual coordinate ascent.</summary>
    StochasticDualAscent,

    /// <summary>Boosted trees of ML.NET.</summary>
    FastTree,

    /// <summary>Boosted trees of LightGBM.</summary>
    LightGbm,
}
