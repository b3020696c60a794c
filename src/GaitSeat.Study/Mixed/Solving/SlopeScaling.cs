using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Random-effect columns Z T in place of Z: slopes centred where there is a random intercept, all of mean square one. Effects of Z are T times those of Z T.</summary>
internal sealed class SlopeScaling
{
    public SlopeScaling(RandomTerm term)
    {
        Width = term.Columns.Count;
        Transform = new double[Width, Width];
        var intercept = Enumerable.Range(0, Width).FirstOrDefault(j => Array.TrueForAll(term.Columns[j].Values, v => v == 1), -1);
        Columns = [.. Enumerable.Range(0, Width).Select(j => j == intercept ? Keep(term, j) : Scale(term, j, intercept))];
        // Refuses columns that are combinations of each other, with their names.
        _ = OrthonormalBasis.Of(term.Columns);
    }

    public int Width { get; }

    /// <summary>T, width × width.</summary>
    public double[,] Transform { get; }

    public double[][] Columns { get; }

    /// <summary>T v.</summary>
    public double[] ToOriginal(ReadOnlySpan<double> v)
    {
        var result = new double[Width];
        for (var i = 0; i < Width; i++)
            for (var j = 0; j < Width; j++) result[i] += Transform[i, j] * v[j];
        return result;
    }

    /// <summary>z' T: a row of Z as one of Z T.</summary>
    public double[] RowToScaled(ReadOnlySpan<double> z)
    {
        var result = new double[Width];
        for (var j = 0; j < Width; j++)
            for (var i = 0; i < Width; i++) result[j] += z[i] * Transform[i, j];
        return result;
    }

    private double[] Keep(RandomTerm term, int j)
    {
        Transform[j, j] = 1;
        return term.Columns[j].Values;
    }

    private double[] Scale(RandomTerm term, int j, int intercept)
    {
        var values = term.Columns[j].Values;
        var moments = Moments.Of(values);
        var shift = intercept >= 0 ? moments.Mean : 0;
        var size = Math.Sqrt(moments.SumSquares / values.Length + (moments.Mean - shift) * (moments.Mean - shift));
        if (!(size > 0)) throw new StudyException(StudyProblem.Collinear, $"random slope '{term.Columns[j].Name}' of '{term.Groups.Name}' is the same in every row; leave it out");
        Transform[j, j] = 1 / size;
        if (intercept >= 0) Transform[intercept, j] = -shift / size;
        return Array.ConvertAll(values, v => (v - shift) / size);
    }
}
