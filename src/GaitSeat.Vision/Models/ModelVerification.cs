using System.Globalization;

namespace GaitSeat.Vision.Models;

/// <summary>How a model on this machine compares with the weights' own runtime on the same fixed picture.</summary>
/// <param name="Device">What it ran on.</param>
/// <param name="Runtime">What made the reference values.</param>
public sealed record ModelVerification(string Model, InferenceDevice Device, string Runtime, IReadOnlyList<OutputDifference> Outputs)
{
    public bool IsPassed => Outputs.All(o => o.IsPassed);

    /// <summary>The output nearest to what is allowed, or furthest past it.</summary>
    public OutputDifference Worst => Outputs.MaxBy(o => double.IsNaN(o.Greatest) ? double.PositiveInfinity : Math.Max(o.Greatest, o.Mean) / o.Allowed)!;

    /// <returns>This.</returns>
    /// <exception cref="ModelException">A difference is greater than allowed; the message says which.</exception>
    public ModelVerification Require() => IsPassed
        ? this
        : throw new ModelException(string.Create(
            CultureInfo.InvariantCulture,
            $"model '{Model}' gives other numbers on this machine: '{Worst.Name}' differs by {Worst.Greatest:0.0e0} (mean {Worst.Mean:0.0e0}) from {Runtime}, allowed {Worst.Allowed:0.0e0}; empty the model cache and try again"));
}

/// <summary>The difference of one output, in its own unit (probability, logit, cells; crop pixels for landmarks).</summary>
/// <param name="Greatest">Greatest difference among the values kept.</param>
/// <param name="Mean">Difference of the means over all values, or of the mean sizes if that is greater.</param>
/// <param name="Allowed">Greatest difference allowed for either.</param>
public sealed record OutputDifference(string Name, double Greatest, double Mean, double Allowed)
{
    // Written so that NaN does not pass.
    public bool IsPassed => Greatest <= Allowed && Mean <= Allowed;
}
