namespace GaitSeat.Motion.Sessions;

/// <summary>Weighted means of thigh angle and index before and after any split, from running sums.</summary>
internal sealed class SideMeans
{
    private readonly double[] _weight, _thigh, _index;

    public SideMeans(double[] weight, double[] thigh, double[] index)
    {
        var n = weight.Length;
        (_weight, _thigh, _index) = (new double[n + 1], new double[n + 1], new double[n + 1]);
        for (var i = 0; i < n; i++)
        {
            _weight[i + 1] = _weight[i] + weight[i];
            _thigh[i + 1] = _thigh[i] + weight[i] * thigh[i];
            _index[i + 1] = _index[i] + weight[i] * index[i];
        }
    }

    public (double Thigh, double Index) Before(int k) => (_thigh[k] / _weight[k], _index[k] / _weight[k]);

    public (double Thigh, double Index) After(int k)
    {
        var weight = _weight[^1] - _weight[k];
        return ((_thigh[^1] - _thigh[k]) / weight, (_index[^1] - _index[k]) / weight);
    }

    public (double Thigh, double Index) Difference(int k)
    {
        var (before, after) = (Before(k), After(k));
        return (after.Thigh - before.Thigh, after.Index - before.Index);
    }
}
