using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>A combination of fixed effects held at a value; both in scaled units.</summary>
internal sealed record HeldContrast(double[] Contrast, double Value)
{
    /// <summary>What the penalised sum of squares rises by when the combination is held: (c'β - value)² / c'(R_X'R_X)⁻¹c.</summary>
    public double Cost(Factored factored)
    {
        var off = Dense.Dot(Contrast, FixedPart.Effects(factored)) - Value;
        return off * off / FixedPart.Variance(factored, Contrast);
    }
}
