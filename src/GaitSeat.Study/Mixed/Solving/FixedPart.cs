using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Fixed effects out of a factored system, in scaled units and on the orthonormal columns.</summary>
internal static class FixedPart
{
    public static double[] Effects(Factored factored)
    {
        var bordered = factored.Blocks.Bordered;
        var effects = factored.Border.AsSpan((bordered - 1) * bordered, bordered - 1).ToArray();
        for (var j = bordered - 2; j >= 0; j--)
        {
            effects[j] /= factored.Border[j * bordered + j];
            Dense.AddScaled(effects.AsSpan(0, j), -effects[j], factored.Border.AsSpan(j * bordered, j));
        }

        return effects;
    }

    /// <summary>R_X⁻ᵀ c: its squared length times the residual variance is the variance of c'β.</summary>
    public static double[] Whitened(Factored factored, ReadOnlySpan<double> contrast)
    {
        var bordered = factored.Blocks.Bordered;
        var x = contrast.ToArray();
        for (var j = 0; j < x.Length; j++)
            x[j] = (x[j] - Dense.Dot(x.AsSpan(0, j), factored.Border.AsSpan(j * bordered, j))) / factored.Border[j * bordered + j];
        return x;
    }

    /// <summary>c'(R_X'R_X)⁻¹c.</summary>
    public static double Variance(Factored factored, ReadOnlySpan<double> contrast)
    {
        var x = Whitened(factored, contrast);
        return Dense.Dot(x, x);
    }
}
