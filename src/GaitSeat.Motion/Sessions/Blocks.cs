namespace GaitSeat.Motion.Sessions;

/// <summary>Means over a few strides of one clip.</summary>
internal readonly record struct Block(int First, int EndExcl, double Thigh, double Index)
{
    public int Count => EndExcl - First;
}

/// <summary>Cuts a line of strides into runs of one clip, so that a session's own wandering can be seen.</summary>
internal sealed class Blocks
{
    private readonly List<(int First, int EndExcl)> _bounds = [];

    public Blocks(StrideLine line, int longest)
    {
        var first = 0;
        for (var i = 1; i <= line.Count; i++)
        {
            if (i < line.Count && line.SameClip(i) && i - first < longest) continue;
            _bounds.Add((first, i));
            first = i;
        }
    }

    public List<Block> Of(double[] thigh, double[] index) => _bounds.ConvertAll(b => new Block(b.First, b.EndExcl, Mean(thigh, b), Mean(index, b)));

    private static double Mean(double[] values, (int First, int EndExcl) bounds)
    {
        double sum = 0;
        for (var i = bounds.First; i < bounds.EndExcl; i++) sum += values[i];
        return sum / (bounds.EndExcl - bounds.First);
    }
}
